namespace PushSim.Files;

/// <summary>What the program asks of the disk.</summary>
public enum DiskAct
{
    /// <summary>Looks what stands at a path.</summary>
    Look,

    /// <summary>Lists a folder.</summary>
    List,

    /// <summary>Opens a file to read.</summary>
    Open,

    /// <summary>Reads bytes of an open file.</summary>
    Read,

    /// <summary>Makes a file that is not there.</summary>
    Create,

    /// <summary>Opens a file to add to it.</summary>
    Append,

    /// <summary>Writes bytes to an open file.</summary>
    Write,

    /// <summary>Waits until the bytes of an open file are on the disk.</summary>
    Sync,

    /// <summary>Renames a file; what stands at the new name stays.</summary>
    Move,

    /// <summary>Renames a file over another one.</summary>
    Replace,

    /// <summary>Removes a file.</summary>
    Delete,

    /// <summary>Makes a folder that is not there.</summary>
    MakeFolder,

    /// <summary>Renames a folder.</summary>
    MoveFolder,

    /// <summary>Removes an empty folder.</summary>
    DeleteFolder,

    /// <summary>Takes a lock.</summary>
    Lock,
}
