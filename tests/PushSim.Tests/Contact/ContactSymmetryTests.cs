using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Exchanging the bodies, left and right, or turning the floor by half a turn changes no bit. Computed here.</summary>
public class ContactSymmetryTests
{
    private const int Poses = 400;

    public static TheoryData<int> Pairs => [.. Enumerable.Range(0, 25)];

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Exchanging_the_bodies_exchanges_the_forces(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var swapped = new ContactPair<R1>(b, a, Touching.Usual);
        var random = new Random(which);
        int touched = 0;
        for (int i = 0; i < Poses; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            double g = i % 3 == 0 ? 0.0 : 1e-4;
            R1[] z = Bristles(random, pair.BristleCount);
            R1[] zSwapped = Swap(z, a.HasRamp, b.HasRamp);
            Touching.Outcome plain = Touching.Evaluate(pair, p, q, g, z);
            Touching.Outcome other = Touching.Evaluate(swapped, Turned(q), Turned(p), g, zSwapped);
            Assert.Equal(plain.OnA, other.OnB);
            Assert.Equal(plain.OnB, other.OnA);
            Assert.Equal(plain.Z, Swap(zSwapped, b.HasRamp, a.HasRamp).Select(x => x.Value));
            Assert.Equal(pair.LostPower.Value, swapped.LostPower.Value);
            Assert.Equal(pair.NormalForce.Value, swapped.NormalForce.Value);
            Assert.Equal(pair.RampForceA.Value, swapped.RampForceB.Value);
            Assert.Equal(pair.CentreX.Value, -swapped.CentreX.Value);
            touched += pair.NormalForce.Value > 0.0 ? 1 : 0;
        }

        Assert.True(touched > Poses / 4, $"only {touched} of {Poses} poses touched");
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void The_mirror_image_has_the_mirrored_forces(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var mirrored = new ContactPair<R1>(Touching.Mirror(a), Touching.Mirror(b), Touching.Usual);
        var random = new Random(1000 + which);
        for (int i = 0; i < Poses; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            double g = i % 3 == 0 ? 0.0 : 1e-4;
            R1[] z = Bristles(random, pair.BristleCount);
            R1[] zMirrored = [-z[0], .. z[1..]];
            Touching.Outcome plain = Touching.Evaluate(pair, p, q, g, z);
            Touching.Outcome other = Touching.Evaluate(mirrored, Mirror(p), Mirror(q), g, zMirrored);
            Assert.Equal(plain.OnA, Mirror(other.OnA));
            Assert.Equal(plain.OnB, Mirror(other.OnB));
            Assert.Equal(plain.Z[0], -other.Z[0]);
            Assert.Equal(plain.Z[1..], other.Z[1..]);
            Assert.Equal(pair.LostPower.Value, mirrored.LostPower.Value);
            Assert.Equal(pair.CentreX.Value, mirrored.CentreX.Value);
            Assert.Equal(pair.CentreY.Value, -mirrored.CentreY.Value);
        }
    }

    [Theory]
    [InlineData(0, 0.0001)]
    [InlineData(0, 0.003)]
    [InlineData(1, 0.002)]
    [InlineData(3, 0.004)]
    public void Equal_robots_nose_to_nose_push_straight(int shape, double overlap)
    {
        (ContactBody a, _) = Touching.Two(shape);
        var pair = new ContactPair<R1>(a, a, Touching.Usual);
        BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0);
        BodyPose<R1> q = Touching.Facing((2.0 * a.Corners.Max(c => c.X)) - overlap, 0.0);
        p.Motion.U = q.Motion.U = 0.1;
        p.Pitch = q.Pitch = 0.01;
        p.Motion.ThetaDot = q.Motion.ThetaDot = 0.2;
        Touching.Outcome outcome = Touching.Evaluate(pair, p, q);
        Assert.True(outcome.OnA[0] < 0.0, $"pushed with {outcome.OnA[0]} N");
        Assert.Equal(outcome.OnA, outcome.OnB);
        Assert.Equal(0.0, outcome.OnA[1]);
        Assert.Equal(0.0, outcome.OnA[3]);
        Assert.Equal(0.0, outcome.OnA[5]);
        Assert.Equal(0.0, pair.CentreY.Value);
    }

    private static R1[] Bristles(Random random, int count) => [.. Enumerable.Range(0, count).Select(_ => (R1)(0.001 * (random.NextDouble() - 0.5)))];

    private static R1[] Swap(R1[] z, bool first, bool second) => first && second ? [z[0], z[2], z[1]] : [.. z];

    private static BodyPose<R1> Turned(BodyPose<R1> p)
    {
        p.X = -p.X;
        p.Y = -p.Y;
        p.Sine = -p.Sine;
        p.Cosine = -p.Cosine;
        return p;
    }

    private static BodyPose<R1> Mirror(BodyPose<R1> p)
    {
        p.Y = -p.Y;
        p.Sine = -p.Sine;
        p.Roll = -p.Roll;
        p.Motion.V = -p.Motion.V;
        p.Motion.R = -p.Motion.R;
        p.Motion.PhiDot = -p.Motion.PhiDot;
        return p;
    }

    private static double[] Mirror(double[] w) => [w[0], -w[1], w[2], -w[3], w[4], -w[5]];
}
