using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Turning;

/// <summary>Looks closer at a finished turn: how freely it turns and what would help, whether and why its tyres chatter. Some fifty runs and steady
/// turns; runs in bulk (sweeps, odds) leave it out.</summary>
public static class TurnReview
{
    // A robot that needs more than this share of its torque or current to turn is at the limit [1].
    private const double AtTheLimit = 0.8;

    // Slip speeds of the friction curve that are looked at [m/s].
    private const double LeastSlipSpeed = 0.05;
    private const double MostSlipSpeed = 2.0;
    private const int SlipSpeeds = 25;

    // Longest time a disturbed steady turn is followed [s].
    private const double FollowedFor = 2.0;

    private const int Seed = 1;

    /// <summary>The result with its turn looked at; results of other manoeuvres come back as they are.</summary>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static RunResult Review(RunResult result, CancellationToken cancel = default)
    {
        var work = WorkBudget.Endless(cancel);
        return IsAsked(result) ? Review(result, Steady(result, work), work, []) : result;
    }

    /// <summary>Whether there is a turn to look at.</summary>
    internal static bool IsAsked(RunResult result) =>
        result.Scenario.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn && result.Status == RunStatus.Finished && result.Time.Length >= 2 && result.Answers.YawRate is not null && result.Scenario.Robot.Battery is not null;

    /// <summary>The steady turn of a run, what feeds its swings and how a disturbance grows.</summary>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static TurnSwings Steady(RunResult result, WorkBudget work)
    {
        NoModesCause cause = NoModesCause.CannotTurn;
        bool turns = TurnTrial.Turning(result.Scenario, result.Answers.YawRate ?? 0.0);
        return turns && ChatterReview.Steady(result.Scenario, null, out cause, work) is SteadyTurn turn
            ? new TurnSwings(turn, NoModesCause.None, FeedFinder.Of(turn), Disturbance.Follow(turn, Seed, FollowedFor).Rate)
            : new TurnSwings(null, cause, null, null);
    }

    /// <summary>The result with its turn looked at: parts side by side, each with its share of the work.</summary>
    /// <param name="result">A run with a turn to look at.</param>
    /// <param name="swings">Its steady turn.</param>
    /// <param name="work">The work for all parts.</param>
    /// <param name="leftOut">Takes the parts that would have taken more.</param>
    internal static RunResult Review(RunResult result, TurnSwings swings, WorkBudget work, ICollection<LookPart> leftOut)
    {
        ScenarioSettings scenario = result.Scenario;
        bool turns = TurnTrial.Turning(scenario, result.Answers.YawRate ?? 0.0);
        double? current = null;
        double? motor = null;
        IReadOnlyList<TurnHelp> helps = [];
        ChatterRange? range = null;
        List<SlipSpeedPoint> slipSpeeds = [];
        ChatterVerdict verdict = result.Chatter;
        (LookPart Part, Action<WorkBudget> Do)[] parts =
        [
            (LookPart.LeastCurrent, part => current = new TurnHelps(scenario, part).LeastCurrentShare(turns)),
            (LookPart.LeastMotor, part => motor = new TurnHelps(scenario, part).LeastMotorShare(turns)),
            (LookPart.Helps, part => helps = new TurnHelps(scenario, part).Helps(turns)),
            (LookPart.Range, part =>
            {
                if (swings.Turn is SteadyTurn turn)
                {
                    slipSpeeds = OverSlipSpeeds(scenario, turn, part);
                    range = ChatterSearch.Find(scenario, turn.State, result.Answers.Chatter is not null, part);
                }
            }),
            (LookPart.Cure, part => verdict = ChatterReview.Of(result, swings, part)),
        ];
        foreach (LookPart part in SideBySide.LeftOut(parts, work))
        {
            leftOut.Add(part);
        }

        if (verdict.IsCureLeftOut)
        {
            leftOut.Add(LookPart.Cure);
        }

        TurnEase ease = !turns ? TurnEase.CannotTurn : leftOut.Contains(LookPart.LeastCurrent) || leftOut.Contains(LookPart.LeastMotor) ? TurnEase.Unknown : Ease(current, motor);
        TurnResult report = TurnHistory.Read(new RunHistory(scenario, result.Trace, result.Bindings), ease) with
        {
            LeastCurrentShare = current,
            LeastCurrentLimit = current * scenario.Robot.Controllers.Select(c => (double?)TurnHelps.LimitOf(scenario.Robot, c)).Min(),
            LeastMotorShare = motor,
            Helps = helps,
            NoModes = swings.NoModes,
            Modes = swings.Turn?.Modes ?? [],
            Feed = swings.Feed,
            Rings = swings.Turn?.Rings ?? [],
            SimulatedGrowth = swings.Growth,
            SlipSpeeds = slipSpeeds,
            Range = range,
        };
        return result with { Turning = report, Chatter = verdict };
    }

    /// <summary>How well a robot turns that does turn, from the least shares of current limit and stall torque that still turn it [1].</summary>
    internal static TurnEase Ease(double? current, double? motor) => Math.Max(current ?? 0.0, motor ?? 0.0) > AtTheLimit ? TurnEase.AtTheLimit : TurnEase.Freely;

    // The steady turn is sought anew at each speed: where friction falls elsewhere the robot turns at another rate, too.
    private static List<SlipSpeedPoint> OverSlipSpeeds(ScenarioSettings scenario, SteadyTurn turn, WorkBudget work)
    {
        List<SlipSpeedPoint> points = [];
        if (scenario.Robot.Wheels.All(w => w.Tyre.FrictionTable is not null))
        {
            return points;
        }

        for (int i = 0; i < SlipSpeeds; i++)
        {
            work.Cancel.ThrowIfCancellationRequested();
            double speed = LeastSlipSpeed * Math.Pow(MostSlipSpeed / LeastSlipSpeed, i / (SlipSpeeds - 1.0));
            ScenarioSettings other = TurnModel.With(scenario, (TyreSettings t) => t with { SlipSpeed = speed });
            if (TurnModel.Create(other, out _, work) is TurnModel model && SteadyTurn.Find(model, turn.State) is SteadyTurn found)
            {
                points.Add(new SlipSpeedPoint(speed, found.RingMargin, found.Growth, found.Chatter is not null));
            }
        }

        return points;
    }
}
