using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>What stands still, and what rolls at a known speed.</summary>
public class PropertyRestTests(ITestOutputHelper output)
{
    [Fact]
    public void Locked_at_95_percent_of_its_grip_stays()
    {
        double worst = 0.0;
        foreach (int seed in Enumerable.Range(510, 20))
        {
            var random = new Random(seed);
            RunResult run = Simulator.Run(LockedOnSlope(random));
            Assert.Equal(RunStatus.Finished, run.Status);
            int from = run.Time.FindIndex(t => t >= 10.0);
            double moved = 0.0;
            for (int i = from; i < run.Time.Length; i++)
            {
                moved = Math.Max(moved, double.Hypot(run.Trace.Body.X[i] - run.Trace.Body.X[from], run.Trace.Body.Y[i] - run.Trace.Body.Y[from]));
            }

            worst = Math.Max(worst, moved);
            Assert.True(moved < 1e-7, $"case {seed}: moved {moved:e1} m between 10 and 60 s, {run.Trace.Body.X[from]:e1} m before");
        }

        output.WriteLine($"furthest {worst:e1} m between 10 and 60 s");
    }

    [Fact]
    public void Braked_on_a_slope_each_drive_turns_at_the_closed_form_speed()
    {
        double worst = 0.0;
        foreach (int seed in Enumerable.Range(530, 20))
        {
            ScenarioSettings scenario = BrakedOnSlope(new Random(seed), out double slope);
            RunResult run = Simulator.Run(scenario);
            Assert.Equal(RunStatus.Finished, run.Status);
            RobotSettings robot = scenario.Robot;
            DriveSettings drive = robot.Drives[0];
            (MotorSettings motor, double ratio) = drive.Motors[0];
            WheelSettings wheel = robot.Wheels[0];
            double constant = motor.TorqueConstant * ratio;
            double[] surface = [.. robot.Wheels.Select(w => run.Trace.Wheel(w.Name).SurfaceSpeed[^1])];
            double weight = robot.Chassis.Mass * scenario.Floor.Gravity / 4.0;
            double slopeTorque = weight * Math.Sin(slope) * wheel.Radius;

            // the tanh of the rolling resistance is the model's own, 10 mm/s wide
            double mean = surface.Average(Math.Abs);
            double rolling = wheel.Tyre.RollingResistance * weight * Math.Cos(slope) * wheel.Radius * Math.Tanh(mean / 0.01);
            double omega = (slopeTorque - (motor.FrictionTorque * ratio) - rolling) * (motor.Resistance + robot.Controllers[0].OnResistance)
                / (constant * constant * (2.0 - drive.GearEfficiency));
            double off = Math.Abs((mean / wheel.Radius / omega) - 1.0);
            worst = Math.Max(worst, off);
            Assert.True(off < 1e-3, $"case {seed}: {mean / wheel.Radius:g6} rad/s, closed form {omega:g6}");
            CheckCreep(run, robot, surface);
        }

        output.WriteLine($"largest departure {worst:e1}");
    }

    // Rolling below the switch: v = kappa |omega R| z and T = N sigma0 z + N sigma2 v, so creep / (omega R) = kappa F z_max / (mu_s N);
    // each wheel's creep is within 1 % of it and thereby below kappa z_max of the rim speed.
    private static void CheckCreep(RunResult run, RobotSettings robot, double[] surface)
    {
        double speed = run.Trace.Body.Speed[^1];
        for (int i = 0; i < surface.Length; i++)
        {
            WheelSettings w = robot.Wheels[i];
            WheelTrace trace = run.Trace.Wheel(w.Name);
            double use = Math.Abs(trace.LongitudinalForce[^1]) / (w.Tyre.StaticFriction * trace.Load[^1]);
            Assert.True(use < 0.8);
            double share = w.Tyre.RollingRenewal * w.Tyre.BreakawayDeflection * use;
            double creep = Math.Abs(speed) - Math.Abs(surface[i]);
            Assert.Equal(share, creep / Math.Abs(surface[i]), 0.01 * share);
        }
    }

    private static ScenarioSettings LockedOnSlope(Random random)
    {
        double friction = Between(random, 0.3, 0.7);
        TyreSettings tyre = TestRobots.SoftTyre with
        {
            StaticFriction = friction,
            KineticFriction = friction * Between(random, 0.8, 1.0),
            BodyStiffness = Between(random, 1500.0, 5000.0),
            BodyDamping = Between(random, 1.0, 4.0),
            BreakawayDeflection = Between(random, 0.2e-3, 0.6e-3),
        };
        RobotSettings robot = TestRobots.FourWheels(
            tyre, zero: ZeroCommand.Locked, hold: 1.0, height: Between(random, 0.01, 0.03), forward: Between(random, -0.01, 0.01));
        double slope = Math.Atan(0.95 * friction);
        double direction = Between(random, -Math.PI, Math.PI);

        // the board's steepest line lies along the direction; its two slopes are the arcs of the components of sin
        return Hold(robot, 60.0) with
        {
            Floor = new FloorSettings
            {
                SlopeX = Math.Asin(Math.Sin(slope) * Math.Cos(direction)),
                SlopeY = Math.Asin(Math.Sin(slope) * Math.Sin(direction)),
            },
        };
    }

    private static ScenarioSettings BrakedOnSlope(Random random, out double slope)
    {
        slope = Between(random, 0.25, 0.4);
        TyreSettings tyre = TestRobots.SoftTyre with
        {
            RollingRenewal = Between(random, 50.0, 200.0),
            RollingResistance = Between(random, 0.0, 0.04),
        };
        MotorSettings motor = TestRobots.Motor with { Resistance = Between(random, 2.0, 6.0) };
        RobotSettings robot = TestRobots.FourWheels(
            tyre, motor, efficiency: Between(random, 0.6, 1.0), height: Between(random, 0.01, 0.02), ratio: Between(random, 10.0, 25.0));
        return Hold(robot, 5.0) with { Floor = new FloorSettings { SlopeX = random.Next(2) == 0 ? slope : -slope } };
    }

    private static ScenarioSettings Hold(RobotSettings robot, double end) =>
        TestRobots.Scenario(robot, ManoeuvreKind.Hold, 0.0, 0.0, end) with { Numerics = new NumericsSettings { SampleRate = 20.0 } };

    private static double Between(Random random, double low, double high) => low + ((high - low) * random.NextDouble());
}
