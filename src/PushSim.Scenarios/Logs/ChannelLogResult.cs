using PushSim.Analysis.Compare;

namespace PushSim.Scenarios.Logs;

/// <summary>What reading a robot's log gave.</summary>
public sealed record ChannelLogResult
{
    /// <summary>The file as the user named it.</summary>
    public required string File { get; init; }

    /// <summary>The log; null if it was wrong.</summary>
    public ChannelLog? Log { get; init; }

    /// <summary>Time of its first row [s].</summary>
    public double Start { get; init; }

    /// <summary>All complaints.</summary>
    public IReadOnlyList<Problem> Problems { get; init; } = [];

    /// <summary>What was guessed or left out, in sentences.</summary>
    public IReadOnlyList<string> Notes { get; init; } = [];

    /// <summary>True if the file could not be opened or read at all.</summary>
    public bool CannotRead { get; init; }
}
