using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>What was found in a log.</summary>
public sealed record FoundTrace
{
    /// <summary>The log.</summary>
    public required ForceTrace Trace { get; init; }

    /// <summary>Why nothing was found; null if something was.</summary>
    public TraceProblem? Problem { get; init; }

    /// <summary>Its pulls in order of time.</summary>
    public IReadOnlyList<FoundPull> Pulls { get; init; } = [];

    /// <summary>Readings left out as spikes, by index.</summary>
    public IReadOnlyList<int> Spikes { get; init; } = [];

    /// <summary>Standard deviation of the noise while slack or steady [N].</summary>
    public double Noise { get; init; }

    /// <summary>Smallest step of the readings [N].</summary>
    public double Step { get; init; }
}
