using System.Security.Cryptography;
using Microsoft.Win32.SafeHandles;

namespace PushSim.Files;

/// <summary>
/// The one door to the disk: every act of the program on a file passes here, and a test may stand in the door (<see cref="DiskWatch"/>). No act follows a link at the end of its path
/// or writes over what is there, but for those that say so.
/// </summary>
public static class Disk
{
    private static readonly AsyncLocal<DiskWatch?> s_watch = new();

    /// <summary>Lets a test see the acts of the code that the caller runs; null: nobody.</summary>
    /// <param name="watch">Who sees them.</param>
    public static void Watch(DiskWatch? watch) => s_watch.Value = watch;

    /// <summary>What stands at a path, links not followed.</summary>
    public static PathKind Look(string path)
    {
        Before(DiskAct.Look, path);
        return Native.Look(path).Kind;
    }

    /// <summary>Names in a folder, in order.</summary>
    public static IReadOnlyList<string> List(string folder)
    {
        Before(DiskAct.List, folder);
        return [.. Directory.EnumerateFileSystemEntries(folder).Select(e => Path.GetFileName(e)!).Order(StringComparer.Ordinal)];
    }

    /// <summary>Makes a file that is not there; throws where anything stands, a link too.</summary>
    public static WatchedStream Create(string path)
    {
        Before(DiskAct.Create, path);
        return new WatchedStream(new FileStream(path, FileMode.CreateNew, FileAccess.Write, FileShare.Read), path, s_watch.Value);
    }

    /// <summary>Opens a regular file that is there to add to it.</summary>
    /// <param name="path">The file.</param>
    /// <param name="length">Bytes that stay: what a killed command left behind them is cut off; null: all.</param>
    public static WatchedStream Append(string path, long? length = null)
    {
        Before(DiskAct.Append, path);
        (PathKind kind, UInt128 identity) = Native.Look(path);
        if (kind != PathKind.File)
        {
            throw new IOException($"{path} is {(kind == PathKind.None ? "not there" : "no regular file")}");
        }

        var file = new FileStream(path, FileMode.Open, FileAccess.Write, FileShare.ReadWrite);
        if (Native.Look(file.SafeFileHandle, path) != (kind, identity))
        {
            file.Dispose();
            throw new IOException($"{path} changed while it was opened");
        }

        if (length is long kept && kept < file.Length)
        {
            file.SetLength(kept);
        }

        file.Seek(0, SeekOrigin.End);
        return new WatchedStream(file, path, s_watch.Value);
    }

    /// <summary>Renames a file; throws where anything stands at the new name.</summary>
    public static void Move(string from, string to)
    {
        Before(DiskAct.Move, from);
        if (Native.Look(to).Kind != PathKind.None)
        {
            throw new IOException($"{to} is there already");
        }

        // a link itself and a folder are renamed as they are; a file by a second name, so that nobody who came in between is lost
        if (Native.Look(from).Kind == PathKind.Folder)
        {
            Directory.Move(from, to);
        }
        else
        {
            File.Move(from, to, overwrite: false);
        }
    }

    /// <summary>Renames a file over what stands at the new name, which must be ours.</summary>
    public static void Replace(string from, string to)
    {
        Before(DiskAct.Replace, to);
        File.Move(from, to, overwrite: true);
    }

    /// <summary>Removes a file or a link.</summary>
    public static void Delete(string path)
    {
        Before(DiskAct.Delete, path);
        File.Delete(path);
    }

    /// <summary>Makes a folder; false where anything stands.</summary>
    public static bool MakeFolder(string path)
    {
        Before(DiskAct.MakeFolder, path);
        return Native.MakeFolder(path);
    }

    /// <summary>Makes a folder and those above it, as far as they are not there.</summary>
    public static void MakeFolders(string path)
    {
        if (!Directory.Exists(path))
        {
            Before(DiskAct.MakeFolder, path);
            Directory.CreateDirectory(path);
        }
    }

    /// <summary>Renames a folder to a name that is free.</summary>
    public static void MoveFolder(string from, string to)
    {
        Before(DiskAct.MoveFolder, from);
        Directory.Move(from, to);
    }

    /// <summary>Removes a folder if it is empty; false where it is not.</summary>
    public static bool DeleteFolder(string path)
    {
        Before(DiskAct.DeleteFolder, path);
        try
        {
            Directory.Delete(path, recursive: false);
            return true;
        }
        catch (IOException) when (Directory.Exists(path))
        {
            return false;
        }
    }

    /// <summary>Hash of a regular file that is reached without a link at its end; empty where there is none.</summary>
    public static string Hash(string path)
    {
        using WatchedStream? file = OpenOwn(path);
        return file is null ? "" : Hex(SHA256.HashData(file));
    }

    /// <summary>Text of a small regular file that is reached without a link at its end; null where there is none or it is larger.</summary>
    /// <param name="path">The file.</param>
    /// <param name="most">Greatest size [B].</param>
    public static string? Text(string path, int most)
    {
        using WatchedStream? file = OpenOwn(path);
        if (file is null || file.Length > most)
        {
            return null;
        }

        // one more byte: a file that grows meanwhile is no small one
        byte[] bytes = new byte[(int)file.Length + 1];
        int length = file.ReadAtLeast(bytes, bytes.Length, throwOnEndOfStream: false);
        return length == bytes.Length ? null : Encoding.UTF8.GetString(bytes, 0, length);
    }

    /// <summary>Opens a regular file of ours to read, without a link at its end; null where there is none.</summary>
    public static WatchedStream? OpenOwn(string path)
    {
        if (Look(path) != PathKind.File)
        {
            return null;
        }

        UInt128 identity = Native.Look(path).Identity;
        (WatchedStream stream, PathKind kind, SafeFileHandle handle) = OpenAny(path);
        if (kind == PathKind.File && (!OperatingSystem.IsLinux() || Native.Look(handle, path).Identity == identity))
        {
            return stream;
        }

        stream.Dispose();
        return null;
    }

    /// <summary>A hash as it is written.</summary>
    internal static string Hex(ReadOnlySpan<byte> hash) => Convert.ToHexStringLower(hash);

    /// <summary>Opens to read whatever stands there, links followed, without waiting.</summary>
    internal static (WatchedStream Stream, PathKind Kind, SafeFileHandle Handle) OpenAny(string path)
    {
        Before(DiskAct.Open, path);
        SafeFileHandle handle = Native.OpenToRead(path);
        PathKind kind = Native.Look(handle, path).Kind;
        if (kind == PathKind.Folder)
        {
            handle.Dispose();
            throw new UnauthorizedAccessException($"{path} is a folder");
        }

        return (new WatchedStream(new FileStream(handle, FileAccess.Read, kind == PathKind.File ? 1 << 16 : 0, handle.IsAsync), path, s_watch.Value), kind, handle);
    }

    /// <summary>Takes the lock of a file, which is made where there is none; null where another process holds it.</summary>
    internal static FileStream? Lock(string path)
    {
        Before(DiskAct.Lock, path);
        PathKind kind = Native.Look(path).Kind;
        if (kind is not (PathKind.None or PathKind.File))
        {
            throw new IOException($"{path} is in the way: it is no lock of pushsim");
        }

        FileStream file;
        try
        {
            file = new FileStream(path, kind == PathKind.None ? FileMode.CreateNew : FileMode.Open, FileAccess.ReadWrite, FileShare.None);
        }
        catch (FileNotFoundException) when (kind == PathKind.File)
        {
            // its holder removed it in between, and a third one may have made it anew by now
            return null;
        }
        catch (IOException) when (Native.Look(path).Kind != kind)
        {
            return null;
        }
        catch (IOException e) when (e.HResult is 11 or 17 or 35 or unchecked((int)0x80070020) or unchecked((int)0x80070050))
        {
            return null;
        }

        // who waited may hold a file that its last holder removed
        if (OperatingSystem.IsLinux() && Native.Look(path) != Native.Look(file.SafeFileHandle, path))
        {
            file.Dispose();
            return null;
        }

        return file;
    }

    private static void Before(DiskAct act, string path) => s_watch.Value?.Before(act, path);
}
