namespace PushSim.Runs;

/// <summary>A start of a shove that nobody at the ring could tell from the one of the file.</summary>
public enum CloseStart
{
    /// <summary>The same, computed at a tighter tolerance.</summary>
    Tighter,

    /// <summary>The opponent half a millimetre further right.</summary>
    Right,

    /// <summary>Turned a fifth of a degree right.</summary>
    TurnedRight,

    /// <summary>The opponent half a millimetre further left.</summary>
    Left,

    /// <summary>Turned a fifth of a degree left.</summary>
    TurnedLeft,

    /// <summary>Starting a moment later.</summary>
    Later,

    /// <summary>The opponent starting a moment later.</summary>
    OpponentLater,

    /// <summary>The same start, with upright faces that hold no friction.</summary>
    SmoothFaces,
}
