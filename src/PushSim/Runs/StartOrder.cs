namespace PushSim.Runs;

/// <summary>Who moves first in a shove, by a tenth of a second.</summary>
public enum StartOrder
{
    /// <summary>The first robot.</summary>
    First,

    /// <summary>Neither.</summary>
    Together,

    /// <summary>The opponent.</summary>
    Last,
}
