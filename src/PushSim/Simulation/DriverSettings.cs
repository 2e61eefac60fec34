namespace PushSim.Simulation;

/// <summary>How the one at the sticks, or the controller's own aid, bends the commands.</summary>
public sealed record DriverSettings
{
    /// <summary>All commands come later by this [s].</summary>
    public double ReactionDelay { get; init; }

    /// <summary>Heading hold k: turn command = -k times the error of the heading against the one at the start [1/rad]; 0 is off.</summary>
    public double HeadingHold { get; init; }

    /// <summary>Time of heading hold's first-order lag [s].</summary>
    public double HeadingLag { get; init; } = 0.05;
}
