namespace PushSim.Analysis.Fit;

/// <summary>Why a pull's breakaway force is only a lower bound.</summary>
public enum BreakawayQuality
{
    /// <summary>Seen, with an interval.</summary>
    Seen,

    /// <summary>The ramp to it has too few samples.</summary>
    FewSamples,

    /// <summary>No peak stands out above the plateau.</summary>
    NoPeak,
}
