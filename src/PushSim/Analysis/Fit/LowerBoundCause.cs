namespace PushSim.Analysis.Fit;

/// <summary>Why a static friction is only known to be at least that.</summary>
public enum LowerBoundCause
{
    /// <summary>Steady readings do not show the breakaway.</summary>
    SteadyReadings,

    /// <summary>Too few samples on the ramp to breakaway.</summary>
    FewSamples,

    /// <summary>No breakaway peak stands out.</summary>
    NoPeak,
}
