namespace PushSim.Powertrain;

/// <summary>Kinds of gear stage.</summary>
public enum GearKind
{
    /// <summary>Spur gears.</summary>
    Spur,

    /// <summary>Planetary gears.</summary>
    Planetary,

    /// <summary>A worm and its wheel.</summary>
    Worm,
}
