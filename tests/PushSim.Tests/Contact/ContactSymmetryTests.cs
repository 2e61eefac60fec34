using System.Globalization;
using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Exchanging the bodies, left and right, or the width of the numbers changes no bit, in any pose. Computed here. With PUSHSIM_CONTACT_POSES every pair takes as many.</summary>
public class ContactSymmetryTests
{
    private static readonly int s_poses = int.Parse(Environment.GetEnvironmentVariable("PUSHSIM_CONTACT_POSES") ?? "300", CultureInfo.InvariantCulture);

    public static TheoryData<int> Pairs => [.. Enumerable.Range(0, Touching.PairCount)];

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Exchanging_the_bodies_exchanges_the_forces(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var swapped = new ContactPair<R1>(b, a, Touching.Usual);
        Touching.Spin(pair);
        Touching.Spin(swapped, swapped: true);
        var random = new Random(which);
        int touched = 0;
        for (int i = 0; i < s_poses; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            double g = i % 3 == 0 ? 0.0 : 1e-4;
            R1[] z = Bristles(random);
            R1[] zSwapped = [z[0], z[1], -z[2]];
            Touching.Outcome plain = Touching.Evaluate(pair, p, q, g, z);
            Touching.Outcome other = Touching.Evaluate(swapped, Touching.Turned(q), Touching.Turned(p), g, zSwapped);
            Assert.Equal(plain.Force, new[] { other.Force[0], other.Force[1], -other.Force[2] });
            Assert.Equal(plain.OnA, new[] { -other.OnB[0], -other.OnB[1], other.OnB[2] });
            Assert.Equal(plain.OnB, new[] { -other.OnA[0], -other.OnA[1], other.OnA[2] });
            Assert.Equal(plain.Z, new[] { other.Z[0], other.Z[1], -other.Z[2] });
            Assert.Equal(pair.LostPower.Value, swapped.LostPower.Value);
            Assert.Equal(pair.WheelsA.Torque.Select(t => t.Value), swapped.WheelsB.Torque.Select(t => t.Value));
            Assert.Equal(pair.WheelsB.Torque.Select(t => t.Value), swapped.WheelsA.Torque.Select(t => t.Value));
            Assert.Equal(pair.NormalForce.Value, swapped.NormalForce.Value);
            Assert.Equal(pair.CentreX.Value, -swapped.CentreX.Value);
            touched += pair.NormalForce.Value > 0.0 ? 1 : 0;
        }

        Assert.True(touched > s_poses / 4, $"only {touched} of {s_poses} poses touched");
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void The_mirror_image_has_the_mirrored_forces(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var mirrored = new ContactPair<R1>(Touching.Mirror(a), Touching.Mirror(b), Touching.Usual);
        Touching.Spin(pair);
        Touching.Spin(mirrored);
        var random = new Random(1000 + which);
        for (int i = 0; i < s_poses; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            double g = i % 3 == 0 ? 0.0 : 1e-4;
            R1[] z = Bristles(random);
            R1[] zMirrored = [z[0], -z[1], z[2]];
            Touching.Outcome plain = Touching.Evaluate(pair, p, q, g, z);
            Touching.Outcome other = Touching.Evaluate(mirrored, Touching.Mirror(p), Touching.Mirror(q), g, zMirrored);
            Assert.Equal(plain.Force, new[] { other.Force[0], -other.Force[1], other.Force[2] });
            Assert.Equal(plain.OnA, new[] { -other.OnA[0], other.OnA[1], -other.OnA[2] });
            Assert.Equal(plain.OnB, new[] { -other.OnB[0], other.OnB[1], -other.OnB[2] });
            Assert.Equal(plain.Z, new[] { other.Z[0], -other.Z[1], other.Z[2] });
            Assert.Equal(pair.LostPower.Value, mirrored.LostPower.Value);
            Assert.Equal(pair.WheelsA.Torque.Select(t => t.Value), mirrored.WheelsA.Torque.Select(t => t.Value));
            Assert.Equal(pair.WheelsB.Torque.Select(t => t.Value), mirrored.WheelsB.Torque.Select(t => t.Value));
            Assert.Equal(pair.CentreY.Value, -mirrored.CentreY.Value);
        }
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Lanes_have_the_bits_of_a_single_number(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var four = new ContactPair<R4>(a, b, Touching.Usual);
        var eight = new ContactPair<R8>(a, b, Touching.Usual);
        Touching.Spin(pair);
        Touching.Spin(four);
        Touching.Spin(eight);
        var random = new Random(2000 + which);
        for (int i = 0; i < s_poses; i += 8)
        {
            BodyPose<R4>[] wide4 = new BodyPose<R4>[4];
            BodyPose<R8>[] wide8 = new BodyPose<R8>[2];
            R4[] z4 = new R4[6];
            R8[] z8 = new R8[3];
            List<double[]> singles = [];
            for (int lane = 0; lane < 8; lane++)
            {
                (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
                R1[] z = Bristles(random);
                Put(ref wide4[2 * (lane / 4)], lane % 4, p);
                Put(ref wide4[(2 * (lane / 4)) + 1], lane % 4, q);
                Put(ref wide8[0], lane, p);
                Put(ref wide8[1], lane, q);
                for (int k = 0; k < 3; k++)
                {
                    Lane.Set(ref z4[(3 * (lane / 4)) + k], lane % 4, z[k]);
                    Lane.Set(ref z8[k], lane, z[k]);
                }

                Touching.Outcome o = Touching.Evaluate(pair, p, q, 1e-4, z);
                singles.Add([.. o.Force, .. o.OnA, .. o.OnB, .. o.Z, .. o.Rates, pair.LostPower.Value]);
            }

            for (int half = 0; half < 2; half++)
            {
                R4[] four4 = All(four, wide4[2 * half], wide4[(2 * half) + 1], z4.AsSpan(3 * half, 3));
                for (int lane = 0; lane < 4; lane++)
                {
                    Assert.Equal(singles[(4 * half) + lane], four4.Select(x => Lane.Get(x, lane)));
                }
            }

            R8[] all = All(eight, wide8[0], wide8[1], z8);
            for (int lane = 0; lane < 8; lane++)
            {
                Assert.Equal(singles[lane], all.Select(x => Lane.Get(x, lane)));
            }
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
        BodyPose<R1> p = Touching.Still(0.0, 0.0, pitch: 0.01);
        p.VX = 0.1;
        p.WY = 0.2;
        BodyPose<R1> q = Touching.Turned(p);
        q.X = (2.0 * a.Corners.Max(c => c.X)) - overlap;
        Touching.Outcome outcome = Touching.Evaluate(pair, p, q);
        Assert.True(outcome.Force[0] < 0.0, $"pushed with {outcome.Force[0]} N");
        Assert.Equal(outcome.OnA[1], -outcome.OnB[1]);
        Assert.Equal(0.0, outcome.Force[1]);
        Assert.Equal(0.0, outcome.Force[2]);
        Assert.Equal(0.0, outcome.OnA[0]);
        Assert.Equal(0.0, outcome.OnA[2]);
        Assert.Equal(0.0, pair.CentreY.Value);
    }

    private static T[] All<T>(ContactPair<T> pair, in BodyPose<T> p, in BodyPose<T> q, Span<T> z)
        where T : struct, ILanes<T>, IReal<T>
    {
        T[] dz = new T[3];
        pair.Evaluate(p, q, 1e-4, z, dz);
        return
        [
            pair.ForceX, pair.ForceY, pair.ForceZ, pair.OnA.X, pair.OnA.Y, pair.OnA.Z, pair.OnB.X, pair.OnB.Y, pair.OnB.Z,
            z[0], z[1], z[2], dz[0], dz[1], dz[2], pair.LostPower,
        ];
    }

    private static void Put<T>(ref BodyPose<T> to, int lane, in BodyPose<R1> from)
        where T : struct, ILanes<T>, IReal<T>
    {
        Lane.Set(ref to.X, lane, from.X);
        Lane.Set(ref to.Y, lane, from.Y);
        Lane.Set(ref to.Z, lane, from.Z);
        Lane.Set(ref to.XX, lane, from.XX);
        Lane.Set(ref to.XY, lane, from.XY);
        Lane.Set(ref to.XZ, lane, from.XZ);
        Lane.Set(ref to.YX, lane, from.YX);
        Lane.Set(ref to.YY, lane, from.YY);
        Lane.Set(ref to.YZ, lane, from.YZ);
        Lane.Set(ref to.ZX, lane, from.ZX);
        Lane.Set(ref to.ZY, lane, from.ZY);
        Lane.Set(ref to.ZZ, lane, from.ZZ);
        Lane.Set(ref to.VX, lane, from.VX);
        Lane.Set(ref to.VY, lane, from.VY);
        Lane.Set(ref to.VZ, lane, from.VZ);
        Lane.Set(ref to.WX, lane, from.WX);
        Lane.Set(ref to.WY, lane, from.WY);
        Lane.Set(ref to.WZ, lane, from.WZ);
    }

    private static R1[] Bristles(Random random) => [.. Enumerable.Range(0, 3).Select(_ => (R1)(0.001 * (random.NextDouble() - 0.5)))];
}
