namespace PushSim.Simulation;

/// <summary>How a robot lost its stand.</summary>
public enum Upset
{
    /// <summary>It stands.</summary>
    None,

    /// <summary>Its nose rose past the tilt at which the model ends.</summary>
    NoseUp,

    /// <summary>Its tail rose past that tilt.</summary>
    TailUp,

    /// <summary>One of its sides rose past that tilt.</summary>
    SideUp,

    /// <summary>No driven wheel has been on the floor for longer than a hop.</summary>
    WheelsUp,
}
