using PushSim.Binding;

namespace PushSim.Analysis.Fit;

/// <summary>What set a measured pull: a tyre that slid, so that its friction was measured, or motors that could give no more, so that it is at least what was measured.</summary>
/// <param name="By"><see cref="BindingKind.Tyre"/> or <see cref="BindingKind.Motor"/>; null where it cannot be told.</param>
/// <param name="IsInconsistent">Whether the reading is above what the robot file's motors can give.</param>
/// <param name="Ratio">Measured force over the motors' force at the floor [1]; NaN where it is not known.</param>
/// <param name="Reason">What tells it.</param>
public sealed record PullCause(BindingKind? By, bool IsInconsistent, double Ratio, PullReason Reason)
{
    /// <summary>What the motors give; null where it is not known, or the robot was dragged.</summary>
    public StallForce? Stall { get; init; }

    /// <summary>Whether the tyre's friction is only known to be at least what was measured: the motors set the pull, or it is not known that the tyre did.</summary>
    public bool IsLowerBound => By != BindingKind.Tyre;

    /// <summary>Whether the motors set it.</summary>
    public bool IsOfMotors => By == BindingKind.Motor;
}
