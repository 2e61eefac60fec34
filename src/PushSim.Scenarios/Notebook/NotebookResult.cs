namespace PushSim.Scenarios.Notebook;

/// <summary>What reading a notebook gave.</summary>
public sealed record NotebookResult
{
    /// <summary>The file, as messages name it.</summary>
    public required string File { get; init; }

    /// <summary>Every pull in the order of the file, those that are left out too.</summary>
    public IReadOnlyList<PullRow> Rows { get; init; } = [];

    /// <summary>What is wrong with it.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>What a user should know.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>Whether the file could not be read at all.</summary>
    public bool CannotRead { get; init; }

    /// <summary>Whether it was read whole.</summary>
    public bool IsRead => Problems.All(p => p.Severity != Severity.Error);
}
