using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Upright faces: force, place and friction against closed forms, computed here.</summary>
public class BluntForceTests
{
    private static readonly ContactSettings s_smooth = Touching.Usual with { Friction = 0.0 };

    [Theory]
    [InlineData(0.0001, 0.0)]
    [InlineData(0.003, 0.0)]
    [InlineData(0.003, 0.05)]
    [InlineData(0.003, -0.12)]
    public void Flat_faces_press_over_their_common_width(double overlap, double offset)
    {
        var pair = new ContactPair<R1>(Touching.Box(), Touching.Box(), s_smooth);
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), Touching.Facing(0.2 - overlap, offset));
        double force = s_smooth.Stiffness * overlap * (0.18 - Math.Abs(offset));
        Assert.Equal(force, pair.NormalForce.Value, 1e-12 * force);
        Assert.Equal(-force, o.OnA[0], 1e-12 * force);
        Assert.Equal(0.5 * offset, pair.CentreY.Value, 1e-12);
        Assert.Equal(0.1 - (0.5 * overlap), pair.CentreX.Value, 1e-12);
        Assert.Equal(force * 0.5 * offset, o.OnA[5], 1e-12 * force);
    }

    // A corner of a turned box in a wall: a right triangle of depth D, area D^2 / sin(2 yaw).
    [Theory]
    [InlineData(10.0)]
    [InlineData(45.0)]
    [InlineData(80.0)]
    public void A_corner_in_a_wall_presses_with_its_triangle(double degrees)
    {
        double yaw = degrees * Math.PI / 180.0;
        const double Overlap = 0.002;
        var wall = new WallSettings(0.0, -1.0, 0.0, 1.0);
        var pair = new ContactPair<R1>(Touching.Box(), ContactBody.FromWall(wall), s_smooth);
        double front = (0.1 * Math.Cos(yaw)) + (0.09 * Math.Sin(yaw));
        Touching.Evaluate(pair, Touching.Still(Overlap - front, 0.2, yaw), ContactBody.WallPose<R1>(wall));
        double force = s_smooth.Stiffness * Overlap * Overlap / Math.Sin(2.0 * yaw);
        Assert.Equal(force, pair.NormalForce.Value, 1e-11 * force);
        Assert.Equal(-force, pair.ForceX.Value, 1e-11 * force);
        Assert.Equal(0.0, pair.ForceY.Value, 1e-11 * force);
    }

    // A contact at the middle of the common height 5 to 30 mm, centres of mass at 20 mm.
    [Fact]
    public void Force_acts_at_the_middle_of_the_common_height()
    {
        var pair = new ContactPair<R1>(Touching.Box(), Touching.Box(low: 0.001, high: 0.03), s_smooth);
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), Touching.Facing(0.199, 0.0));
        Assert.Equal((0.0175 - 0.02) * o.OnA[0], o.OnA[4], 1e-12 * Math.Abs(o.OnA[0]));
        Assert.Equal((0.0175 - 0.02) * o.OnB[0], o.OnB[4], 1e-12 * Math.Abs(o.OnB[0]));
    }

    // Nose down by 0.04 rad: the face's middle, 30 mm above the centre of mass, leans 1.2 mm into the wall.
    [Fact]
    public void A_leaning_face_is_met_where_it_leans_to()
    {
        var wall = new WallSettings(0.0, -1.0, 0.0, 1.0, 0.3);
        var pair = new ContactPair<R1>(Touching.Box(low: 0.04, high: 0.06), ContactBody.FromWall(wall), s_smooth);
        BodyPose<R1> p = Touching.Still(-0.1, 0.0, 0.0);
        p.Pitch = 0.04;
        Touching.Outcome o = Touching.Evaluate(pair, p, ContactBody.WallPose<R1>(wall));
        double force = s_smooth.Stiffness * 0.18 * 0.0012;
        Assert.Equal(force, pair.NormalForce.Value, 1e-10 * force);
        Assert.Equal(0.0006, pair.CentreX.Value, 1e-12);
        Assert.Equal(-0.03 * force, o.OnA[4], 1e-10 * force);
    }

    [Theory]
    [InlineData(0.04, 1.0)]
    [InlineData(0.0445, 0.5)]
    [InlineData(0.046, 0.0)]
    public void Without_common_height_there_is_no_contact(double heave, double share)
    {
        var pair = new ContactPair<R1>(Touching.Box(), Touching.Box(), s_smooth);
        BodyPose<R1> q = Touching.Facing(0.199, 0.0);
        q.Heave = heave;
        Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), q);
        Assert.Equal(share * s_smooth.Stiffness * 0.001 * 0.18, pair.NormalForce.Value, 1e-9);
    }

    [Theory]
    [InlineData(1.0)]
    [InlineData(-1.0)]
    public void Steady_sliding_rubs_with_the_friction_coefficient(double direction)
    {
        var wall = new WallSettings(0.0, -1.0, 0.0, 1.0);
        var pair = new ContactPair<R1>(Touching.Box(), ContactBody.FromWall(wall), Touching.Usual);
        BodyPose<R1> p = Touching.Still(-0.098, 0.0, 0.0);
        p.Motion.V = 0.3 * direction;
        R1[] z = [0.0];
        for (int i = 0; i < 200; i++)
        {
            Touching.Evaluate(pair, p, ContactBody.WallPose<R1>(wall), 1e-4, z);
        }

        Assert.Equal(-direction * Touching.Usual.Friction, pair.ForceY.Value / pair.NormalForce.Value, 1e-12);
        Assert.Equal(0.3 * Touching.Usual.Friction * pair.NormalForce.Value, pair.LostPower.Value, 1e-12 * pair.NormalForce.Value);
    }

    [Fact]
    public void Friction_never_exceeds_its_coefficient()
    {
        var pair = new ContactPair<R1>(Touching.Crooked(), Touching.Box(), Touching.Usual);
        var random = new Random(5);
        R1[] z = [0.0];
        for (int i = 0; i < 2000; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            Touching.Evaluate(pair, p, q, 1e-3 * random.NextDouble(), z);
            double bound = Touching.Usual.Friction * pair.NormalForce.Value;
            Assert.True(Math.Abs(pair.FaceFriction.Value) <= bound * (1.0 + 1e-12), $"friction {pair.FaceFriction.Value} N of at most {bound} N");
        }
    }

    // One body in the middle of another, far above it, tilted: nonsense, but numbers.
    [Theory]
    [InlineData(0.0, 0.0)]
    [InlineData(1e-9, 0.0)]
    [InlineData(0.05, 0.3)]
    [InlineData(0.1, -0.3)]
    public void Any_pose_gives_finite_numbers_and_allocates_nothing(double distance, double heave)
    {
        for (int which = 0; which < 25; which++)
        {
            (ContactBody a, ContactBody b) = Touching.Two(which);
            var pair = new ContactPair<R1>(a, b, Touching.Usual);
            BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0);
            BodyPose<R1> q = Touching.Still(distance, 0.0, which % 2);
            q.Heave = heave;
            q.Pitch = heave;
            Span<R1> z = new R1[pair.BristleCount];
            Span<R1> dz = new R1[pair.BristleCount];
            Wrench<R1> onA = default;
            Wrench<R1> onB = default;
            long before = GC.GetAllocatedBytesForCurrentThread();
            pair.Evaluate(p, q, 1e-4, z, dz, ref onA, ref onB);
            Assert.Equal(before, GC.GetAllocatedBytesForCurrentThread());
            R1[] all = [onA.Fx, onA.Fy, onA.Fz, onA.Roll, onA.Pitch, onA.Yaw, onB.Fx, onB.Yaw, pair.LostPower, pair.CentreX, pair.CentreY, .. z, .. dz];
            Assert.All(all, x => Assert.True(double.IsFinite(x.Value)));
        }
    }

    // z' = -z / 1 ms, implicit, near or far
    [Theory]
    [InlineData(0.21)]
    [InlineData(3.0)]
    public void In_the_air_the_bristles_relax(double distance)
    {
        var pair = new ContactPair<R1>(Touching.Box(ramp: 0.5), Touching.Box(ramp: 0.5), Touching.Usual);
        R1[] z = [0.0004, -0.0002, 0.0001];
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), Touching.Facing(distance, 0.0), 1e-3, z);
        Assert.Equal(0.0002, o.Z[0], 1e-15);
        Assert.Equal(-0.0001, o.Z[1], 1e-15);
        Assert.Equal(0.00005, o.Z[2], 1e-15);
        Assert.Equal(-0.2, o.Rates[0], 1e-12);
        Assert.All(o.OnA, force => Assert.Equal(0.0, force));
    }

    // z = z* + g z' must hold whatever the slip, and z' must be that of a plain evaluation there.
    [Fact]
    public void Implicit_stage_solves_the_bristles()
    {
        var random = new Random(6);
        for (int i = 0; i < 500; i++)
        {
            (ContactBody a, ContactBody b) = Touching.Two(i % 25);
            var pair = new ContactPair<R1>(a, b, Touching.Usual);
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            double[] before = [.. Enumerable.Range(0, pair.BristleCount).Select(_ => 0.001 * (random.NextDouble() - 0.5))];
            R1[] z = [.. before.Select(x => (R1)x)];
            const double Step = 1e-3;
            Touching.Outcome stage = Touching.Evaluate(pair, p, q, Step, z);
            Touching.Outcome plain = Touching.Evaluate(pair, p, q, 0.0, z);
            for (int k = 0; k < before.Length; k++)
            {
                Assert.Equal(stage.Z[k], before[k] + (Step * stage.Rates[k]), 1e-15);
                Assert.Equal(stage.Rates[k], plain.Rates[k], 1e-9);
            }
        }
    }
}
