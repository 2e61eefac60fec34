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
    public static RunResult WithoutCure(RunResult result, CancellationToken cancel = default) => result with { Chatter = Judge(result, WorkBudget.Endless(cancel)) };

    /// <summary>The verdict on a run, with what would cure it.</summary>
    /// <param name="run">The run.</param>
    /// <param name="cancel">Stops the work.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    public static ChatterVerdict Of(RunResult run, CancellationToken cancel = default) => Of(run, WorkBudget.Endless(cancel));

    /// <summary>The same as a part of more work: what is left of it goes to the cure.</summary>
    internal static ChatterVerdict Of(RunResult run, WorkBudget work)
    {
        TurnSwings swings = TurnSwings.LeftOut;
        WorkBudget.Try(() => swings = Steady(run, work, out NoModesCause cause) is SteadyTurn turn ? new TurnSwings(turn, cause, FeedFinder.Of(turn), null) : new TurnSwings(null, cause, null, null));
        return Of(run, swings, work);
    }

    /// <summary>The same where the steady turn is known or was left out.</summary>
    internal static ChatterVerdict Of(RunResult run, TurnSwings swings, WorkBudget work)
    {
        ChatterVerdict verdict = ChatterVerdict.OfRun(run.Status, run.Answers);
        if (swings.NoModes == NoModesCause.LeftOut || !WorkBudget.Try(() => verdict = Judge(run, swings.Turn, swings.NoModes, swings.Feed, work)))
        {
            return verdict.Kind == ChatterKind.Quiet ? ChatterVerdict.Unknown(ChatterDoubt.NoSteadyTurn, NoModesCause.LeftOut) : verdict with { IsCureLeftOut = verdict.Kind == ChatterKind.Buzzes };
        }

        return WithCure(verdict, run, swings.Turn, work);
    }

    /// <summary>The verdict with what would cure it, as far as the work goes.</summary>
    /// <param name="verdict">The verdict without.</param>
    /// <param name="run">The run.</param>
    /// <param name="turn">Its steady turn; null if there is none.</param>
    /// <param name="work">What is left for it.</param>
    private static ChatterVerdict WithCure(ChatterVerdict verdict, RunResult run, SteadyTurn? turn, WorkBudget work)
    {
        ChatterChange? cure = null;
        return verdict.Kind is not (ChatterKind.Buzzes or ChatterKind.Close) ? verdict
            : WorkBudget.Try(() => cure = Cure(run.Scenario, verdict, turn?.State, work)) ? verdict with { Cure = cure }
            : verdict with { IsCureLeftOut = true };
    }

    /// <summary>The verdict on a turn of which the steady turn is known, without feed and cure, which take long.</summary>
    /// <param name="turn">The steady turn; null if there is none.</param>
    /// <param name="cause">Why there is none.</param>
    /// <param name="shown">What the run shows; asked for only where that decides.</param>
    /// <param name="work">What is left for it.</param>
    internal static ChatterVerdict Of(SteadyTurn? turn, NoModesCause cause, Func<ChatterVerdict> shown, WorkBudget work)
    {
        if (turn?.Chatter is TurnMode mode)
        {
            return new ChatterVerdict(ChatterKind.Buzzes) { Frequency = mode.Frequency };
        }

        ChatterVerdict run = shown();
        return run.Kind != ChatterKind.Quiet ? run
            : turn is null ? ChatterVerdict.Unknown(ChatterDoubt.NoSteadyTurn, cause)
            : Tip(turn, work) is ChatterChange tip ? new ChatterVerdict(ChatterKind.Close) { Tip = tip }
            : run;
    }

    /// <summary>The steady turn of a scenario that turns; null, with the cause, if there is none.</summary>
    /// <param name="scenario">The turn.</param>
    /// <param name="guess">State of the steady turn of one like it; null to look for it.</param>
    /// <param name="cause">Why there is none.</param>
    /// <param name="work">What is left for it; null: no limit.</param>
    internal static SteadyTurn? Steady(ScenarioSettings scenario, double[]? guess, out NoModesCause cause, WorkBudget? work = null)
    {
        if (TurnModel.Create(scenario, out cause, work) is not TurnModel model)
        {
            return null;
        }

        SteadyTurn? turn = SteadyTurn.Find(model, guess?.Length == model.System.Layout.Count ? guess : null);
        cause = turn is null ? NoModesCause.NotFound : TurnTrial.Turning(scenario, turn.YawRate) ? NoModesCause.None : NoModesCause.CannotTurn;
        return cause == NoModesCause.None ? turn : null;
    }

    private static ChatterVerdict Judge(RunResult run, WorkBudget work)
    {
        SteadyTurn? turn = Steady(run, work, out NoModesCause cause);
        return Judge(run, turn, cause, turn is null ? null : FeedFinder.Of(turn), work);
    }

    // null, with the cause, if there is none or nobody asks for it
    private static SteadyTurn? Steady(RunResult run, WorkBudget work, out NoModesCause cause)
    {
        cause = NoModesCause.CannotTurn;
        return IsAsked(run) && TurnTrial.Turning(run.Scenario, run.Answers.YawRate ?? 0.0) ? Steady(run.Scenario, null, out cause, work) : null;
    }

    private static bool IsAsked(RunResult run) => run.Scenario.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn && ChatterVerdict.OfRun(run.Status, run.Answers).Kind != ChatterKind.Unknown;

    // the verdict on a run of which the steady turn and its feed are known, without a cure
    private static ChatterVerdict Judge(RunResult run, SteadyTurn? turn, NoModesCause cause, TurnFeed? feed, WorkBudget work)
    {
        ChatterVerdict shown = ChatterVerdict.OfRun(run.Status, run.Answers);
        if (!IsAsked(run))
        {
            return shown;
        }

        ChatterVerdict verdict = Of(turn, cause, () => shown, work);
        return verdict.Kind == ChatterKind.Buzzes ? verdict with
        {
            Frequency = shown.Frequency ?? verdict.Frequency, IsLatent = shown.Kind == ChatterKind.Quiet, Feed = turn?.Chatter is null ? ChatterFeed.Unknown : feed!.Kind,
        } : verdict;
    }

    // The first change near by that lets a small swing grow.
    private static ChatterChange? Tip(SteadyTurn turn, WorkBudget work)
    {
        ScenarioSettings scenario = turn.Model.Scenario;
        bool falls = scenario.Robot.Wheels.Any(w => w.Tyre.FrictionTable is null && w.Tyre.KineticFriction < w.Tyre.StaticFriction);
        (ChatterPart Part, double Last)[] changes = [(ChatterPart.BodyDamping, 1.0 / Near), .. falls ? new[] { (ChatterPart.SlipSpeed, Near), (ChatterPart.SlipSpeed, 1.0 / Near) } : []];
        return changes.Select(c => ChatterSearch.Edge(scenario, turn.State, c.Part, t => t.Chatter is not null, here: false, c.Last, work) is double factor ? TyreNumber.Of(c.Part).Change(scenario, factor) : null)
            .FirstOrDefault(c => c is not null);
    }

    // The least change of one number that makes it quiet, what feeds it first.
    private static ChatterChange? Cure(ScenarioSettings scenario, ChatterVerdict verdict, double[]? guess, WorkBudget work)
    {
        ChatterPart[] parts = verdict.Feed == ChatterFeed.Loads
            ? [ChatterPart.VerticalDamping, ChatterPart.BodyDamping, ChatterPart.TreadGive]
            : [ChatterPart.BodyDamping, ChatterPart.TreadGive, ChatterPart.VerticalDamping];
        return parts.Select(p => Least(scenario, TyreNumber.Of(p), guess, work)).FirstOrDefault(c => c is not null);
    }

    private static ChatterChange? Least(ScenarioSettings scenario, TyreNumber number, double[]? guess, WorkBudget work)
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

        // the verdict's own rule; what takes least work is asked first, and a run last
        bool IsQuiet(double factor)
        {
            work.Cancel.ThrowIfCancellationRequested();
            ScenarioSettings other = number.Scaled(scenario, factor);
            if (scenario.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn && (Steady(other, guess, out _, work) is not SteadyTurn turn || turn.Chatter is not null || Tip(turn, work) is not null))
            {
                return false;
            }

            RunResult run = Simulator.Run(other, work);
            return ChatterVerdict.OfRun(run.Status, run.Answers).Kind == ChatterKind.Quiet && (!IsAsked(run) || TurnTrial.Turning(other, run.Answers.YawRate ?? 0.0));
        }
    }
}
