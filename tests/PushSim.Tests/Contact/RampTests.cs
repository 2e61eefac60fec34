using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>Who gets under whom, and with what forces. Wedge with friction: statics of an inclined plane, computed here.</summary>
public class RampTests
{
    private const double Friction = 0.3;

    private static readonly ContactSettings s_settings = Touching.Usual with { Friction = Friction, Damping = 0.0 };

    [Theory]
    [InlineData(20.0)]
    [InlineData(35.0)]
    [InlineData(50.0)]
    public void Sliding_up_vertical_over_horizontal_is_cot_of_beta_plus_friction_angle(double degrees)
    {
        double beta = degrees * Math.PI / 180.0;
        double[] onB = Slide(beta, 1.0);
        double expected = 1.0 / Math.Tan(beta + Math.Atan(Friction));
        Assert.Equal(expected, onB[2] / -onB[0], 1e-12 * expected);
    }

    [Theory]
    [InlineData(20.0)]
    [InlineData(35.0)]
    [InlineData(50.0)]
    public void Sliding_back_vertical_over_horizontal_is_cot_of_beta_less_friction_angle(double degrees)
    {
        double beta = degrees * Math.PI / 180.0;
        double[] onB = Slide(beta, -1.0);
        double expected = 1.0 / Math.Tan(beta - Math.Atan(Friction));
        Assert.Equal(expected, onB[2] / -onB[0], 1e-11 * expected);
    }

    [Fact]
    public void A_slope_flatter_than_the_friction_angle_holds_its_rider_back()
    {
        double[] onB = Slide(10.0 * Math.PI / 180.0, -1.0);
        Assert.True(onB[0] > 0.0, $"rider pushed off with {-onB[0]} N");
        Assert.True(onB[2] > 0.0);
    }

    // Under its own weight: tan 10 degrees is 0.18, tan 25 degrees 0.47, friction 0.3 in between.
    [Fact]
    public void A_rider_at_rest_locks_on_a_flat_slope()
    {
        double[] x = Rest(10.0 * Math.PI / 180.0, 1.2);
        Assert.Equal(x[^20_001], x[^1], 1e-6);
    }

    [Fact]
    public void A_rider_at_rest_slides_down_a_steep_slope()
    {
        const double Beta = 25.0 * Math.PI / 180.0;
        double[] x = Rest(Beta, 0.181);

        // from the second differences, once it has settled
        const double Time = 0.06;
        double acceleration = (x[17_999] - (2.0 * x[11_999]) + x[5_999]) / (Time * Time);
        double expected = 9.81 * (Math.Sin(Beta) - (Friction * Math.Cos(Beta))) * Math.Cos(Beta);
        Assert.Equal(expected, acceleration, 0.02 * expected);
    }

    [Theory]
    [InlineData(0.001, 0.003, 1)]
    [InlineData(0.003, 0.001, 2)]
    public void The_lower_tip_gets_under(double tipA, double tipB, int under)
    {
        var pair = new ContactPair<R1>(Touching.Box(ramp: 0.5, rampTip: tipA), Touching.Box(ramp: 0.5, rampTip: tipB), s_settings);
        Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), Touching.Facing(0.19, 0.0));
        Assert.True(pair.NormalForce.Value > 0.0);
        Assert.Equal(0.0, pair.BluntForce.Value, 1e-9);
        Assert.Equal(under == 1 ? pair.NormalForce.Value : 0.0, pair.RampForceA.Value, 1e-9);
        Assert.Equal(under == 2 ? pair.NormalForce.Value : 0.0, pair.RampForceB.Value, 1e-9);
    }

    [Theory]
    [InlineData(0.006, true)]
    [InlineData(0.004, false)]
    public void A_tip_above_the_lower_edge_is_blunt(double tip, bool isBlunt)
    {
        var pair = new ContactPair<R1>(Touching.Box(ramp: 0.5, rampTip: tip), Touching.Box(), s_settings);
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), Touching.Facing(0.195, 0.0));
        Assert.Equal(isBlunt ? 0.0 : 1.0, pair.RampForceA.Value / pair.NormalForce.Value, 1e-9);
        Assert.Equal(isBlunt, o.OnB[2] == 0.0);
    }

    // Penetration ((tip + D tan beta) - lower edge) cos beta over the common width, normal to the slope.
    [Fact]
    public void Force_on_a_slope_is_stiffness_times_its_penetration()
    {
        const double Beta = 0.5;
        var pair = new ContactPair<R1>(Touching.Box(ramp: Beta), Touching.Box(), s_settings with { Friction = 0.0 });
        const double Inward = 0.009;
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), Touching.Facing(0.2 - Inward, 0.0));
        double penetration = (0.001 + (Inward * Math.Tan(Beta)) - 0.005) * Math.Cos(Beta);
        double force = s_settings.Stiffness * 0.18 * penetration;
        Assert.Equal(force * Math.Cos(Beta), o.OnB[2], 1e-10 * force);
        Assert.Equal(-force * Math.Sin(Beta), o.OnB[0], 1e-10 * force);
        Assert.Equal(-force * Math.Cos(Beta), o.OnA[2], 1e-10 * force);

        // at the rider's lower edge, 15 mm below its centre and 100 mm in front of it
        Assert.Equal((-0.015 * o.OnB[0]) - (0.1 * o.OnB[2]), o.OnB[4], 1e-10 * force);
    }

    // Level for an instant, while both bodies heave and pitch: the damping's speed is the rate of the penetration.
    [Theory]
    [InlineData(0.4, 0.0, 0.0, 0.0, 0.0)]
    [InlineData(0.0, 0.3, 0.0, -0.1, 0.0)]
    [InlineData(0.0, 0.0, 1.5, 0.0, -0.8)]
    [InlineData(0.3, -0.2, 1.0, 0.15, 0.7)]
    public void Penetration_changes_by_the_closing_speed(double u, double riseA, double pitchA, double riseB, double pitchB)
    {
        ContactSettings plain = s_settings with { Friction = 0.0 };
        ContactBody ramp = Touching.Box(ramp: 0.5, centre: 0.03);
        var pair = new ContactPair<R1>(ramp, Touching.Box(), plain);
        var damped = new ContactPair<R1>(ramp, Touching.Box(), plain with { Damping = 0.1 });
        BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0);
        BodyPose<R1> q = Touching.Facing(0.191, 0.0);
        p.Motion = new BodyMotion<R1> { U = u, ZDot = riseA, ThetaDot = pitchA };
        q.Motion = new BodyMotion<R1> { ZDot = riseB, ThetaDot = pitchB };
        Touching.Evaluate(pair, p, q);
        Touching.Evaluate(damped, p, q);
        double closing = ((damped.NormalForce.Value / pair.NormalForce.Value) - 1.0) / 0.1;
        double Penetration(double time)
        {
            BodyPose<R1> a = p;
            BodyPose<R1> b = q;
            a.X = time * u;
            a.Heave = time * riseA;
            a.Pitch = time * pitchA;
            b.Heave = time * riseB;
            b.Pitch = time * pitchB;
            Touching.Evaluate(pair, a, b);
            return pair.RampForceA.Value / (plain.Stiffness * 0.18);
        }

        double rate = (Penetration(1e-6) - Penetration(-1e-6)) / 2e-6;
        Assert.Equal(rate, closing, 1e-7);
        Assert.True(Math.Abs(closing) > 0.01);
    }

    [Fact]
    public void A_rider_lifted_over_the_top_meets_an_upright_face()
    {
        var pair = new ContactPair<R1>(Touching.Box(ramp: 0.5, high: 0.02), Touching.Box(), s_settings);
        double length = 0.019 / Math.Tan(0.5);
        BodyPose<R1> q = Touching.Facing(0.2 - length + 0.001, 0.0);
        q.Heave = 0.0151;
        Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), q);
        Assert.Equal(0.0, pair.NormalForce.Value);
        q.X = 0.2 - length - 0.001;
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), q);
        Assert.Equal(-s_settings.Stiffness * 0.18 * 0.001, o.OnB[0], 1e-6);
        Assert.Equal(0.0, o.OnB[2]);
    }

    // A lower edge below the top, its front 1 mm behind the face there: the slope carries what lies over it, k (L - g cot beta) sin beta over the
    // common width, at the rider's edge; the upright face pushes level with k 1 mm at the height of the top, 8 mm above the ramp's
    // centre. At 0.6 mm above the tip the rider's face carries half. Computed here.
    [Theory]
    [InlineData(0.015, 0.0)]
    [InlineData(0.015, 0.04)]
    [InlineData(0.015, -0.06)]
    [InlineData(0.0016, 0.0)]
    [InlineData(0.0016, 0.04)]
    public void A_rider_held_by_the_upright_face_is_pushed_at_the_height_of_the_top(double edge, double offset)
    {
        const double Beta = 0.5;
        const double Behind = 0.001;
        var pair = new ContactPair<R1>(Touching.Box(ramp: Beta, high: 0.02, centre: 0.012), Touching.Box(centre: 0.017), s_settings with { Friction = 0.0 });
        double length = 0.019 / Math.Tan(Beta);
        double front = 0.1 - length - Behind;
        BodyPose<R1> q = Touching.Facing(front + 0.1, offset);
        q.Heave = edge - 0.005;
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), q);
        double width = 0.18 - Math.Abs(offset);
        double upright = s_settings.Stiffness * width * Behind;
        double slope = s_settings.Stiffness * width * (length - ((edge - 0.001) / Math.Tan(Beta))) * Math.Sin(Beta);
        double level = slope * Math.Sin(Beta);
        double up = slope * Math.Cos(Beta);
        double both = slope + upright;
        double[] onA = [-(level + upright), 0.0, -up, -0.5 * offset * up, (-(edge - 0.012) * level) - (0.008 * upright) + (front * up), 0.5 * offset * (level + upright)];
        double[] onB = [-(level + upright), 0.0, up, 0.5 * offset * up, (0.012 * level) - ((0.02 - (edge - 0.005) - 0.017) * upright) - (0.1 * up), 0.5 * offset * (level + upright)];
        Assert.All(onA.Zip(o.OnA), f => Assert.Equal(f.First, f.Second, 1e-10 * both));
        Assert.All(onB.Zip(o.OnB), f => Assert.Equal(f.First, f.Second, 1e-10 * both));
        Assert.Equal(both, pair.NormalForce.Value, 1e-10 * both);
        Assert.Equal(((slope * front) + (upright * (front + (0.5 * Behind)))) / both, pair.CentreX.Value, 1e-12);
    }

    // 0.1 mm above the top: level, at the rider's lower edge, 8.1 mm above the ramp's centre and 12 mm below the rider's. Computed here.
    [Fact]
    public void Above_the_top_the_upright_face_is_met_at_the_lower_edge()
    {
        var pair = new ContactPair<R1>(Touching.Box(ramp: 0.5, high: 0.02, centre: 0.012), Touching.Box(centre: 0.017), s_settings with { Friction = 0.0 });
        BodyPose<R1> q = Touching.Facing(0.2 - (0.019 / Math.Tan(0.5)) - 0.001, 0.03);
        q.Heave = 0.0151;
        Touching.Outcome o = Touching.Evaluate(pair, Touching.Still(0.0, 0.0, 0.0), q);
        double force = s_settings.Stiffness * 0.15 * 0.001;
        double[] onA = [-force, 0.0, 0.0, 0.0, -0.0081 * force, 0.015 * force];
        double[] onB = [-force, 0.0, 0.0, 0.0, 0.012 * force, 0.015 * force];
        Assert.Equal(0.1 - (0.019 / Math.Tan(0.5)) - 0.0005, pair.CentreX.Value, 1e-12);
        Assert.All(onA.Zip(o.OnA), f => Assert.Equal(f.First, f.Second, 1e-10 * force));
        Assert.All(onB.Zip(o.OnB), f => Assert.Equal(f.First, f.Second, 1e-10 * force));
    }

    // Places of a rider of 1 kg let go on a slope
    private static double[] Rest(double beta, double time)
    {
        const double Mass = 1.0;
        const double Weight = Mass * 9.81;
        const double Step = 1e-5;
        var pair = new ContactPair<R1>(Touching.Box(ramp: beta, high: 0.03), Touching.Box(), s_settings with { Damping = 5.0 });
        BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0);
        const double Raised = 0.015;
        BodyPose<R1> q = Touching.Facing(0.2 - ((0.004 + Raised) / Math.Tan(beta)), 0.0);
        q.Heave = Raised;
        var z = new R1[pair.BristleCount];
        var places = new double[(int)(time / Step)];
        for (int i = 0; i < places.Length; i++)
        {
            Touching.Outcome o = Touching.Evaluate(pair, p, q, Step, z);
            q.Motion.U = q.Motion.U.Value + (Step * o.OnB[0] / Mass);
            q.Motion.ZDot = q.Motion.ZDot.Value + (Step * ((o.OnB[2] - Weight) / Mass));
            q.X = q.X.Value - (Step * q.Motion.U.Value);
            q.Heave = q.Heave.Value + (Step * q.Motion.ZDot.Value);
            places[i] = q.X.Value;
        }

        return places;
    }

    /// <summary>Forces on a body that slides up (1) or back (-1) on a ramp [N].</summary>
    internal static double[] Slide(double beta, double direction)
    {
        var pair = new ContactPair<R1>(Touching.Box(ramp: beta), Touching.Box(), s_settings);
        BodyPose<R1> p = Touching.Still(0.0, 0.0, 0.0);
        BodyPose<R1> q = Touching.Facing(0.2 - (0.0045 / Math.Tan(beta)), 0.0);
        q.Motion = new BodyMotion<R1> { U = direction * Math.Cos(beta), ZDot = direction * Math.Sin(beta) };
        R1[] z = [0.0, direction * s_settings.FrictionDeflection];
        double[] onB = Touching.Evaluate(pair, p, q, 1e-4, z).OnB;

        // in its own axes the rider looks backward: forward is into the ramp
        Assert.True(pair.RampForceA.Value > 1.0);
        return onB;
    }
}
