using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>The contact enters both bodies by the arms of its point's velocity, and its depth is the depth of that point. Computed here.</summary>
public class ContactPowerTests
{
    public static TheoryData<int> Pairs => [.. Enumerable.Range(0, 25)];

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Power_of_both_wrenches_is_what_the_contact_loses(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var random = new Random(2000 + which);
        for (int i = 0; i < 300; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            R1[] z = [.. Enumerable.Range(0, pair.BristleCount).Select(_ => (R1)(0.001 * (random.NextDouble() - 0.5)))];
            Touching.Outcome outcome = Touching.Evaluate(pair, p, q, 1e-4, z);
            double power = outcome.WrenchA.Power(p.Motion).Value + outcome.WrenchB.Power(q.Motion).Value;
            double terms = Terms(outcome.OnA, p.Motion) + Terms(outcome.OnB, q.Motion);
            Assert.True(Math.Abs(power + pair.LostPower.Value) <= 1e-12 * terms, $"{power:R} W on the bodies, {pair.LostPower.Value:R} W lost");
        }
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Force_and_counterforce_cancel(int which)
    {
        (ContactBody a, ContactBody b) = Touching.Two(which);
        var pair = new ContactPair<R1>(a, b, Touching.Usual);
        var random = new Random(3000 + which);
        for (int i = 0; i < 300; i++)
        {
            (BodyPose<R1> p, BodyPose<R1> q) = Touching.Poses(random);
            Touching.Outcome o = Touching.Evaluate(pair, p, q);
            (double ax, double ay, double am) = OnFloor(p, o.OnA);
            (double bx, double by, double bm) = OnFloor(q, o.OnB);
            double bound = 1e-12 * (1e-9 + Math.Abs(ax) + Math.Abs(ay) + pair.NormalForce.Value);
            Assert.Equal(0.0, ax + bx, bound);
            Assert.Equal(0.0, ay + by, bound);
            Assert.Equal(0.0, am + bm, bound);
            Assert.Equal(0.0, o.OnA[2] + o.OnB[2], bound);
            Assert.Equal(ax, pair.ForceX.Value, bound);
            Assert.Equal(ay, pair.ForceY.Value, bound);
        }
    }

    // A face within a wall's height and length: the point that acts is fixed in the body, so d depth/dt is exactly its speed.
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    [InlineData(4)]
    public void Depth_changes_by_the_closing_speed(int seed)
    {
        var wall = new WallSettings(0.5, 1.0, 0.5, -1.0, 0.3);
        ContactBody a = Touching.Box(low: 0.02, high: 0.05);
        ContactBody b = ContactBody.FromWall(wall with { X1 = 0.5, Y1 = -1.0, X2 = 0.5, Y2 = 1.0, Height = 0.3 });
        BodyPose<R1> q = ContactBody.WallPose<R1>(wall with { Y1 = -1.0, Y2 = 1.0 });
        ContactSettings plain = Touching.Usual with { Damping = 0.0, Friction = 0.0 };
        var pair = new ContactPair<R1>(a, b, plain);
        var damped = new ContactPair<R1>(a, b, plain with { Damping = 0.1 });
        BodyPose<R1> p = Touching.Pose(new Random(seed), 0.0, 0.1);
        p.Sine = 0.0;
        p.Cosine = 1.0;
        p.Motion.R = 0.0;
        p.X = 0.5 - 0.1 + 0.002 + (0.015 * Math.Abs(p.Pitch.Value));
        Touching.Evaluate(pair, p, q);
        Touching.Evaluate(damped, p, q);
        double force = pair.NormalForce.Value;
        double closing = ((damped.NormalForce.Value / force) - 1.0) / 0.1;
        const double Step = 1e-5;
        double ahead = Depth(pair, Moved(p, Step), q);
        double behind = Depth(pair, Moved(p, -Step), q);
        Assert.Equal((ahead - behind) / (2.0 * Step), closing, 1e-8);

        // not the speed of the centre of mass, or this shows nothing
        Assert.True(Math.Abs(closing - p.Motion.U.Value) > 1e-4);
    }

    // The touched side of a tilted body hangs as much higher as its tilt lifts it there; the other, taller and level, feels the push at that height. Computed here.
    [Theory]
    [InlineData(0.05, 0.0)]
    [InlineData(-0.05, 0.0)]
    [InlineData(0.0, 0.05)]
    [InlineData(0.0, -0.05)]
    public void A_tilted_side_pushes_where_it_is(double roll, double pitch)
    {
        const double heave = 0.006;
        var pair = new ContactPair<R1>(Touching.Box(low: 0.02, high: 0.05), Touching.Box(low: 0.0, high: 0.2, centre: 0.03), Touching.Usual with { Friction = 0.0 });
        foreach ((double x, double y, int axis) in new[] { (0.0, 0.178, 1), (0.0, -0.178, 1), (0.198, 0.0, 0), (-0.198, 0.0, 0) })
        {
            BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0) with { Heave = heave, Roll = roll, Pitch = pitch };
            Touching.Outcome o = Touching.Evaluate(pair, p, Touching.Still(x, y, 0.0));

            // M_pitch = z F_x, M_roll = -z F_y, z above the level body's centre
            double z = axis == 0 ? o.OnB[4] / o.OnB[0] : -o.OnB[3] / o.OnB[1];
            double lifted = heave + (0.5 * y * roll) - (0.5 * x * pitch);
            Assert.Equal(0.035 + lifted - 0.03, z, 2e-4);
        }
    }

    // Two tilted bodies: heights of the acting point move too, an effect of second order in the angles.
    [Theory]
    [InlineData(0.02)]
    [InlineData(0.01)]
    [InlineData(0.005)]
    public void Depth_rate_of_two_tilted_robots_is_right_to_second_order(double tilt)
    {
        ContactBody a = Touching.Box();
        ContactSettings plain = Touching.Usual with { Damping = 0.0, Friction = 0.0 };
        var pair = new ContactPair<R1>(a, a, plain);
        var damped = new ContactPair<R1>(a, a, plain with { Damping = 0.1 });
        BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0);
        BodyPose<R1> q = Touching.Facing(0.196, 0.0);
        p.Pitch = tilt;
        q.Pitch = -0.7 * tilt;
        p.Motion = new BodyMotion<R1> { U = 0.2, ThetaDot = 0.6, ZDot = 0.1 };
        q.Motion = new BodyMotion<R1> { U = 0.1, ThetaDot = 0.4, ZDot = -0.05 };
        Touching.Evaluate(pair, p, q);
        Touching.Evaluate(damped, p, q);
        double closing = ((damped.NormalForce.Value / pair.NormalForce.Value) - 1.0) / 0.1;
        const double Step = 1e-5;
        double rate = (Depth(pair, Moved(p, Step), Moved(q, Step)) - Depth(pair, Moved(p, -Step), Moved(q, -Step))) / (2.0 * Step);
        double scale = tilt * (0.15 + (0.1 * 1.0));
        Assert.True(Math.Abs(rate - closing) <= scale, $"d depth/dt {rate:R} m/s, closing {closing:R} m/s");
        Assert.True(Math.Abs(closing - 0.3) > 1e-3, $"closing {closing:R} m/s is that of the centres");
    }

    private static double Depth(ContactPair<R1> pair, in BodyPose<R1> p, in BodyPose<R1> q)
    {
        Touching.Evaluate(pair, p, q);
        return pair.NormalForce.Value / (Touching.Usual.Stiffness * 0.18);
    }

    private static BodyPose<R1> Moved(BodyPose<R1> p, double time)
    {
        BodyMotion<R1> m = p.Motion;
        p.X = p.X.Value + (time * ((p.Cosine.Value * m.U.Value) - (p.Sine.Value * m.V.Value)));
        p.Y = p.Y.Value + (time * ((p.Sine.Value * m.U.Value) + (p.Cosine.Value * m.V.Value)));
        p.Heave = p.Heave.Value + (time * m.ZDot.Value);
        p.Pitch = p.Pitch.Value + (time * m.ThetaDot.Value);
        p.Roll = p.Roll.Value + (time * m.PhiDot.Value);
        return p;
    }

    private static double Terms(double[] w, in BodyMotion<R1> m) =>
        (1e-6 + Math.Abs(w[0] * m.U.Value)) + Math.Abs(w[1] * m.V.Value) + Math.Abs(w[2] * m.ZDot.Value)
        + Math.Abs(w[3] * m.PhiDot.Value) + Math.Abs(w[4] * m.ThetaDot.Value) + Math.Abs(w[5] * m.R.Value);

    private static (double X, double Y, double Moment) OnFloor(in BodyPose<R1> p, double[] w)
    {
        double x = (p.Cosine.Value * w[0]) - (p.Sine.Value * w[1]);
        double y = (p.Sine.Value * w[0]) + (p.Cosine.Value * w[1]);
        return (x, y, w[5] + (p.X.Value * y) - (p.Y.Value * x));
    }
}
