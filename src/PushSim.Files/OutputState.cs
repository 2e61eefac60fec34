namespace PushSim.Files;

/// <summary>How far a result is.</summary>
public enum OutputState
{
    /// <summary>Files are being written, or only what a later result comes from is there.</summary>
    Begun,

    /// <summary>All files of an interrupted command.</summary>
    Partial,

    /// <summary>All files.</summary>
    Whole,
}
