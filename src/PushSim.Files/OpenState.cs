namespace PushSim.Files;

/// <summary>What came of opening a file.</summary>
public enum OpenState
{
    /// <summary>It is open.</summary>
    Open,

    /// <summary>Nothing is there.</summary>
    NotThere,

    /// <summary>It is a folder.</summary>
    Folder,

    /// <summary>It is a pipe, a socket or a device.</summary>
    NoRegularFile,

    /// <summary>It lies outside the folder that it must lie in.</summary>
    Outside,
}
