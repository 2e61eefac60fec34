namespace PushSim.Analysis.Fit;

/// <summary>What set a measured pull.</summary>
public enum PullLimitedBy
{
    /// <summary>The tyre slid: its friction was measured.</summary>
    Tyre,

    /// <summary>The motors could give no more: the tyre's friction is at least what was measured.</summary>
    Motors,

    /// <summary>It cannot be told.</summary>
    Unknown,
}

/// <summary>The judgement, with its reason and what to do.</summary>
/// <param name="By">What set the pull.</param>
/// <param name="IsInconsistent">Whether the reading is above what the robot file's motors can give.</param>
/// <param name="Ratio">Measured force over the motors' force at the floor [1]; NaN where it is not known.</param>
/// <param name="Reason">Why, in plain words.</param>
public sealed record PullLimit(PullLimitedBy By, bool IsInconsistent, double Ratio, string Reason);
