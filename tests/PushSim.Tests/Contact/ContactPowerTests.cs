using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>What the contact takes from both bodies is what it loses; forces and moments of the two bodies balance; the closing speed is the rate of the depth. Computed here.</summary>
public class ContactPowerTests
{
    public static TheoryData<int> Pairs => [.. Enumerable.Range(0, Touching.PairCount)];

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Power_on_both_bodies_is_what_the_contact_loses(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        Touching.Spin(pair);
        var random = new Random(2000 + which);
        for (int i = 0; i < 300; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            R1[] z = [.. Enumerable.Range(0, 3).Select(_ => (R1)(0.001 * (random.NextDouble() - 0.5)))];
            Touching.Outcome o = Touching.Evaluate(pair, p, q, 1e-4, z);
            double[] f = o.Force;
            double[] terms =
            [
                f[0] * p.VX.Value, f[1] * p.VY.Value, f[2] * p.VZ.Value, -f[0] * q.VX.Value, -f[1] * q.VY.Value, -f[2] * q.VZ.Value,
                o.OnA[0] * p.WX.Value, o.OnA[1] * p.WY.Value, o.OnA[2] * p.WZ.Value, o.OnB[0] * q.WX.Value, o.OnB[1] * q.WY.Value, o.OnB[2] * q.WZ.Value,
                .. pair.WheelsA.Torque.Select((t, w) => t.Value * pair.WheelsA.Spin[w].Value),
                .. pair.WheelsB.Torque.Select((t, w) => t.Value * pair.WheelsB.Spin[w].Value),
            ];
            Assert.Equal(-terms.Sum(), pair.LostPower.Value, 1e-12 * (1e-6 + terms.Sum(Math.Abs)));
        }
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Moments_of_both_bodies_balance(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var random = new Random(3000 + which);
        for (int i = 0; i < 300; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            Touching.Outcome o = Touching.Evaluate(pair, p, q);
            double[] d = [q.X.Value - p.X.Value, q.Y.Value - p.Y.Value, q.Z.Value - p.Z.Value];
            double bound = 1e-12 * (1e-9 + o.Force.Sum(Math.Abs) + o.OnA.Sum(Math.Abs));
            for (int k = 0; k < 3; k++)
            {
                // B's counterforce acts at the distance d from A: moments about A's centre
                double far = (d[(k + 1) % 3] * -o.Force[(k + 2) % 3]) - (d[(k + 2) % 3] * -o.Force[(k + 1) % 3]);
                Assert.Equal(0.0, o.OnA[k] + o.OnB[k] + far, bound);
            }
        }
    }

    // One edge deep in one face: the force is as its depth, so d force/dt over force is the closing speed over the depth.
    [Theory]
    [InlineData(0.3, 0.0)]
    [InlineData(-0.25, 0.1)]
    [InlineData(0.2, -0.3)]
    public void An_edge_closes_as_fast_as_its_depth_grows(double pitch, double climb)
    {
        ContactSettings plain = Touching.Usual with { Restitution = 1.0, Friction = 0.0 };
        ContactBody thin = Touching.Box(0.2, 0.18, 0.005, 0.05);
        ContactBody wall = Touching.Box(0.2, 1.0, 0.0, 1.0, centre: 0.5);
        var pair = new ContactPair<R1>(thin, wall, plain);
        var damped = new ContactPair<R1>(thin, wall, plain with { Restitution = 0.9 });
        double damping = Restitution.Damping(0.9);
        BodyPose<R1> q = Touching.Still(0.2, 0.0, z: 0.5);
        BodyPose<R1> p = Touching.Still(0.0, 0.0, pitch: pitch, z: 0.5);
        p.X = 0.1 - ((0.1 * Math.Cos(pitch)) + (Math.Sin(pitch) * (pitch > 0.0 ? 0.03 : -0.015))) + 1e-4;
        (p.VX, p.VZ, p.WY) = (0.1, climb, 0.4);
        Touching.Evaluate(pair, p, q);
        Touching.Evaluate(damped, p, q);
        double closing = ((damped.NormalForce.Value / pair.NormalForce.Value) - 1.0) / damping;

        // the corner that is foremost, by hand
        double z = pitch > 0.0 ? 0.03 : -0.015;
        double arm = (-Math.Sin(pitch) * 0.1) + (Math.Cos(pitch) * z);
        Assert.Equal(0.1 + (0.4 * arm), closing, 1e-6);
    }

    // Press, slide sideways past each other and back, release: what is left over of a closed loop is small against friction's work.
    [Fact]
    public void A_closed_sliding_loop_gives_no_energy_back()
    {
        ContactSettings smooth = Touching.Usual with { Restitution = 1.0, Friction = 0.0 };
        var pair = new ContactPair<R1>(Touching.Box(), Touching.Box(low: 0.012, high: 0.04), smooth);
        double normal = 0.0;
        double work = 0.0;
        double slid = 0.0;
        double depth = 1e-4;
        int n = 4000;
        (double X, double Y, double Z)[] corners = [(0.0, 0.0, 0.0), (-depth, 0.0, 0.0), (-depth, 0.01, 0.006), (0.0, 0.01, 0.006), (0.0, 0.0, 0.0)];
        for (int leg = 0; leg < 4; leg++)
        {
            ((double X, double Y, double Z) from, (double X, double Y, double Z) to) = (corners[leg], corners[leg + 1]);
            for (int i = 0; i < n; i++)
            {
                double s = (i + 0.5) / n;
                BodyPose<R1> q = Touching.Still(0.2 + from.X + (s * (to.X - from.X)), from.Y + (s * (to.Y - from.Y)), Math.PI, z: Touching.Centre + from.Z + (s * (to.Z - from.Z)));
                Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0), q);
                double step = (-o.Force[0] * (to.X - from.X)) + (-o.Force[1] * (to.Y - from.Y)) + (-o.Force[2] * (to.Z - from.Z));
                work += step / n;
                double way = leg == 1 ? double.Hypot(to.Y - from.Y, to.Z - from.Z) / n : 0.0;
                slid += way;
                normal += pair.NormalForce.Value * way;
            }
        }

        double frictionWork = Touching.Usual.Friction * normal;
        Assert.True(frictionWork > 1e-3, $"{frictionWork} J over {slid} m");
        Assert.True(Math.Abs(work) < frictionWork / 500.0, $"{work} J left over, friction {frictionWork} J");
    }
}
