using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Turning on the spot: the closed form for four point contacts, and measured effective-track ratios.</summary>
public class ExternalSkidSteerTests
{
    /// <summary>Mean of a series over the two wheels of a side at the end.</summary>
    internal static double Mean(RunResult run, Func<WheelTrace, Series> what, string side) =>
        0.5 * (what(run.Trace.Wheel("front " + side))[^1] + what(run.Trace.Wheel("rear " + side))[^1]);

    /// <summary>Difference of the rim speeds over yaw rate and track [1].</summary>
    internal static double TrackRatio(RunResult run, double track) =>
        (Mean(run, w => w.SurfaceSpeed, "right") - Mean(run, w => w.SurfaceSpeed, "left"))
        / (run.Trace.Body.YawRate[^1] * track);

    // Four point contacts, equal loads, Coulomb friction, slow steady spin: ratio 1 + (L/B)^2, drive force per side
    // mu (W/2) L/sqrt(L^2 + B^2), moment mu W L B/(2 sqrt(L^2 + B^2)); computed here, closed by the energy balance
    [Theory]
    [InlineData(0.12, 0.12)]
    [InlineData(0.10, 0.16)]
    public void Slow_spin_on_four_points_is_the_closed_form(double wheelbase, double track)
    {
        const double friction = 0.8;
        const double mass = 1.5;
        RunResult run = FourPoints(wheelbase, track, friction, mass);

        double weight = mass * 9.81;
        double diagonal = Math.Sqrt((wheelbase * wheelbase) + (track * track));
        double ratio = 1.0 + (wheelbase * wheelbase / (track * track));
        double side = friction * (weight / 2.0) * wheelbase / diagonal;
        double moment = friction * weight * wheelbase * track / (2.0 * diagonal);
        Assert.Equal(ratio, TrackRatio(run, track), 1e-6 * ratio);
        Assert.Equal(side, 2.0 * Mean(run, w => w.LongitudinalForce, "right"), 1e-6 * side);
        Assert.Equal(-side, 2.0 * Mean(run, w => w.LongitudinalForce, "left"), 1e-6 * side);
        Assert.Equal(moment, -run.Trace.Body.ScrubMoment[^1], 1e-6 * moment);
    }

    /// <summary>The same with another friction sideways, and with patches that resist turning themselves: ratio 1 + rho^2 (L/B)^2 + 4 s^2/B^2 (own derivation from the law of
    /// greatest dissipation on an ellipsoid).</summary>
    [Theory]
    [InlineData(1.24, 0.0)]
    [InlineData(0.8, 0.0)]
    [InlineData(1.0, 0.03)]
    [InlineData(1.24, 0.03)]
    public void A_slow_spin_with_lateral_ratio_and_patch_meets_its_closed_form(double lateral, double patch)
    {
        const double wheelbase = 0.10, track = 0.16;
        RunResult run = FourPoints(wheelbase, track, 0.8, 1.5, t => t with { LateralFrictionRatio = lateral, PatchWidth = patch, PatchLength = 0.02 });
        double s = patch > 0.0 ? MeanDistance(0.02, patch) : 0.0;
        double ratio = 1.0 + ((lateral * lateral * wheelbase * wheelbase) + (4.0 * s * s)) / (track * track);
        Assert.Equal(ratio, TrackRatio(run, track), 1e-5 * ratio);
        Assert.True(run.EnergyResidualRatio < 1e-6, $"{run.EnergyResidualRatio:E1}");
    }

    // of a rectangle's points from its middle, by a sum over the rectangle
    private static double MeanDistance(double length, double width)
    {
        const int n = 1000;
        double sum = 0.0;
        for (int i = 0; i < n; i++)
        {
            for (int k = 0; k < n; k++)
            {
                sum += double.Hypot((((i + 0.5) / n) - 0.5) * length, (((k + 0.5) / n) - 0.5) * width);
            }
        }

        return sum / n / n;
    }

    /// <summary>A slow spin on four equally loaded point contacts.</summary>
    internal static RunResult FourPoints(double wheelbase, double track, double friction, double mass, Func<TyreSettings, TyreSettings>? change = null)
    {
        MotorSettings motor = ExternalRobots.WheelMotor(0.03, 0.1, 30.0);
        RobotSettings robot = ExternalRobots.FourCorners(
            ExternalRobots.Body(mass, 0.0), change?.Invoke(ExternalRobots.Coulomb(friction)) ?? ExternalRobots.Coulomb(friction), wheelbase, track, 0.03, 1e-5, motor, motor);
        return ExternalRobots.Run(ExternalRobots.Scenario(robot, 3.0, turn: 1.0, tolerance: 1e-9));
    }

    // An outdoor robot with air tyres. Ratio on asphalt at 20 psi 1.406: Mandow and others, IROS 2007, Tables I-II, read
    // second-hand; on smooth tile about 1.41: Wang and others, Sensors 15(5), 2015, read second-hand. Wheelbase from memory;
    // tyre and mass invented but plausible
    [Theory]
    [InlineData(0.9, 0.75, 1.406)]
    [InlineData(0.6, 0.50, 1.41)]
    public void Measured_track_ratio_of_an_outdoor_robot_is_met(double still, double sliding, double expected) =>
        Assert.Equal(expected, Measured(Outdoor(still, sliding), 0.268, 0.40, 0.11, 14.0, null), 0.06 * expected);

    // The maker's calibrated track multiplier of a 17 kg robot, read in its published configuration and description files
    [Fact]
    public void Calibrated_track_multiplier_of_a_17_kg_robot_is_met() =>
        Assert.Equal(1.5, Measured(Outdoor(0.9, 0.75), 0.262, 0.37559, 0.098, 17.0, 0.4485), 0.06 * 1.5);

    /// <summary>An air tyre, invented but plausible.</summary>
    internal static TyreSettings Outdoor(double still, double sliding) => new()
    {
        Name = "air", StaticFriction = still, KineticFriction = sliding, SlipSpeed = 0.5, BreakawayDeflection = 1e-3,
        BodyStiffness = 2e4, BodyDamping = 40.0, TreadMass = 0.05, VerticalStiffness = 2e4, RollingRenewal = 20.0,
        RollingResistance = 0.02, ReferenceLoad = 35.0,
    };

    /// <summary>Effective track ratio of a spin on the spot.</summary>
    internal static double Measured(TyreSettings tyre, double wheelbase, double track, double radius, double mass, double? yawInertia)
    {
        MotorSettings motor = ExternalRobots.WheelMotor(radius, 0.5, 300.0);
        ChassisSettings body = ExternalRobots.Body(mass, 0.1, size: 0.4) with { YawInertia = yawInertia };
        RobotSettings robot = ExternalRobots.FourCorners(body, tyre, wheelbase, track, radius, 0.01, motor, motor);
        RunResult run = ExternalRobots.Run(ExternalRobots.Scenario(robot, 4.0, turn: 1.0, tolerance: 1e-5));
        Assert.Equal(TrackRatio(run, track), run.Answers.EffectiveTrackRatio!.Value, 0.005);
        return TrackRatio(run, track);
    }
}
