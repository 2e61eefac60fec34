namespace PushSim.Runs;

/// <summary>What became of one match of a <see cref="MatchBatch"/>: the verdict of a full run without its history. No reference, so that many can be kept.</summary>
public readonly record struct MatchOutcome
{
    /// <summary>Number of the match, as the batch was given it [1].</summary>
    public required long Number { get; init; }

    /// <summary>How the run ended; after <see cref="RunStatus.Failed"/> only <see cref="Failure"/> and the cost mean anything.</summary>
    public required RunStatus Status { get; init; }

    /// <summary>Why it failed.</summary>
    public MatchFailure Failure { get; init; }

    /// <summary>How the shove ended.</summary>
    public ShoveEnding Ending { get; init; }

    /// <summary>0 if the first robot won, 1 if the opponent did, -1 for neither [1].</summary>
    public int Winner { get; init; }

    /// <summary>Ground that the first robot gained at the contact, negative if it lost ground [m].</summary>
    public double GroundGained { get; init; }

    /// <summary>When it ended [s].</summary>
    public double EndTime { get; init; }

    /// <summary>When the robots first touched [s]; NaN if they never did.</summary>
    public double FirstContact { get; init; }

    /// <summary>What was seen of the first robot.</summary>
    public MatchRobot First { get; init; }

    /// <summary>What was seen of the opponent.</summary>
    public MatchRobot Opponent { get; init; }

    /// <summary>Evaluations of the right-hand side [1].</summary>
    public long Evaluations { get; init; }

    /// <summary>Accepted steps [1].</summary>
    public int Steps { get; init; }

    /// <summary>Rejected steps [1].</summary>
    public int RejectedSteps { get; init; }

    /// <summary>What would have become of it without the line that ended it; null where none did or it was not played on.</summary>
    internal MatchBeyond? Beyond { get; init; }

    /// <summary>The cost, as its integration told it.</summary>
    internal IntegrationOutcome Report =>
        new(Failure == MatchFailure.Work ? IntegrationStatus.EvaluationCap : IntegrationStatus.Completed, EndTime, Steps, RejectedSteps, Evaluations);
}
