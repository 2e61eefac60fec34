namespace PushSim.Files;

/// <summary>What stands at a path, links not followed.</summary>
public enum PathKind
{
    /// <summary>Nothing.</summary>
    None,

    /// <summary>A regular file.</summary>
    File,

    /// <summary>A folder.</summary>
    Folder,

    /// <summary>A link, wherever it leads.</summary>
    Link,

    /// <summary>A pipe, a socket or a device.</summary>
    Other,
}
