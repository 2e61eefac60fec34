using PushSim.Analysis.Fit;
using PushSim.Analysis.Meaning;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using PushSim.Words.Fits;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Tyre or motors, judged on pulls that the engine simulates from both sides of the limit.</summary>
public class PullCauseTests(ITestOutputHelper output)
{
    private const double GramForce = 9.80665e-3;

    // PUSHSIM_FIT_RUNS=500 dotnet test -c Release tests/PushSim.Tests --filter PullCauseTests runs the full count
    private static readonly int Runs = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_FIT_RUNS"), out int n) ? n : 60;

    // Of the tether: without it a light robot bounces on it for seconds [s/m].
    private const double Damping = 2.0;

    // the motors' force by formula against the engine's own stalled pull, gears without loss; computed both ways here
    [Theory]
    [InlineData(Wiring.Single, 1.5)]
    [InlineData(Wiring.Single, 100.0)]
    [InlineData(Wiring.Parallel, 3.0)]
    [InlineData(Wiring.Series, 2.0)]
    public void The_motors_force_is_that_of_a_stalled_pull(Wiring wiring, double limit)
    {
        RobotSettings robot = Wired(wiring, limit, TestRobots.Motor with { FrictionTorque = 0.0 }, 1.0);
        StallForce stall = Assert.IsType<StallForce>(StallForce.Of(robot));
        RunResult run = Simulator.Run(Pull(robot));
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.Equal(stall.Force, run.Trace.Tether!.Force[2900..3900].Average(), 0.02 * stall.Force);
        Assert.Equal(stall.BatteryCurrent, run.Trace.Battery!.Current[2900..3900].Average(), 0.02 * stall.BatteryCurrent);
        Assert.Equal(stall.Force, stall.Hold, 1e-9);
    }

    // a pull at part throttle is judged by what the motors give at that throttle
    [Fact]
    public void The_motors_force_at_part_throttle_is_that_of_a_pull_stalled_there()
    {
        RobotSettings robot = Wired(Wiring.Single, 100.0, TestRobots.Motor with { FrictionTorque = 0.0 }, 1.0);
        StallForce full = StallForce.Of(robot)!;
        StallForce part = StallForce.Of(robot, 0.6)!;
        RunResult run = Simulator.Run(Pull(robot, 0.6));
        Assert.Equal(part.Force, run.Trace.Tether!.Force[2900..3900].Average(), 0.02 * part.Force);
        Assert.Equal(part.BatteryCurrent, run.Trace.Battery!.Current[2900..3900].Average(), 0.02 * part.BatteryCurrent);
        Interval stalled = new(part.Force, 0.99 * part.Force, 1.01 * part.Force);
        PullCause judged = PullCauseJudge.Judge(stalled, part, isLog: true, hasPeak: false, isDrag: false, new PlateauEvidence());
        Assert.Equal(BindingKind.Motor, judged.By);
        Assert.Contains("at 60 % throttle", PullWords.Reason(judged), StringComparison.Ordinal);
        Assert.Equal(BindingKind.Tyre, PullCauseJudge.Judge(stalled, full, isLog: true, hasPeak: false, isDrag: false, new PlateauEvidence()).By);
    }

    // the same robot on the same tether: it runs into one end and bounces, or leans into the other
    [Theory]
    [InlineData(0.03, 0.0, true)]
    [InlineData(0.0, 2.0, false)]
    public void A_pull_that_bounces_says_so(double slack, double damping, bool bounces)
    {
        ScenarioSettings pull = TestRobots.Pull(TestRobots.FourWheels(Grippy(1.0) with { KineticFriction = 0.8, SlipSpeed = 0.2 }));
        pull = pull with { Tether = pull.Tether! with { Slack = slack, Damping = damping } };
        Assert.Equal(bounces, Simulator.Run(pull).Warnings.Any(w => w is RunWarning.Jerk or RunWarning.Bouncing));
    }

    // gears with loss: a standing drive holds anything between what it can pull and what it can hold
    [Theory]
    [InlineData(Wiring.Single, 1.5)]
    [InlineData(Wiring.Parallel, 3.0)]
    [InlineData(Wiring.Series, 2.0)]
    public void A_standing_drive_pulls_between_its_bounds(Wiring wiring, double limit)
    {
        RobotSettings robot = Wired(wiring, limit, TestRobots.Motor, 0.8);
        StallForce stall = StallForce.Of(robot)!;
        Assert.InRange(Simulator.Run(Pull(robot)).Trace.Tether!.Force[2900..3900].Average(), 0.98 * stall.Force, 1.02 * stall.Hold);
    }

    // grip from 1.3 to 2.5 times the motors' force
    [Fact]
    public void Pulls_that_the_motors_set_are_flagged()
    {
        int flagged = Count(1.3, 2.5, 7000).GetValueOrDefault(BindingKind.Motor);
        output.WriteLine($"of {Runs} pulls that the motors limit {flagged} are flagged");
        Assert.InRange(flagged, 0.98 * Runs, Runs);
    }

    // grip from 0.3 to 0.75 times the motors' force
    [Fact]
    public void Pulls_that_the_tyre_set_are_not()
    {
        Dictionary<BindingKind, int> count = Count(0.3, 0.75, 8000);
        output.WriteLine($"of {Runs} pulls that the tyres limit {count.GetValueOrDefault(BindingKind.Motor)} are flagged");
        Assert.InRange(count.GetValueOrDefault(BindingKind.Motor), 0, 0.02 * Runs);
        Assert.InRange(count.GetValueOrDefault(BindingKind.Tyre), 0.98 * Runs, Runs);
    }

    [Fact]
    public void A_drag_is_never_the_motors()
    {
        StallForce stall = new(2.0, 2.0, 1.0, 12.0, 11.0);
        Assert.Equal(BindingKind.Tyre, PullCauseJudge.Judge(new Interval(2.0, 1.99, 2.01), stall, isLog: true, hasPeak: false, isDrag: true, new PlateauEvidence()).By);
        Assert.Equal(BindingKind.Motor, PullCauseJudge.Judge(new Interval(2.0, 1.99, 2.01), stall, isLog: true, hasPeak: false, isDrag: false, new PlateauEvidence()).By);
    }

    // 9 N of motors that give 10 N: at least that, unless a drag or far stronger motors show that the tyre slid
    [Theory]
    [InlineData(10.0, false, BindingKind.Motor)]
    [InlineData(null, false, null)]
    [InlineData(10.0, true, BindingKind.Tyre)]
    [InlineData(40.0, false, BindingKind.Tyre)]
    public void Only_a_tyre_that_slid_has_an_upper_end(double? motors, bool isDrag, BindingKind? by)
    {
        StallForce? stall = motors is double force ? new StallForce(force, force, 1.0, 12.0, 11.0) : null;
        TyreFit fit = PullFit.OfReadings("tyre", [8.9, 9.0, 9.1], [9.9, 10.0, 10.1], GripLoad.Fixed(10.0), stall, isDrag);
        bool isKnown = by == BindingKind.Tyre;
        Assert.Equal(by, fit.Cause.By);
        Assert.Equal(!isKnown, fit.IsStaticLowerBound);
        Assert.Equal(isKnown, double.IsFinite(fit.StaticFriction.High));
        Assert.Equal(isKnown, double.IsFinite(fit.KineticFriction!.Value.High));
        Assert.Equal(0.9, fit.KineticFriction.Value.Value, 1e-12);
        Assert.InRange(fit.KineticFriction.Value.Low, 0.85, 0.9);
        string verdict = FitWords.Verdict([fit]);
        Assert.Equal(!isKnown, verdict.Contains("sliding friction at least 0.900", StringComparison.Ordinal));
        Assert.Equal(!isKnown, verdict.Contains("a drag with its wheels locked (--drag)", StringComparison.OrdinalIgnoreCase));
        Assert.Equal(isKnown ? "" : "0.875 or more", isKnown ? "" : FitTables.Tyres([fit]).Rows[0][2]);
        Assert.False(FittedTyre.Of(fit, isMaterialKnown: true).IsAtLeast == isKnown);
    }

    // at part throttle more throttle and a full battery are a test as well
    [Fact]
    public void The_test_to_do_follows_from_what_was_done()
    {
        PullCause part = new(BindingKind.Motor, false, 1.0, PullReason.AtMotors) { Stall = new StallForce(10.0, 10.0, 1.0, 12.0, 11.0) { Throttle = 0.6 } };
        Assert.Contains("full throttle with a charged battery", PullWords.Test(part), StringComparison.Ordinal);
        Assert.DoesNotContain("full throttle", PullWords.Test(part with { Stall = part.Stall! with { Throttle = 1.0 } }), StringComparison.Ordinal);
        Assert.Contains("less load on the tyres", PullWords.Test(part), StringComparison.Ordinal);
    }

    // logged wheels, current or voltage decide
    [Theory]
    [InlineData(0.5, null, null, null, BindingKind.Tyre)]
    [InlineData(0.0, null, null, null, BindingKind.Motor)]
    [InlineData(null, 12.0, null, null, BindingKind.Tyre)]
    [InlineData(null, 0.1, null, null, BindingKind.Motor)]
    [InlineData(null, null, 9.8, null, BindingKind.Motor)]
    [InlineData(null, null, 4.0, null, BindingKind.Tyre)]
    [InlineData(null, null, null, 0.95, BindingKind.Motor)]
    [InlineData(null, null, null, 0.3, BindingKind.Tyre)]
    public void What_was_logged_decides(double? speed, double? turning, double? current, double? sag, BindingKind? by)
    {
        var stall = new StallForce(10.0, 10.0, 10.0, 12.0, 11.0);
        Assert.Equal(by, PullCauseJudge.Judge(new Interval(9.0, 8.9, 9.1), stall, isLog: true, hasPeak: true, isDrag: false, new PlateauEvidence(speed, turning, current, sag)).By);
        Assert.Null(PullCauseJudge.Judge(new Interval(9.0, 8.9, 9.1), stall, isLog: true, hasPeak: true, isDrag: false, new PlateauEvidence()).By);
    }

    // Invented readings of a robot of 200 gf on four wheels, in gram-force; its motors stall at 280 gf at the floor
    [Theory]
    [InlineData(32)]
    [InlineData(70)]
    [InlineData(104)]
    [InlineData(136)]
    [InlineData(160)]
    public void A_reading_comes_back_from_the_fitted_tyre(double reading)
    {
        RobotSettings strong = Light(280.0, Grippy(1.0));
        TyreFit fit = PullFit.OfReadings("tyre", [reading * GramForce], [], GripLoad.Fixed(200.0 * GramForce), StallForce.Of(strong), isDrag: false);
        Assert.Equal(reading / 200.0, fit.KineticFriction!.Value.Value, 1e-12);
        Assert.Equal(BindingKind.Tyre, fit.Cause.By);
        Assert.True(fit.IsStaticLowerBound);
        Assert.False(fit.KineticFriction.Value.IsBounded);
        TyreSettings tyre = Grippy(fit.ForModel.Static) with { KineticFriction = fit.ForModel.Kinetic };
        ScenarioSettings pull = TestRobots.Pull(Light(280.0, tyre));
        RunResult run = Simulator.Run(pull with { Tether = pull.Tether! with { Damping = Damping } });
        Assert.Equal(reading, run.Answers.PullPlateau!.Value / GramForce, 0.03 * reading);
    }

    // such readings on a drive that stalls at 100 gf
    [Theory]
    [InlineData(32, BindingKind.Tyre, false)]
    [InlineData(88, BindingKind.Motor, false)]
    [InlineData(118, null, true)]
    [InlineData(136, null, true)]
    public void A_reading_beyond_weak_motors_is_inconsistent(double reading, BindingKind? by, bool isInconsistent)
    {
        StallForce weak = StallForce.Of(Light(100.0, Grippy(1.0)))!;
        Assert.Equal(100.0, weak.Force / GramForce, 1e-6);
        PullCause limit = PullFit.OfReadings("tyre", [reading * GramForce], [], GripLoad.Fixed(200.0 * GramForce), weak, isDrag: false).Cause;
        Assert.Equal(by, limit.By);
        Assert.Equal(isInconsistent, limit.IsInconsistent);
        Assert.Equal(isInconsistent, PullWords.Reason(limit).Contains("inconsistent with the robot file"));
    }

    // computed here: two driven wheels behind, a skid ahead; by hand from the balance of moments
    [Fact]
    public void A_high_tether_moves_load_to_the_driven_wheels()
    {
        TyreSettings tyre = Grippy(1.0);
        TyreSettings skid = Grippy(0.2) with { Name = "skid", KineticFriction = 0.2 };
        RobotSettings robot = TestRobots.FourWheels() with
        {
            Chassis = TestRobots.FourWheels().Chassis with { Mass = 1.0 },
            Wheels =
            [
                new WheelSettings { Name = "left", X = -0.05, Y = 0.06, Radius = 0.025, SpinInertia = 1e-5, Tyre = tyre },
                new WheelSettings { Name = "right", X = -0.05, Y = -0.06, Radius = 0.025, SpinInertia = 1e-5, Tyre = tyre },
                new WheelSettings { Name = "skid", X = 0.05, Y = 0.0, Radius = 0.025, SpinInertia = 1e-5, Tyre = skid, IsSkid = true },
            ],
            Drives = [new DriveSettings { Name = "both", Wheels = [(0, 1.0), (1, 1.0)], Motors = [(TestRobots.Motor, 20.0)] }],
        };
        double weight = 9.80665;
        double rear = (0.5 * weight) + (4.0 * 0.03 / 0.1);
        Assert.Equal(rear, GripLoad.Of(robot, 0.03, isDrag: false).LoadAt(4.0), 1e-9);
        Assert.Equal((4.0 + (0.2 * (weight - rear))) / rear, GripLoad.Of(robot, 0.03, isDrag: false).Friction(4.0), 1e-9);
        Assert.Equal((4.0 - (0.2 * (weight - rear))) / rear, GripLoad.Of(robot, 0.03, isDrag: false).FrictionDrawnBack(4.0)!.Value, 1e-9);
        Assert.Null(GripLoad.Of(robot, 0.03, isDrag: true).FrictionDrawnBack(4.0));
        Assert.Contains("may be as low as 0.53", Assert.Single(PullWords.Warnings(PullFit.OfReadings("soft", [4.0, 4.0], [5.0, 5.0], GripLoad.Of(robot, 0.03, isDrag: false), null, false))));
        Assert.Equal((0.5 * weight) - (4.0 * 0.03 / 0.1), GripLoad.Of(robot, 0.03, isDrag: true).LoadAt(4.0), 1e-9);

        // 9.80665 N x 0.05 m / 0.03 m = 16.3 N lift the skid: above, two wheels on one axle carry everything, their friction is what pulls
        Assert.Equal(weight, GripLoad.Of(robot, 0.03, isDrag: false).LoadAt(20.0), 1e-3);
        Assert.Equal(20.0 / weight, GripLoad.Of(robot, 0.03, isDrag: false).Friction(20.0), 1e-3);
        Assert.True(GripLoad.Of(robot, 0.03, isDrag: false).DependsOnHeight);
        Assert.False(GripLoad.Of(TestRobots.FourWheels(), 0.03, isDrag: false).DependsOnHeight);
        Assert.Equal(1.36 * weight, GripLoad.Of(TestRobots.FourWheels(), 0.03, isDrag: false).LoadAt(6.0), 1e-9);
    }

    // The engine's pull through a cell, fitted: kinetic friction as set, from a powered and from a dragged pull
    [Theory]
    [InlineData(80.0)]
    [InlineData(10.0)]
    public void Friction_set_in_the_engine_comes_back(double rate)
    {
        TyreSettings tyre = Grippy(0.9) with { KineticFriction = 0.7, SlipSpeed = 0.05 };
        ScenarioSettings pull = Pull(TestRobots.FourWheels(tyre, limit: 100.0), 0.35);
        pull = pull with { Tether = pull.Tether! with { Cell = new LoadCellSettings { Rate = rate, Noise = 0.01, Resolution = 0.005 } } };
        RunResult run = Simulator.Run(pull);
        TyreFit fit = Fit(run, StallForce.Of(pull.Robot), 1.36 * 9.80665);
        Assert.Equal(0.7, fit.KineticFriction!.Value.Value, 0.007);
    }

    private static RobotSettings Wired(Wiring wiring, double limit, MotorSettings motor, double efficiency)
    {
        RobotSettings robot = TestRobots.FourWheels(Grippy(3.0), motor, efficiency, limit, ratio: 3.0);
        return wiring == Wiring.Single ? robot : robot with
        {
            Controllers =
            [
                robot.Controllers[0] with { Motors = [(0, 0), (2, 0)], Wiring = wiring },
                robot.Controllers[1] with { Motors = [(1, 0), (3, 0)], Wiring = wiring },
            ],
        };
    }

    private static Dictionary<BindingKind, int> Count(double from, double to, int seed)
    {
        Dictionary<BindingKind, int> count = [];
        for (int k = 0; k < Runs; k++)
        {
            var random = new Random(seed + k);
            double U(double a, double b) => a + ((b - a) * random.NextDouble());
            RobotSettings robot = TestRobots.FourWheels(limit: U(0.4, 0.8));
            StallForce stall = StallForce.Of(robot)!;
            double grip = U(from, to) * stall.Force / (robot.Chassis.Mass * 9.80665);
            double drop = U(0.7, 0.95);

            // motors: even sliding it would hold them; tyre: even at breakaway it cannot
            TyreSettings tyre = Grippy(from > 1.0 ? grip / drop : grip) with { KineticFriction = from > 1.0 ? grip : grip * drop, SlipSpeed = U(0.05, 0.5) };
            robot = robot with { Wheels = [.. robot.Wheels.Select(w => w with { Tyre = tyre })] };
            ScenarioSettings pull = Pull(robot);
            pull = pull with { Tether = pull.Tether! with { Cell = new LoadCellSettings { Rate = random.Next(2) == 0 ? 10.0 : 80.0, Noise = U(0.005, 0.05), Resolution = 0.01, Tare = U(-1, 1), Seed = (ulong)k } } };
            RunResult run = Simulator.Run(pull);
            TyreFit fit = Fit(run, stall, robot.Chassis.Mass * 9.80665);
            if (fit.Cause.By is BindingKind by)
            {
                count[by] = count.GetValueOrDefault(by) + 1;
            }
        }

        return count;
    }

    private static TyreFit Fit(RunResult run, StallForce? stall, double load)
    {
        var trace = new ForceTrace { Time = [.. run.CellReadings.Select(r => r.Time)], Force = [.. run.CellReadings.Select(r => r.Force)] };
        FoundTrace found = PullFinder.Find(trace);
        Assert.Null(found.Problem);
        return PullFit.OfTraces("tyre", [found], GripLoad.Fixed(load), stall, isDrag: false);
    }

    // Slack, a pull that builds up slowly, then back off so that the chain hangs slack again.
    private static ScenarioSettings Pull(RobotSettings robot, double throttle = 1.0) => TestRobots.Pull(robot) with
    {
        Tether = TestRobots.Pull(robot).Tether! with { Damping = Damping, Slack = 0.001 },
        Manoeuvre = new ManoeuvreSettings
        {
            Kind = ManoeuvreKind.PullTest,
            EndTime = 5.0,
            Commands = [new CommandPoint(0.8, 0.0, 0.0), new CommandPoint(2.3, throttle, 0.0, true), new CommandPoint(4.0, -0.3, 0.0), new CommandPoint(4.2, 0.0, 0.0)],
        },
    };

    // No rolling losses: the friction on the tether is that of the tyre alone.
    private static TyreSettings Grippy(double friction) => TestRobots.SoftTyre with
    {
        StaticFriction = friction, KineticFriction = friction, RollingResistance = 0.0, RollingRenewal = 0.0, BreakawayDeflection = 0.2e-3, VerticalDamping = 8.0, BodyDamping = 6.0,
    };

    // 200 gf on four wheels; the current limit sets the stall.
    private static RobotSettings Light(double stall, TyreSettings tyre)
    {
        MotorSettings motor = TestRobots.Motor with { FrictionTorque = 0.0 };
        double current = stall * GramForce * 0.028 / (4.0 * 0.8 * motor.TorqueConstant * 20.0);
        return TestRobots.FourWheels(tyre, motor, limit: current).WithMass(0.2);
    }
}
