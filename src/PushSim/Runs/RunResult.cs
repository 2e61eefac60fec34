using PushSim.Binding;
using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>How a run ended.</summary>
public enum RunStatus
{
    /// <summary>Reached its end time.</summary>
    Finished,

    /// <summary>The robot tipped or had no driven wheel on the floor; the run ends there.</summary>
    Tips,

    /// <summary>The run could not go on; <see cref="RunResult.Stop"/> says why.</summary>
    Failed,
}

/// <summary>A moment or value marked on a plot.</summary>
/// <param name="Kind">What it marks.</param>
/// <param name="Time">When [s].</param>
/// <param name="Value">Value there, NaN if only a moment [unit of the series it marks].</param>
public sealed record Mark(MarkKind Kind, double Time, double Value);

/// <summary>Everything a run gives: status, history, answers, ledger, cost.</summary>
public sealed record RunResult
{
    /// <summary>The scenario that was run.</summary>
    public required ScenarioSettings Scenario { get; init; }

    /// <summary>How it ended.</summary>
    public required RunStatus Status { get; init; }

    /// <summary>Why it stopped early; null when it finished.</summary>
    public RunStop? Stop { get; init; }

    /// <summary>What to know before believing it.</summary>
    public required IReadOnlyList<RunWarning> Warnings { get; init; }

    /// <summary>What was recorded of the first robot, and where it touched something.</summary>
    public required Trace Trace { get; init; }

    /// <summary>Sample times [s].</summary>
    public Series Time => Trace.Time;

    /// <summary>Marks for the plots.</summary>
    public required IReadOnlyList<Mark> Marks { get; init; }

    /// <summary>The answers, each null where it does not apply.</summary>
    public required RunAnswers Answers { get; init; }

    /// <summary>The energy ledger at the end.</summary>
    public required IReadOnlyList<LedgerEntry> Ledger { get; init; }

    /// <summary>Residual of the ledger / sum of |entries| [1].</summary>
    public required double EnergyResidualRatio { get; init; }

    /// <summary>Right-hand-side evaluations.</summary>
    public required long RhsEvaluations { get; init; }

    /// <summary>Accepted steps.</summary>
    public required long Steps { get; init; }

    /// <summary>Rejected steps.</summary>
    public required long RejectedSteps { get; init; }

    /// <summary>What bound the first robot's push, stretch by stretch; only where something is pushed.</summary>
    public IReadOnlyList<BindingSpan> Limits { get; init; } = [];

    /// <summary>What bound each wheel of the first robot at each sample.</summary>
    public IReadOnlyList<BindingMoments> Bindings { get; init; } = [];

    /// <summary>The opponent's part; null without one.</summary>
    public OpponentRun? Opponent { get; init; }

    /// <summary>Who won a shove and by what; null without an opponent.</summary>
    public ShoveOutcome? Shove { get; init; }

    /// <summary>The shove in the three orders of starts; null without an opponent and where nobody asked for it.</summary>
    public StartStudy? Start { get; init; }

    /// <summary>How two robots met; null where they did not bump, and where nobody asked for it.</summary>
    public Bump? Bump { get; init; }

    /// <summary>The throttle at which each robot of a shove pushes hardest, the first robot's first; null where it has none, empty where nobody asked for it.</summary>
    public IReadOnlyList<BestThrottle?> Throttles { get; init; } = [];

    /// <summary>The shove with values drawn from their tolerances; null without an opponent and where nobody asked for it.</summary>
    public DrawnSet? Drawn { get; init; }

    /// <summary>A closer look at a turn; null for other manoeuvres and where nobody asked for it.</summary>
    public TurnResult? Turning { get; init; }

    /// <summary>Whether its tyres chatter: what this run shows unless <c>ChatterReview</c> looked closer.</summary>
    public ChatterVerdict Chatter
    {
        get => field ?? ChatterVerdict.OfRun(Status, Answers);
        init;
    }

    /// <summary>The same run with controllers that coast between pulses; null where the file says what they do, where only the whole is commanded, and where nobody asked for it.</summary>
    public RunResult? Coasting { get; init; }

    /// <summary>What the closer look cost and left out; null where nobody asked for it.</summary>
    public LookCost? Look { get; init; }

    /// <summary>How the first robot's wheels keep the floor while it pushes; null where it touches nothing.</summary>
    public PushHops? Hops { get; init; }

    /// <summary>Load-cell readings (s, N); empty without a cell.</summary>
    public IReadOnlyList<(double Time, double Force)> CellReadings { get; init; } = [];
}
