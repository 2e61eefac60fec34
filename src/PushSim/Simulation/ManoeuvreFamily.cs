namespace PushSim.Simulation;

/// <summary>Manoeuvres that are asked the same: the family decides answers, verdict and plots.</summary>
public enum ManoeuvreFamily
{
    /// <summary>Driving off: how fast, and after what time.</summary>
    Drive,

    /// <summary>Driving, then another command: how far until it stands.</summary>
    Stop,

    /// <summary>On a tether: how strong.</summary>
    Pull,

    /// <summary>Turning: how fast, and what it costs.</summary>
    Turn,

    /// <summary>Standing: whether it stays.</summary>
    Hold,

    /// <summary>Against a wall or another robot: how strong.</summary>
    Push,
}
