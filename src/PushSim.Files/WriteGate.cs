namespace PushSim.Files;

/// <summary>
/// The gate for writing single files: whole or not at all, and never over what a user made. Result files of a command go through a <see cref="FreshFolder"/>.
/// </summary>
public static class WriteGate
{
    private const string Part = ".pushsim-part";
    private const int RandomLength = 8;
    private const int MostTries = 10_000;

    /// <summary>Writes a file that is not there: first under another name, then whole in its place. Throws if anything stands there.</summary>
    /// <param name="path">The file.</param>
    /// <param name="content">Writes it.</param>
    /// <param name="isSynced">Whether it is on the disk before it has its name, so that it survives the machine's fall.</param>
    /// <returns>Hash of the content.</returns>
    public static string Create(string path, Action<Stream> content, bool isSynced = false) => Write(path, content, isSynced, Disk.Move);

    /// <summary>The same in the place of a file that is ours alone; a reader sees the old one or the new one, whole.</summary>
    /// <param name="path">The file.</param>
    /// <param name="content">Writes it.</param>
    /// <param name="isSynced">Whether it is on the disk before it has its name.</param>
    /// <returns>Hash of the content.</returns>
    public static string Replace(string path, Action<Stream> content, bool isSynced = false)
    {
        if (Disk.Look(path) is not (PathKind.None or PathKind.File))
        {
            throw new IOException($"{path} is in the way: it is no regular file");
        }

        return Write(path, content, isSynced, Disk.Replace);
    }

    /// <summary>Opens a regular file that is ours to add to its end; no link is followed.</summary>
    public static WatchedStream Append(string path) => Disk.Append(path);

    /// <summary>Moves what stands at a path aside, to a name beside it that is free.</summary>
    /// <param name="path">The path.</param>
    /// <param name="word">What the new name says: "kept" gives name.kept-1.ext.</param>
    /// <returns>The new path; null if nothing stands there.</returns>
    public static string? Aside(string path, string word = "kept") => Aside(path, Path.GetDirectoryName(path)!, word);

    /// <summary>The same to another folder of the same disk, where a free name of its own is kept.</summary>
    internal static string? Aside(string path, string folder, string word)
    {
        string name = Path.GetFileName(path);
        for (int n = 1; n <= MostTries; n++)
        {
            if (Disk.Look(path) == PathKind.None)
            {
                return null;
            }

            string free = Path.Combine(folder, Numbered(name, $".{word}-", n));
            if (Disk.Look(free) != PathKind.None)
            {
                continue;
            }

            try
            {
                Disk.Move(path, free);
                return free;
            }
            catch (IOException) when (Disk.Look(free) != PathKind.None && Disk.Look(path) != PathKind.None)
            {
                // taken in between
            }
        }

        throw new IOException($"no name is free beside {path}");
    }

    /// <summary>A name with a number before its ending.</summary>
    internal static string Numbered(string name, string before, int number)
    {
        // a hidden name has no ending
        string end = name.LastIndexOf('.') > 0 ? Path.GetExtension(name) : "";
        return string.Create(CultureInfo.InvariantCulture, $"{name[..^end.Length]}{before}{number}{end}");
    }

    private static string Write(string path, Action<Stream> content, bool isSynced, Action<string, string> place)
    {
        string beside = Beside(path);
        try
        {
            string hash;
            using (WatchedStream stream = Disk.Create(beside))
            {
                content(stream);
                if (isSynced)
                {
                    stream.Sync();
                }

                hash = stream.Hash;
            }

            place(beside, path);
            return hash;
        }
        catch
        {
            TryDelete(beside);
            throw;
        }
    }

    /// <summary>Throws where a folder takes no file.</summary>
    internal static void Try(string folder)
    {
        string path = Beside(Path.Combine(folder, "try"));
        Disk.Create(path).Dispose();
        Disk.Delete(path);
    }

    /// <summary>Whether a name is that of a file on its way, which a killed command left if nobody holds the lock of its folder.</summary>
    internal static bool IsPart(string name) => name.Length > Part.Length + RandomLength + 2 && name[0] == '.' && name.EndsWith(Part, StringComparison.Ordinal)
        && name[^(Part.Length + RandomLength + 1)] == '.' && name[^(Part.Length + RandomLength)..^Part.Length].All(char.IsAsciiHexDigitLower);

    // a name that nobody has
    private static string Beside(string path)
    {
        string name = Path.GetFileName(path);
        string mark = Guid.NewGuid().ToString("N")[..RandomLength];
        return Path.Combine(Path.GetDirectoryName(Path.GetFullPath(path))!, $".{name[..Math.Min(name.Length, 60)]}.{mark}{Part}");
    }

    private static void TryDelete(string path)
    {
        try
        {
            Disk.Delete(path);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // what failed before is told
        }
    }
}
