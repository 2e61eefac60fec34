namespace PushSim.Analysis.Fit;

/// <summary>Why a tyre is left out of a comparison.</summary>
public enum NotCompared
{
    /// <summary>It is not.</summary>
    None,

    /// <summary>Its forces contradict the robot file.</summary>
    Inconsistent,

    /// <summary>The motors set its pulls.</summary>
    OfMotors,

    /// <summary>It slid in fewer than two pulls.</summary>
    FewPulls,

    /// <summary>All its readings are equal.</summary>
    Equal,
}
