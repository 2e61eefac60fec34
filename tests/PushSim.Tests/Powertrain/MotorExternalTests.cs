using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Tests.Simulation;
using Xunit;

namespace PushSim.Tests.Powertrain;

/// <summary>A motor alone on the bench, run by the engine, against textbook cases. The engine leaves inductance out.</summary>
public class MotorExternalTests
{
    private const double Rpm = Math.PI / 30.0;

    // the flywheel's radius, so that rim speed gives spin
    private const double Radius = 1e-4;

    private static RunResult Spin(DriveSettings drive, double inertia, double volts, double end) =>
        ExternalRobots.Run(ExternalRobots.Scenario(ExternalRobots.Bench(drive, inertia, volts), end, throttle: 1.0, tolerance: 1e-9));

    /// <summary>Spin at the end [rad/s].</summary>
    internal static double Speed(RunResult run) => run.Trace.Wheel("flywheel").SurfaceSpeed[^1] / Radius;

    /// <summary>Current at the end [A].</summary>
    internal static double Current(RunResult run) => run.Trace.Motors[0].Current[^1];

    private static DriveSettings Drive(params (MotorSettings, double)[] motors) => new() { Name = "shaft", Wheels = [], Motors = motors };

    // Messner and Tilbury, Control Tutorials for MATLAB and Simulink, "DC Motor Speed": printed steady speed 0.1 rad/s; more
    // digits computed here
    [Fact]
    public void Step_of_one_volt_ends_at_the_published_speed()
    {
        RunResult run = StepOfOneVolt();
        Assert.Equal(0.1, Speed(run), 0.0005);
        Assert.Equal(0.0999000999, Speed(run), 1e-9);
        Assert.Equal(0.999000999, Current(run), 1e-8);
    }

    // Exercise on a permanent-magnet motor from two tests (6 V: 100 rad/s without load, 2 A blocked), read on a problem
    // site; k, R and the loaded speed computed here
    [Theory]
    [InlineData(0.0, 100.0)]
    [InlineData(0.002, 37.5)]
    public void Two_tests_give_the_speed_under_viscous_load(double viscous, double expected)
    {
        RunResult run = OfTwoTests(viscous);
        Assert.Equal(expected, Speed(run), 1e-6);
        Assert.Equal(2.0, run.At(t => t.Motors[0].Current, 0.0), 1e-9);
    }

    // Nise, Control Systems Engineering, dc motor with gear and load, example 2.23, from memory: load angle / volts =
    // 0.0417/(s (s + 1.667)); the step response of the speed computed here
    [Theory]
    [InlineData(0.3)]
    [InlineData(0.6)]
    [InlineData(1.2)]
    [InlineData(3.0)]
    public void Geared_motor_follows_the_published_transfer_function(double t)
    {
        double expected = 100.0 * (1.0 / 24.0) / (5.0 / 3.0) * (1.0 - Math.Exp(-(5.0 / 3.0) * t));
        Assert.Equal(expected, Geared().At(trace => trace.Wheel("flywheel").SurfaceSpeed, t) / Radius, 1e-6);
    }

    [Fact]
    public void Geared_motor_has_the_published_gain()
    {
        RunResult run = Geared();
        Assert.Equal(0.0417 / 1.667, Speed(run) / 100.0 / (1.0 - Math.Exp(-5.0)), 0.0417 / 1.667 * 0.002);
    }

    // Hughes, Electric Motors and Drives, from memory: 500 V, 1 ohm, brush drop 2 V, 0.8 A at 1040 rpm; 20 A at 1000 rpm
    // (999.84 computed here)
    [Theory]
    [InlineData(0.8, 1040.0)]
    [InlineData(20.0, 999.84)]
    public void Brush_drop_takes_its_share_of_the_speed(double current, double rpm)
    {
        RunResult run = WithBrushDrop(current);
        Assert.Equal(rpm, Speed(run) / Rpm, 0.005);
        Assert.Equal(current, Current(run), 1e-6);
    }

    /// <summary>Messner and Tilbury's motor at 1 V.</summary>
    internal static RunResult StepOfOneVolt()
    {
        var motor = new MotorSettings { Name = "m", TorqueConstant = 0.01, Resistance = 1.0, ViscousFriction = 0.1 };
        return Spin(Drive((motor, 1.0)), 0.01, 1.0, 3.0);
    }

    /// <summary>The motor of the two tests at 6 V under a viscous load [N m s].</summary>
    internal static RunResult OfTwoTests(double viscous)
    {
        var motor = new MotorSettings { Name = "m", TorqueConstant = 0.06, Resistance = 3.0, ViscousFriction = viscous };
        return Spin(Drive((motor, 1.0)), 1e-4, 6.0, 3.0);
    }

    /// <summary>Nise's motor, 10:1 gear and load at 100 V.</summary>
    internal static RunResult Geared()
    {
        var motor = new MotorSettings { Name = "m", TorqueConstant = 2.0, Resistance = 0.4, RotorInertia = 5.0, ViscousFriction = 2.0 };
        var load = new MotorSettings { Name = "load, unpowered", TorqueConstant = 0.0, Resistance = 1.0, RotorInertia = 700.0, ViscousFriction = 800.0 };
        return Spin(Drive((motor, 10.0), (load, 1.0)), 0.0, 100.0, 3.0);
    }

    /// <summary>Hughes' motor at 500 V, loaded by friction that takes the current [A].</summary>
    internal static RunResult WithBrushDrop(double current)
    {
        double k = (500.0 - 0.8 - 2.0) / (1040.0 * Rpm);
        var motor = new MotorSettings { Name = "m", TorqueConstant = k, Resistance = 1.0, BrushDrop = 2.0, FrictionTorque = k * current };
        return Spin(Drive((motor, 1.0)), 0.5, 500.0, 3.0);
    }
}
