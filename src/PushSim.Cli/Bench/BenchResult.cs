using PushSim.Analysis.Fit;
using PushSim.Words.Fits;

namespace PushSim.Cli.Bench;

/// <summary>What a bench heard.</summary>
internal sealed record BenchResult
{
    /// <summary>All pulls in order, with the time of each since the start [s].</summary>
    public required IReadOnlyList<(double Time, WatchedPull Pull)> Pulls { get; init; }

    /// <summary>Readings [1].</summary>
    public required long Readings { get; init; }

    /// <summary>Lines that were none [1].</summary>
    public required long Strays { get; init; }

    /// <summary>Gaps, from and to, since the start [s].</summary>
    public required IReadOnlyList<(double From, double To)> Gaps { get; init; }

    /// <summary>How long it listened [s].</summary>
    public required double Seconds { get; init; }

    /// <summary>The raw log; null: none.</summary>
    public string? Log { get; init; }

    /// <summary>The notebook; null: none.</summary>
    public string? Notebook { get; init; }

    /// <summary>Pulls noted in it [1].</summary>
    public int Noted { get; init; }

    /// <summary>What to know.</summary>
    public IReadOnlyList<string> Warnings { get; init; } = [];

    /// <summary>The answer.</summary>
    public string Verdict => BenchWords.Verdict([.. Pulls.Select(p => p.Pull)]);
}
