namespace PushSim.Runs;

/// <summary>A number of a tyre that makes it chatter or keeps it from it.</summary>
public enum ChatterPart
{
    /// <summary>Damping of the tyre body [N s/m].</summary>
    BodyDamping,

    /// <summary>Give of the tread before it slides [m].</summary>
    TreadGive,

    /// <summary>Damping of the tyre's vertical spring [s/m].</summary>
    VerticalDamping,

    /// <summary>Speed over which friction falls from static to kinetic [m/s].</summary>
    SlipSpeed,
}
