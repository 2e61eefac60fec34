using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>The one rule by which tyres chatter in a manoeuvre, are close to it or quiet. A turn buzzes where a small swing of its steady turn grows, or where its run shows a
/// swing that keeps itself going; it is close where a small change of the tyre lets one grow. Of other manoeuvres the run alone is asked.</summary>
public static class ChatterReview
{
    // A tyre is close to chatter where this factor on one of its numbers tips it [1]: damping and slip speed of a tyre are seldom known better. Common practice, no source.
    private const double Near = 1.5;

    // Accuracy of a cure [1].
    private const double Accuracy = 1.05;

    /// <summary>The result with its tyres looked at.</summary>
    /// <param name="result">The run.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static RunResult Review(RunResult result, CancellationToken cancel = default) => result with { Chatter = Of(result, cancel) };

    /// <summary>The same without a cure, which takes many runs.</summary>
    /// <param name="result">The run.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static RunResult WithoutCure(RunResult result, CancellationToken cancel = default) => result with { Chatter = Judge(result, cancel) };

    /// <summary>The verdict on a run, with what would cure it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static ChatterVerdict Of(RunResult run, CancellationToken cancel = default)
    {
        ChatterVerdict verdict = Judge(run, cancel);
        return verdict.Kind is ChatterKind.Buzzes or ChatterKind.Close && run.Scenario.Opponent is null ? verdict with { Cure = Cure(run.Scenario, verdict, cancel) } : verdict;
    }

    /// <summary>The verdict on a turn of which the steady turn is known, without feed and cure, which take long.</summary>
    /// <param name="turn">The steady turn; null if there is none.</param>
    /// <param name="cause">Why there is none.</param>
    /// <param name="shown">What the run shows; asked for only where that decides.</param>
    /// <param name="cancel">Stops the work.</param>
    internal static ChatterVerdict Of(SteadyTurn? turn, NoModesCause cause, Func<ChatterVerdict> shown, CancellationToken cancel)
    {
        if (turn?.Chatter is TurnMode mode)
        {
            return new ChatterVerdict(ChatterKind.Buzzes) { Frequency = mode.Frequency };
        }

        ChatterVerdict run = shown();
        return run.Kind != ChatterKind.Quiet ? run
            : turn is null ? ChatterVerdict.Unknown(ChatterDoubt.NoSteadyTurn, cause)
            : Tip(turn, cancel) is ChatterChange tip ? new ChatterVerdict(ChatterKind.Close) { Tip = tip }
            : run;
    }

    /// <summary>The steady turn of a scenario that turns; null, with the cause, if there is none.</summary>
    /// <param name="scenario">The turn.</param>
    /// <param name="guess">State of the steady turn of one like it; null to look for it.</param>
    /// <param name="cause">Why there is none.</param>
    internal static SteadyTurn? Steady(ScenarioSettings scenario, double[]? guess, out NoModesCause cause)
    {
        if (TurnModel.Create(scenario, out cause) is not TurnModel model)
        {
            return null;
        }

        SteadyTurn? turn = SteadyTurn.Find(model, guess?.Length == model.System.Layout.Count ? guess : null);
        cause = turn is null ? NoModesCause.NotFound : TurnTrial.Turning(scenario, turn.YawRate) ? NoModesCause.None : NoModesCause.CannotTurn;
        return cause == NoModesCause.None ? turn : null;
    }

    private static ChatterVerdict Judge(RunResult run, CancellationToken cancel)
    {
        ChatterVerdict shown = ChatterVerdict.OfRun(run.Status, run.Answers);
        if (run.Scenario.Manoeuvre.Traits.Family != ManoeuvreFamily.Turn || shown.Kind == ChatterKind.Unknown)
        {
            return shown;
        }

        bool turns = TurnTrial.Turning(run.Scenario, run.Answers.YawRate ?? 0.0);
        NoModesCause cause = NoModesCause.CannotTurn;
        SteadyTurn? turn = turns ? Steady(run.Scenario, null, out cause) : null;
        ChatterVerdict verdict = Of(turn, cause, () => shown, cancel);
        return verdict.Kind == ChatterKind.Buzzes ? verdict with
        {
            Frequency = shown.Frequency ?? verdict.Frequency, IsLatent = shown.Kind == ChatterKind.Quiet, Feed = turn?.Chatter is null ? ChatterFeed.Unknown : FeedFinder.Of(turn)!.Kind,
        } : verdict;
    }

    // The first change near by that lets a small swing grow.
    private static ChatterChange? Tip(SteadyTurn turn, CancellationToken cancel)
    {
        ScenarioSettings scenario = turn.Model.Scenario;
        bool falls = scenario.Robot.Wheels.Any(w => w.Tyre.FrictionTable is null && w.Tyre.KineticFriction < w.Tyre.StaticFriction);
        (ChatterPart Part, double Last)[] changes = [(ChatterPart.BodyDamping, 1.0 / Near), .. falls ? new[] { (ChatterPart.SlipSpeed, Near), (ChatterPart.SlipSpeed, 1.0 / Near) } : []];
        return changes.Select(c => ChatterSearch.Edge(scenario, turn.State, c.Part, t => t.Chatter is not null, here: false, c.Last, cancel) is double factor ? TyreNumber.Of(c.Part).Change(scenario, factor) : null)
            .FirstOrDefault(c => c is not null);
    }

    // The least change of one number that makes it quiet, what feeds it first.
    private static ChatterChange? Cure(ScenarioSettings scenario, ChatterVerdict verdict, CancellationToken cancel)
    {
        ChatterPart[] parts = verdict.Feed == ChatterFeed.Loads
            ? [ChatterPart.VerticalDamping, ChatterPart.BodyDamping, ChatterPart.TreadGive]
            : [ChatterPart.BodyDamping, ChatterPart.TreadGive, ChatterPart.VerticalDamping];
        return parts.Select(p => Least(scenario, TyreNumber.Of(p), cancel)).FirstOrDefault(c => c is not null);
    }

    private static ChatterChange? Least(ScenarioSettings scenario, TyreNumber number, CancellationToken cancel)
    {
        (double low, double high) = (1.0, number.MostFactor(scenario));
        if (high < Accuracy || !IsQuiet(high))
        {
            return null;
        }

        while (high > Accuracy * low)
        {
            double middle = Math.Sqrt(low * high);
            (low, high) = IsQuiet(middle) ? (low, middle) : (middle, high);
        }

        return number.Change(scenario, high);

        bool IsQuiet(double factor)
        {
            cancel.ThrowIfCancellationRequested();
            return Judge(Simulator.Run(number.Scaled(scenario, factor), cancel), cancel).Kind == ChatterKind.Quiet;
        }
    }
}
