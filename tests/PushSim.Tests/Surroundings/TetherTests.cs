using PushSim.Chassis;
using PushSim.Numerics;
using PushSim.Surroundings;
using Xunit;

namespace PushSim.Tests.Surroundings;

/// <summary>The tether against geometry and against its own stored energy.</summary>
public class TetherTests
{
    private const double Stiffness = 900.0;

    private static TetherEquations<R1> Tether(double damping = 0.0) => new()
    {
        Numbers = new TetherNumbers<R1>
        {
            HookX = -0.08, HookY = 0.03, HookZ = -0.01, AnchorY = 0.11, AnchorHeight = 0.07, FreeLength = 0.2, Stiffness = Stiffness, Damping = damping, CentreHeight = 0.03,
        },
    };

    // Stretch by the rotation matrix of the heading; the anchor stands at x = -0.5 m. Computed here.
    [Theory]
    [InlineData(0.0, 0.0, 0.0)]
    [InlineData(0.04, -0.03, 0.7)]
    [InlineData(0.1, 0.2, -2.1)]
    public void Stretch_is_the_distance_of_hook_and_anchor(double x, double y, double yaw)
    {
        TetherEquations<R1> tether = Tether();
        Wrench<R1> pull = default;
        tether.Apply(new BodyMotion<R1>(), Tilted(0.0, 0.0), x, y, Math.Sin(yaw), Math.Cos(yaw), 0.004, -0.5, 0.0, ref pull);
        double dx = -0.5 - (x + (Math.Cos(yaw) * -0.08) - (Math.Sin(yaw) * 0.03));
        double dy = 0.11 - (y + (Math.Sin(yaw) * -0.08) + (Math.Cos(yaw) * 0.03));
        double dz = 0.07 - (0.03 - 0.01 + 0.004);
        double length = Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz));
        Assert.Equal(length - 0.2, tether.Stretch.Value, 1e-14);
        Assert.Equal(Stiffness * (length - 0.2), tether.Tension.Value, 1e-9);

        // the pull points at the anchor; forces are in the heading frame
        double tension = tether.Tension.Value;
        Assert.Equal(tension * ((Math.Cos(yaw) * dx) + (Math.Sin(yaw) * dy)) / length, pull.Fx.Value, 1e-9);
        Assert.Equal(tension * ((Math.Cos(yaw) * dy) - (Math.Sin(yaw) * dx)) / length, pull.Fy.Value, 1e-9);
        Assert.Equal(tension * dz / length, pull.Fz.Value, 1e-9);
    }

    // Power given to the body is what the spring loses, with every motion of the body at once; the slope of the energy by central difference, computed here
    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    [InlineData(3)]
    public void Power_is_the_energy_that_the_spring_loses(int seed)
    {
        var random = new Random(seed);
        double U(double a) => a * ((2.0 * random.NextDouble()) - 1.0);
        double x = U(0.1), y = U(0.1), yaw = U(3.0), heave = U(0.005), pitch = U(0.8), roll = U(0.8);
        double u = U(0.5), v = U(0.5), r = U(4.0), heaveRate = U(0.2), pitchRate = U(1.0), rollRate = U(1.0), anchorSpeed = U(0.3);
        TetherEquations<R1> tether = Tether();
        Attitude<R1> attitude = Tilted(roll, pitch);
        attitude.Rates(rollRate, pitchRate, r, out R1 headingTurns, out R1 rollTurns, out R1 pitchTurns);
        double Energy(double t)
        {
            Wrench<R1> unused = default;
            double a = yaw + (headingTurns.Value * t);
            double fromX = x + (t * ((u * Math.Cos(yaw)) - (v * Math.Sin(yaw))));
            double fromY = y + (t * ((u * Math.Sin(yaw)) + (v * Math.Cos(yaw))));
            tether.Apply(new BodyMotion<R1>(), Tilted(roll + (t * rollTurns.Value), pitch + (t * pitchTurns.Value)), fromX, fromY, Math.Sin(a), Math.Cos(a), heave + (t * heaveRate), -0.6 + (t * anchorSpeed), 0.0, ref unused);
            return 0.5 * Stiffness * tether.Stretch.Value * tether.Stretch.Value;
        }

        const double h = 1e-6;
        double slope = (Energy(h) - Energy(-h)) / (2.0 * h);
        Wrench<R1> pull = default;
        BodyMotion<R1> motion = new() { U = u, V = v, R = r, ZDot = heaveRate, ThetaDot = pitchRate, PhiDot = rollRate };
        tether.Apply(motion, attitude, x, y, Math.Sin(yaw), Math.Cos(yaw), heave, -0.6, anchorSpeed, ref pull);
        Assert.Equal(slope, tether.AnchorPower.Value - pull.Power(motion).Value, 1e-6 * (1.0 + Math.Abs(slope)));

        // damping takes what tension gives beyond the spring's
        TetherEquations<R1> damped = Tether(0.05);
        Wrench<R1> pulled = default;
        damped.Apply(motion, attitude, x, y, Math.Sin(yaw), Math.Cos(yaw), heave, -0.6, anchorSpeed, ref pulled);
        Assert.Equal(slope, damped.AnchorPower.Value - pulled.Power(motion).Value - damped.DampingPower.Value, 1e-6 * (1.0 + Math.Abs(slope)));
        Assert.True(damped.DampingPower.Value > 0.0);
    }

    private static Attitude<R1> Tilted(double roll, double pitch)
    {
        Attitude<R1> attitude = default;
        attitude.Set(roll, pitch);
        return attitude;
    }

    [Fact]
    public void A_slack_tether_does_not_push()
    {
        TetherEquations<R1> tether = Tether();
        Wrench<R1> pull = default;
        tether.Apply(new BodyMotion<R1> { U = 1.0 }, Tilted(0.0, 0.0), -0.25, 0.1, 0.0, 1.0, 0.0, -0.35, 0.0, ref pull);
        Assert.True(tether.Stretch.Value < 0.0);
        Assert.Equal((0.0, 0.0, 0.0, 0.0), (pull.Fx.Value, pull.Fy.Value, pull.Fz.Value, tether.Tension.Value));
    }
}
