namespace PushSim.Files;

/// <summary>How an output folder is asked for.</summary>
/// <param name="Path">The folder, as the user names it.</param>
/// <param name="Force">Whether it may be one that is not ours.</param>
/// <param name="Source">Tells the source from others; empty where none is known.</param>
/// <param name="Lock">Who asks.</param>
public sealed record FolderAsk(string Path, bool Force, string Source, LockAsk Lock)
{
    /// <summary>Names of files that other parts of the program keep in the folder, which neither a new result nor its cleaning touches.</summary>
    public Func<string, bool> IsKept { get; init; } = _ => false;
}
