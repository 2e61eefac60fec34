using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Turning;

/// <summary>Looks closer at a finished turn: how freely it turns and what would help, whether and why its tyres chatter. Some fifty short runs and steady
/// turns, under a second in all; runs in bulk (sweeps, odds) leave it out.</summary>
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
        bool isTurn = result.Scenario.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn;
        if (!isTurn || result.Status != RunStatus.Finished || result.Time.Length < 2 || result.Answers.YawRate is not double rate || result.Scenario.Robot.Battery is null)
        {
            return result;
        }

        bool turns = TurnTrial.Turning(result.Scenario, rate);
        var measures = new TurnMeasures(result.Scenario, cancel);
        double? current = measures.LeastCurrentShare(turns);
        double? motor = measures.LeastMotorShare(turns);
        TurnEase ease = turns ? Ease(current, motor) : TurnEase.CannotTurn;
        TurnReport report = TurnHistory.Read(new RunHistory(result.Scenario, result.Trace, result.Bindings), ease) with
        {
            LeastCurrentShare = current,
            LeastCurrentLimit = current * result.Scenario.Robot.Controllers.Select(c => (double?)TurnMeasures.LimitOf(result.Scenario.Robot, c)).Min(),
            LeastMotorShare = motor,
            Helps = measures.Helps(turns),
        };
        return result with { Turning = turns ? WithStability(report, result, cancel) : report with { NoModes = NoModesCause.CannotTurn } };
    }

    /// <summary>How well a robot turns that does turn, from the least shares of current limit and stall torque that still turn it [1].</summary>
    internal static TurnEase Ease(double? current, double? motor) => Math.Max(current ?? 0.0, motor ?? 0.0) > AtTheLimit ? TurnEase.AtTheLimit : TurnEase.Freely;

    private static TurnReport WithStability(TurnReport report, RunResult result, CancellationToken cancel)
    {
        ScenarioSettings scenario = result.Scenario;
        if (ChatterReview.Steady(scenario, null, out NoModesCause cause) is not SteadyTurn turn)
        {
            return report with { NoModes = cause };
        }

        return report with
        {
            Modes = turn.Modes,
            Feed = FeedFinder.Of(turn),
            Rings = turn.Rings,
            SimulatedGrowth = Disturbance.Follow(turn, Seed, FollowedFor).Rate,
            SlipSpeeds = OverSlipSpeeds(scenario, turn, cancel),
            Range = ChatterSearch.Find(scenario, turn.State, result.Answers.Chatter is not null, cancel),
        };
    }

    // The steady turn is sought anew at each speed: where friction falls elsewhere the robot turns at another rate, too.
    private static List<SlipSpeedPoint> OverSlipSpeeds(ScenarioSettings scenario, SteadyTurn turn, CancellationToken cancel)
    {
        List<SlipSpeedPoint> points = [];
        if (scenario.Robot.Wheels.All(w => w.Tyre.FrictionTable is not null))
        {
            return points;
        }

        for (int i = 0; i < SlipSpeeds; i++)
        {
            cancel.ThrowIfCancellationRequested();
            double speed = LeastSlipSpeed * Math.Pow(MostSlipSpeed / LeastSlipSpeed, i / (SlipSpeeds - 1.0));
            ScenarioSettings other = TurnModel.With(scenario, (TyreSettings t) => t with { SlipSpeed = speed });
            if (TurnModel.Create(other, out _) is TurnModel model && SteadyTurn.Find(model, turn.State) is SteadyTurn found)
            {
                points.Add(new SlipSpeedPoint(speed, found.RingMargin, found.Growth, found.Chatter is not null));
            }
        }

        return points;
    }
}
