using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Scenes;

/// <summary>What reading a file gave: the settings if it was right, and everything there is to say about it.</summary>
public sealed record ReadResult
{
    /// <summary>The scenario; null if there was any error, or if the file is a robot file.</summary>
    public ScenarioSettings? Scenario { get; init; }

    /// <summary>The robot; null if there was any error.</summary>
    public RobotSettings? Robot { get; init; }

    /// <summary>Names of the scenario's variants, for <see cref="ReadOptions.Variant"/>.</summary>
    public IReadOnlyList<string> Variants { get; init; } = [];

    /// <summary>All complaints in order of file and place.</summary>
    public required IReadOnlyList<Problem> Problems { get; init; }

    /// <summary>What was converted or estimated, in sentences.</summary>
    public required IReadOnlyList<string> Notes { get; init; }

    /// <summary>What was taken for granted of the log of a measured pull, in sentences.</summary>
    public IReadOnlyList<string> Remarks { get; init; } = [];

    /// <summary>Every number that was estimated, converted or taken from the shelf, with its source and error.</summary>
    public IReadOnlyList<DerivedValue> Derived { get; init; } = [];

    /// <summary>Every file that was opened, each once: its name in messages, and where it lies, links followed.</summary>
    public IReadOnlyList<(string Name, string Path)> Files { get; init; } = [];

    /// <summary>Every value the files gave.</summary>
    public required IReadOnlyList<InputRow> Inputs { get; init; }

    /// <summary>True if a file could not be opened or read at all, so that nothing can be said about what is in it.</summary>
    public bool CannotRead { get; init; }

    /// <summary>True if any complaint is an error.</summary>
    public bool HasErrors => Problems.Any(p => p.Severity == Severity.Error);

    /// <summary>What a reading gave, its complaints in order of file and place.</summary>
    internal static ReadResult Of(ReadContext context, ScenarioSettings? scenario, RobotSettings? robot) => new()
    {
        Scenario = context.Errors == 0 ? scenario : null,
        Robot = context.Errors == 0 ? robot : null,
        Variants = context.Variants,
        Problems = [.. context.Problems.OrderBy(p => p.File, StringComparer.Ordinal).ThenBy(p => p.Line).ThenBy(p => p.Column)],
        Notes = [.. context.Notes.Distinct()],
        Remarks = context.Remarks,
        Derived = [.. context.Derived.Distinct()],
        Files = [.. context.Files.Distinct()],
        Inputs = context.Inputs,
        CannotRead = context.CannotRead,
    };
}
