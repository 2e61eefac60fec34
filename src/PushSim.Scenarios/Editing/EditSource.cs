namespace PushSim.Scenarios.Editing;

/// <summary>Where a value comes from.</summary>
public enum EditSource
{
    /// <summary>A file gives it.</summary>
    File,

    /// <summary>It is that of a part of the shelf, which a file names.</summary>
    Shelf,

    /// <summary>It is estimated from other values.</summary>
    Estimate,

    /// <summary>No file gives it: the usual value holds.</summary>
    Default,
}
