using PushSim.Analysis.Fit;

namespace PushSim.Scenarios.Logs;

/// <summary>What reading a log gave.</summary>
public sealed record LogResult
{
    /// <summary>The file as the user named it.</summary>
    public required string File { get; init; }

    /// <summary>Histories, if the file has a time column.</summary>
    public IReadOnlyList<LogTrace> Traces { get; init; } = [];

    /// <summary>Readings, if it has none.</summary>
    public IReadOnlyList<PullReading> Readings { get; init; } = [];

    /// <summary>Material of each tyre, by the name of the tyre as the file has it, if the file tells it; the first one counts.</summary>
    public IReadOnlyDictionary<string, string> Materials { get; init; } = new Dictionary<string, string>();

    /// <summary>All complaints.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>What was guessed or left out, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Rows of data read [1].</summary>
    public long Rows { get; init; }

    /// <summary>True if the file could not be opened or read at all.</summary>
    public bool CannotRead { get; init; }

    /// <summary>True if any complaint is an error.</summary>
    public bool HasErrors => Problems.Any(p => p.Severity == Severity.Error);
}
