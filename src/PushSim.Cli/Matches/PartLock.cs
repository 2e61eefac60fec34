namespace PushSim.Cli.Matches;

/// <summary>A lock of one journal among processes, on this machine or on others that share the folder. The system gives it back when its holder dies; its file stays, for whoever is next.</summary>
internal static class PartLock
{
    /// <summary>Takes it; null if somebody holds it.</summary>
    public static IDisposable? Take(string path)
    {
        try
        {
            return new FileStream(path, FileMode.OpenOrCreate, FileAccess.ReadWrite, FileShare.None);
        }
        catch (IOException) when (File.Exists(path))
        {
            return null;
        }
    }

    /// <summary>Whether somebody holds it.</summary>
    public static bool IsTaken(string path)
    {
        if (!File.Exists(path))
        {
            return false;
        }

        using IDisposable? mine = Take(path);
        return mine is null;
    }
}
