using System.Security.Cryptography;

namespace PushSim.Files;

/// <summary>Where the locks of an output folder stand, and who takes them: one of the folder, and one of each piece of its work.</summary>
public static class FolderLock
{
    private const string Name = "lock";
    private const int LongestName = 120;

    // EROFS of errno(3)
    private const int ReadOnlyDisk = 30;

    /// <summary>The lock of one piece of a folder's work, such as a part of a campaign, apart from that of the folder.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="piece">Name of the piece: letters, digits and hyphens.</param>
    /// <param name="ask">Who asks.</param>
    public static HeldLock Piece(string path, string piece, LockAsk ask)
    {
        (string full, string prefix) = Place(path);
        return Take(full, ref prefix, "-" + piece, ask).Lock;
    }

    /// <summary>The lock of a whole folder, for who writes single files into it.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="ask">Who asks.</param>
    public static HeldLock Whole(string path, LockAsk ask)
    {
        (string full, string prefix) = Place(path);
        return Take(full, ref prefix, "", ask).Lock;
    }

    /// <summary>Who holds the lock of a piece, in words; null if nobody does. Nothing is made or waited for.</summary>
    /// <param name="path">The folder.</param>
    /// <param name="piece">Name of the piece.</param>
    public static string? Holder(string path, string piece)
    {
        if (!Directory.Exists(path))
        {
            return null;
        }

        (string full, string prefix) = Place(path);
        string inner = Path.Combine(full, ".pushsim-");
        return new[] { prefix, inner }.Select(p => HeldLock.Holder(p + Name + "-" + piece)).FirstOrDefault(h => h is not null);
    }

    /// <summary>A folder, links above it followed, and what the names of our files beside it begin with.</summary>
    internal static (string Path, string Prefix) Place(string path)
    {
        string full = Path.TrimEndingDirectorySeparator(Path.GetFullPath(path));
        string? parent = Path.GetDirectoryName(full);
        if (parent is null)
        {
            throw new IOException($"{path} is no folder of its own; give another with --out");
        }

        Disk.MakeFolders(parent);
        parent = RealPath.Of(parent);
        string name = Path.GetFileName(full);
        string brief = Encoding.UTF8.GetByteCount(name) <= LongestName ? name : "folder-" + Disk.Hex(SHA256.HashData(Encoding.UTF8.GetBytes(name)))[..16];
        return (Path.Combine(parent, name), Path.Combine(parent, $".{brief}.pushsim-"));
    }

    /// <summary>Takes a lock beside the folder, or in it where nothing may be made beside it.</summary>
    internal static (HeldLock Lock, bool IsInner) Take(string path, ref string prefix, string piece, LockAsk ask)
    {
        try
        {
            return (HeldLock.Take(prefix + Name + piece, ask), false);
        }
        catch (Exception e) when (e is UnauthorizedAccessException or IOException { HResult: ReadOnlyDisk } && Disk.Look(prefix + Name + piece) == PathKind.None && Disk.Look(path) == PathKind.Folder)
        {
            prefix = Path.Combine(path, ".pushsim-");
            return (HeldLock.Take(prefix + Name + piece, ask), true);
        }
    }
}
