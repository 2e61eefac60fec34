namespace PushSim.Runs;

/// <summary>What a <see cref="Mark"/> marks.</summary>
public enum MarkKind
{
    /// <summary>Nine tenths of the top speed are reached.</summary>
    Near,

    /// <summary>The top speed.</summary>
    TopSpeed,

    /// <summary>The first touch.</summary>
    Touch,

    /// <summary>The command that matters.</summary>
    Command,

    /// <summary>Standstill after it.</summary>
    Standstill,

    /// <summary>The breakaway of a pull.</summary>
    Breakaway,

    /// <summary>The jerk of a tether that snaps taut.</summary>
    Jerk,

    /// <summary>The plateau of a pull begins.</summary>
    PlateauStart,

    /// <summary>The plateau of a pull ends.</summary>
    PlateauEnd,

    /// <summary>The settled part of a turn begins.</summary>
    Settled,
}
