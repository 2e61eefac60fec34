namespace PushSim.Runs;

/// <summary>What moves in a mode.</summary>
public enum TurnPart
{
    /// <summary>Treads against their rims.</summary>
    Ring,

    /// <summary>The body up and down.</summary>
    Bounce,

    /// <summary>The body about its cross axis.</summary>
    Pitch,

    /// <summary>The body about its long axis.</summary>
    Roll,

    /// <summary>The body about its upright axis.</summary>
    Yaw,

    /// <summary>The body along the floor.</summary>
    Drift,

    /// <summary>Wheels and motors.</summary>
    Spin,
}
