namespace PushSim.Simulation;

/// <summary>How a robot lost its stand.</summary>
public enum Upset
{
    /// <summary>It stands.</summary>
    None,

    /// <summary>Its nose rose past the balance point.</summary>
    NoseUp,

    /// <summary>Its tail rose past it.</summary>
    TailUp,

    /// <summary>One of its sides rose past it.</summary>
    SideUp,

    /// <summary>No driven wheel has been on the floor for longer than any fall takes.</summary>
    WheelsUp,
}
