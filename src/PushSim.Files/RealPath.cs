namespace PushSim.Files;

/// <summary>A path with every link on it followed, also those that links lead to.</summary>
public static class RealPath
{
    // As many as Linux follows before it takes them for a circle.
    private const int MostLinks = 40;

    /// <summary>The whole path; parts that are not there stay as they are. Throws <see cref="IOException"/> for links in a circle.</summary>
    public static string Of(string path)
    {
        int links = 0;
        string done = Path.GetPathRoot(Path.GetFullPath(path))!;
        var left = new Stack<string>();
        Push(left, Path.GetFullPath(path)[done.Length..]);
        while (left.TryPop(out string? part))
        {
            if (part == "..")
            {
                // of the folder that a link led to, not of the link
                done = Path.GetDirectoryName(done) ?? done;
                continue;
            }

            string next = Path.Combine(done, part);
            if (Native.Look(next).Kind != PathKind.Link || new FileInfo(next).LinkTarget is not string target)
            {
                done = next;
                continue;
            }

            if (++links > MostLinks)
            {
                throw new IOException("too many links, or links in a circle");
            }

            if (Path.IsPathRooted(target))
            {
                done = Path.GetPathRoot(target)!;
                target = target[done.Length..];
            }

            Push(left, target);
        }

        return done;
    }

    /// <summary>Whether a real path lies in a real folder or below it.</summary>
    public static bool IsInside(string folder, string path)
    {
        string back = Path.GetRelativePath(folder, path);
        return back != ".." && !back.StartsWith(".." + Path.DirectorySeparatorChar, StringComparison.Ordinal) && !Path.IsPathRooted(back);
    }

    private static void Push(Stack<string> left, string path)
    {
        foreach (string part in path.Split([Path.DirectorySeparatorChar, Path.AltDirectorySeparatorChar], StringSplitOptions.RemoveEmptyEntries).Where(p => p != ".").Reverse())
        {
            left.Push(part);
        }
    }
}
