using PushSim.Contact;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Contact;

/// <summary>A ramp under another body, in closed form: horizontal over vertical force is tan(beta + atan mu) while it goes under, tan(beta - atan mu) while it slides back
/// (inclined plane with friction, any textbook of statics); beta turns with the body's pitch.</summary>
public class WedgeTests
{
    [Theory]
    [InlineData(20.0, 0.1, 0.0)]
    [InlineData(30.0, 0.3, 0.0)]
    [InlineData(45.0, 0.3, 0.0)]
    [InlineData(20.0, 0.3, 2.0)]
    [InlineData(45.0, 0.1, -3.0)]
    public void Forces_are_those_of_an_inclined_plane(double beta, double mu, double noseUp)
    {
        double[] speeds = [0.2, -0.2];
        double angle = beta * Math.PI / 180.0;
        double lean = noseUp * Math.PI / 180.0;
        Assert.All(speeds, speed =>
        {
            double expected = Math.Tan(angle - lean + (Math.Sign(speed) * Math.Atan(mu)));
            Assert.Equal(expected, Ratio(angle, mu, lean, speed), 1e-12 * Math.Abs(expected));
        });
    }

    /// <summary>Horizontal over vertical force between a ramp and what rides on it, while it slides [1].</summary>
    /// <param name="angle">Of the ramp [rad].</param>
    /// <param name="mu">Friction [1].</param>
    /// <param name="lean">By how much the ramp's robot leans nose up [rad].</param>
    /// <param name="speed">At which the ramp moves under the other [m/s].</param>
    internal static double Ratio(double angle, double mu, double lean, double speed)
    {
        Outcome o = Slide(angle, mu, lean, speed);
        return o.Along / o.Up;
    }

    /// <summary>What the wedge does to its rider, steadily sliding.</summary>
    internal static Outcome Slide(double angle, double mu, double lean, double speed)
    {
        var settings = new ContactSettings { Friction = mu, Restitution = 1.0 };
        ContactBody ramp = Touching.Box(ramp: angle, rampTop: 0.03, high: 0.03);
        ContactBody rider = Touching.Box(0.2, 0.12, 0.012, 0.06);
        var pair = new ContactPair<R1>(ramp, rider, settings);
        (BodyPose<R1> p, BodyPose<R1> q) = Riding(angle, lean);
        p.VX = speed;
        R1[] z = new R1[3];
        for (int i = 0; i < 400; i++)
        {
            Touching.Evaluate(pair, p, q, 1e-4, z);
        }

        Touching.Outcome o = Touching.Evaluate(pair, p, q, 0.0, z);
        return new(-o.Force[0], -o.Force[2], o.OnB[1], q.Z.Value);
    }

    /// <summary>Force on the rider along the wedge's way and up [N], moment on it about its centre of mass that raises its nose [N m], that centre's height [m].</summary>
    internal sealed record Outcome(double Along, double Up, double Moment, double Centre);

    // A rider pressed on a slope at rest stays stuck below atan mu, whatever the time: friction on slopes does not forget.
    [Theory]
    [InlineData(10.0, true)]
    [InlineData(15.0, true)]
    [InlineData(17.5, false)]
    [InlineData(25.0, false)]
    public void A_slope_below_the_friction_angle_locks(double beta, bool locks)
    {
        // atan 0.3 = 16.7 degrees; the rider still rocks a little while it is looked at
        double angle = beta * Math.PI / 180.0;
        ContactBody ramp = Touching.Box(0.4, ramp: angle, rampTip: 0.0, rampTop: 0.03, high: 0.03);
        ContactBody rider = Touching.Box(0.05, 0.12, 0.012, 0.06);
        var pair = new ContactPair<R1>(ramp, rider, new ContactSettings { Friction = 0.3 });
        double[] inertia = [1e-3, 1e-3, 1e-3];
        var bodies = new FreeBodies(pair, (double.PositiveInfinity, 0.5), (inertia, inertia)) { Gravity = 9.81 };
        bodies.Place(0, 0.0, 0.0, Touching.Centre);

        // flat on the slope: turned nose up with its tail over the tip
        double x = 0.2 - (0.5 * 0.03 / Math.Tan(angle));
        double rise = 0.015;
        (double s, double c) = Math.SinCos(angle);
        double below = Touching.Centre - 0.012;
        bodies.Place(1, x + (s * below) - (s * 1e-4), 0.0, rise + (c * below) - (c * 1e-5), pitch: angle);
        bodies.Run(0.4, 2e-4);
        double start = bodies.State(1, 0);
        bodies.Run(0.1, 2e-4);
        double moved = bodies.State(1, 0) - start;
        Assert.True(locks ? Math.Abs(moved) < 1e-4 : moved > 2e-3, $"moved {1e3 * moved} mm");
    }

    // Of the other's low edge only: the ramp's nose is pushed down, the rider's front up.
    private static (BodyPose<R1> Ramp, BodyPose<R1> Rider) Riding(double angle, double lean)
    {
        // the rider's lower front edge a little below the slope's middle
        double height = 0.0155;
        double back = (height - 0.001) / Math.Tan(angle);
        BodyPose<R1> p = Touching.Still(0.0, 0.0, pitch: -lean);
        (double s, double c) = Math.SinCos(lean);
        double x = 0.1 - back;
        double z = height - Touching.Centre;
        double slopeX = (c * x) - (s * z);
        double slopeZ = Touching.Centre + (s * x) + (c * z);
        double depth = 1e-4;
        return (p, Touching.Still(slopeX + 0.1 - (depth * Math.Sin(angle)), 0.0, Math.PI, z: slopeZ + Touching.Centre - 0.012 - (depth * Math.Cos(angle))));
    }
}
