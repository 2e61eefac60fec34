namespace PushSim.Runs;

/// <summary>What makes a shove too close to call.</summary>
public enum CloseCause
{
    /// <summary>It is not known.</summary>
    Unknown,

    /// <summary>The two are level: the ground gained stays about what decides.</summary>
    Level,

    /// <summary>Friction between upright faces: without it, the shove ends otherwise. From the bump on it holds a force up the faces.</summary>
    FaceFriction,

    /// <summary>Tyres chatter, and its phase decides.</summary>
    Chatter,

    /// <summary>A tiny difference turns the robots one way or the other.</summary>
    Bistable,
}
