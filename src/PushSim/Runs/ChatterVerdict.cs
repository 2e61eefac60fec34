namespace PushSim.Runs;

/// <summary>Whether the tyres chatter in a manoeuvre: the one verdict that every command tells. What a run alone shows is told by <see cref="OfRun"/>; how close a turn is
/// to chatter, and what would cure it, by <c>ChatterReview</c>.</summary>
/// <param name="Kind">Whether they do.</param>
public sealed record ChatterVerdict(ChatterKind Kind)
{
    /// <summary>Frequency where they do [Hz]; null else.</summary>
    public double? Frequency { get; init; }

    /// <summary>Whether a swing grows by itself that nothing in the run starts: an even robot on an even floor.</summary>
    public bool IsLatent { get; init; }

    /// <summary>What feeds it.</summary>
    public ChatterFeed Feed { get; init; }

    /// <summary>Why it cannot be said.</summary>
    public ChatterDoubt Doubt { get; init; }

    /// <summary>Why there is no steady turn.</summary>
    public NoModesCause NoModes { get; init; }

    /// <summary>The change that starts it where it is close; null else.</summary>
    public ChatterChange? Tip { get; init; }

    /// <summary>The least change that makes it quiet where it is not; null if none was found or looked for.</summary>
    public ChatterChange? Cure { get; init; }

    /// <summary>Whether no cure was looked for to the end, for want of work.</summary>
    public bool IsCureLeftOut { get; init; }

    /// <summary>It cannot be said.</summary>
    /// <param name="doubt">Why.</param>
    /// <param name="noModes">Why there is no steady turn.</param>
    public static ChatterVerdict Unknown(ChatterDoubt doubt, NoModesCause noModes = NoModesCause.None) => new(ChatterKind.Unknown) { Doubt = doubt, NoModes = noModes };

    /// <summary>What a run alone shows.</summary>
    /// <param name="status">How it ended.</param>
    /// <param name="answers">Its answers, of one robot.</param>
    public static ChatterVerdict OfRun(RunStatus status, RunAnswers answers) =>
        status == RunStatus.Failed ? Unknown(ChatterDoubt.Stopped)
        : answers.Chatter is double hz ? new(ChatterKind.Buzzes) { Frequency = hz }
        : answers.IsChatterLookedFor ? new(ChatterKind.Quiet)
        : Unknown(status == RunStatus.Finished ? ChatterDoubt.TooShort : ChatterDoubt.Stopped);
}
