namespace PushSim.Runs;

/// <summary>What feeds a swing that grows by itself.</summary>
public enum ChatterFeed
{
    /// <summary>It is not known.</summary>
    Unknown,

    /// <summary>Friction that falls with slip speed.</summary>
    Friction,

    /// <summary>Loads that swing with the body.</summary>
    Loads,

    /// <summary>It takes both.</summary>
    Both,

    /// <summary>Each is enough alone.</summary>
    Either,
}
