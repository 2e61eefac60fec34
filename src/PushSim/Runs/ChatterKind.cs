namespace PushSim.Runs;

/// <summary>Whether tyres chatter.</summary>
public enum ChatterKind
{
    /// <summary>It cannot be said.</summary>
    Unknown,

    /// <summary>They do not, and are not close to it.</summary>
    Quiet,

    /// <summary>They do not, but a small change of the tyre lets them.</summary>
    Close,

    /// <summary>They do.</summary>
    Buzzes,
}
