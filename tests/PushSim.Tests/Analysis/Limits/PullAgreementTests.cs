using PushSim.Analysis.Limits;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

/// <summary>
/// The steady pull of the limits against the plateau of a simulated pull test, over random robots whose tyres do not chatter. The limits get the run's own
/// winding temperatures and charge. Gear friction keeps what a standing drive gave before; the anchor gives way by 1.5 mm/s, so that all drives
/// turn forward as the limits take it. The robots' centres of mass are put on their centre line: others swing
/// round on their tether and never pull straight. Those that chatter, or whose wheels slide and stop in turn, are left out. Motors in series
/// of which some stand have several steady states: a few may differ, and are counted. PUSHSIM_PULL_ROBOTS sets another count than the one below.
/// </summary>
public class PullAgreementTests(ITestOutputHelper output)
{
    private const int UsualCount = 40;
    private const double Tolerance = 0.02;
    // A wheel whose surface speed swings by more slides and stops in turn: chatter of the drive, below the band of the tyres' [m/s].
    internal const double SlideAndStop = 0.2;

    // Share of the robots that may be in another steady state of motors in series [1]; 2 of 200 are.
    private const double SeriesShare = 0.03;

    internal const double Creep = 0.0015;

    // Change of the pull over the plateau above which the robot gets 40 s to settle [1]: drives in series share a slide for seconds before one takes it.
    internal const double Settled = 0.01;

    internal static ScenarioSettings Pull(RobotSettings robot, double creep = 0.0, double end = 8.0)
    {
        double mass = robot.Chassis.Mass;
        return new ScenarioSettings
        {
            Name = "pull",
            Robot = robot,
            Manoeuvre = new ManoeuvreSettings
            {
                Kind = ManoeuvreKind.PullTest, EndTime = end, Commands = [new CommandPoint(0.1, 0.0, 0.0), new CommandPoint(1.6, 1.0, 0.0, true)],
            },
            Tether = new TetherSettings
            {
                HookX = -0.09, HookHeight = 0.025, AnchorX = -0.6, AnchorHeight = 0.03, Slack = 0.001, Stiffness = 4000.0 * mass, Damping = 0.4,
                AnchorSpeed = creep > 0.0 ? [(0.0, 0.0), (1.6, 0.0), (1.7, creep)] : [],
            },
        };
    }

    internal static RobotSettings Straight(RobotSettings robot) => robot with { Chassis = robot.Chassis with { CentreOfMassY = 0.0, DownforceY = 0.0 } };

    // Greatest swing of a wheel's surface speed in the last fifth [m/s]
    internal static double Swing(RunResult run)
    {
        int from = run.Time.Length * 4 / 5;
        return run.Trace.Wheels.Max(w => w.SurfaceSpeed[from..].Max() - w.SurfaceSpeed[from..].Min());
    }

    internal static double Drift(RunResult run)
    {
        Series force = run.Trace.Tether!.Force;
        return Math.Abs((force[^1] / force[force.Length * 6 / 10]) - 1.0);
    }

    // The run's own heat and charge at a sample
    internal static LimitCondition Condition(RunResult run, int sample)
    {
        double[] heat = [.. run.Trace.Motors.Select(m => m.WindingTemperature).OfType<Series>().Select(s => s[sample])];
        double[] hot = [.. run.Trace.Controllers.Select(c => c.Temperature).OfType<Series>().Select(s => s[sample])];
        double charge = run.Scenario.Robot.Battery!.InitialCharge - (run.Trace.Battery!.ChargeUsed[sample] / run.Scenario.Robot.Battery.Capacity);
        return new LimitCondition { WindingTemperatures = heat.Length > 0 ? heat : null, ControllerTemperatures = hot.Length > 0 ? hot : null, Charge = charge };
    }

    [Fact]
    public void The_steady_pull_is_the_plateau_of_a_pull_test()
    {
        int wanted = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_PULL_ROBOTS"), out int n) ? n : UsualCount;
        int compared = 0, skipped = 0, mixed = 0, late = 0, otherState = 0;
        double worst = 0.0;
        List<string> wrong = [];
        for (int seed = 0; compared < wanted; seed++)
        {
            RobotSettings robot = Straight(RandomRobots.Scenario(seed).Robot);
            bool isMixed = LimitFinder.Pull(Pull(robot), new LimitCondition())?.IsMixed ?? false;
            mixed += isMixed ? 1 : 0;
            RunResult run = Simulator.Run(Pull(robot, Creep));
            if (Drift(run) > Settled)
            {
                late++;
                run = Simulator.Run(Pull(robot, Creep, 40.0));
            }

            if (run.Answers.Chatter is not null || run.Status != RunStatus.Finished || Swing(run) > SlideAndStop)
            {
                skipped++;
                continue;
            }

            compared++;
            double plateau = run.Answers.PullPlateau!.Value;
            SteadyPull? pull = LimitFinder.Pull(run.Scenario, Condition(run, run.Time.Length * 4 / 5));
            double off = pull is { } p ? (p.Force / plateau) - 1.0 : double.NaN;
            bool isInSeries = (isMixed || pull is null) && run.Scenario.Robot.Controllers.Any(c => c.Wiring == Wiring.Series);
            if (isInSeries && !(Math.Abs(off) <= Tolerance))
            {
                otherState++;
                output.WriteLine(FormattableString.Invariant($"seed {seed}, series: limits {pull?.Force:0.0000} N, run {plateau:0.0000} N"));
                continue;
            }

            worst = Math.Max(worst, Math.Abs(off));
            if (!(Math.Abs(off) <= Tolerance))
            {
                wrong.Add(FormattableString.Invariant($"seed {seed}: limits {pull?.Force:0.0000} N, mixed {pull?.IsMixed}, run {plateau:0.0000} N, {100.0 * off:0.00} %, {run.Answers.LimitedBy}"));
            }
        }

        output.WriteLine($"{compared} robots compared, {skipped} left out, {mixed} with some wheels standing and others spinning, {late} slow to settle, {otherState} in series in another steady state; worst {100.0 * worst:0.00} %");
        Assert.True(otherState <= SeriesShare * compared, $"{otherState} of {compared} in another steady state");
        Assert.True(wrong.Count == 0, $"{wrong.Count} of {compared}:\n" + string.Join("\n", wrong));
    }
}
