using System.Runtime.InteropServices;
using Microsoft.Win32.SafeHandles;

namespace PushSim.Files;

/// <summary>
/// What .NET does not tell: the kind of a file, its identity, opening without waiting for the other end of a pipe, and a folder that must not be there yet. From the calls of
/// Linux (statx(2), open(2), mkdir(2)); elsewhere as far as .NET goes.
/// </summary>
internal static partial class Native
{
    private const int AtCurrentFolder = -100;
    private const int NoFollow = 0x100;
    private const int EmptyPath = 0x1000;
    private const uint TypeAndInode = 0x101;
    private const int StatSize = 256;

    // struct statx: mode at 28, inode at 32, device of the file at 136
    private const int ModeAt = 28;
    private const int InodeAt = 32;
    private const int DeviceAt = 136;

    private const int ReadOnlyCloseNoWait = 0x80000 | 0x800;
    private const int AlreadyThere = 17;
    private const uint UsualMode = 0x1FF;

    /// <summary>The kind of what stands at a path, links not followed, and what tells it from others.</summary>
    public static (PathKind Kind, UInt128 Identity) Look(string path) => path.Contains('\0', StringComparison.Ordinal) ? (PathKind.None, 0) : OperatingSystem.IsLinux() ? Stat(AtCurrentFolder, path, NoFollow) : Plain(path);

    /// <summary>The same of an open file.</summary>
    public static (PathKind Kind, UInt128 Identity) Look(SafeFileHandle handle, string path) => OperatingSystem.IsLinux() ? Stat((int)handle.DangerousGetHandle(), "", EmptyPath) : (Plain(path).Kind is PathKind.Link ? PathKind.File : Plain(path).Kind, 0);

    /// <summary>Opens to read without waiting, links followed, without any lock.</summary>
    public static SafeFileHandle OpenToRead(string path)
    {
        if (OperatingSystem.IsLinux() && !path.Contains('\0', StringComparison.Ordinal))
        {
            int file = Open(path, ReadOnlyCloseNoWait, 0);
            if (file >= 0)
            {
                return new SafeFileHandle(file, ownsHandle: true);
            }
        }

        // where that failed .NET fails alike, with its words
        return File.OpenHandle(path, FileMode.Open, FileAccess.Read, FileShare.ReadWrite | FileShare.Delete);
    }

    /// <summary>Makes a folder; false if anything stands there.</summary>
    public static bool MakeFolder(string path)
    {
        if (!OperatingSystem.IsLinux())
        {
            bool isFree = Plain(path).Kind == PathKind.None;
            Directory.CreateDirectory(path);
            return isFree;
        }

        if (MkDir(path, UsualMode) == 0)
        {
            return true;
        }

        int error = Marshal.GetLastPInvokeError();
        return error == AlreadyThere ? false : throw new IOException($"cannot make the folder {path}: {Marshal.GetPInvokeErrorMessage(error)}", error);
    }

    /// <summary>Writes to a file by its number; the number of bytes that it took, or less than 0 and <see cref="Marshal.GetLastPInvokeError"/>.</summary>
    public static unsafe nint Write(int file, ReadOnlySpan<byte> bytes)
    {
        fixed (byte* first = bytes)
        {
            return WriteTo(file, first, bytes.Length);
        }
    }

    /// <summary>Ends the process at once, whatever its threads wait for.</summary>
    public static void End(int code)
    {
        if (OperatingSystem.IsWindows())
        {
            Environment.Exit(code);
        }

        ExitNow(code);
    }

    private static (PathKind Kind, UInt128 Identity) Stat(int at, string path, int flags)
    {
        byte[] stat = new byte[StatSize];
        if (StatX(at, path, flags, TypeAndInode, stat) != 0)
        {
            return (PathKind.None, 0);
        }

        PathKind kind = (BitConverter.ToUInt16(stat, ModeAt) & 0xF000) switch { 0x8000 => PathKind.File, 0x4000 => PathKind.Folder, 0xA000 => PathKind.Link, _ => PathKind.Other };
        return (kind, new UInt128(BitConverter.ToUInt64(stat, DeviceAt), BitConverter.ToUInt64(stat, InodeAt)));
    }

    private static (PathKind Kind, UInt128 Identity) Plain(string path)
    {
        var info = new FileInfo(path);
        PathKind kind = info.LinkTarget is not null ? PathKind.Link : Directory.Exists(path) ? PathKind.Folder : info.Exists ? PathKind.File : PathKind.None;
        return (kind, 0);
    }

    [LibraryImport("libc", EntryPoint = "statx", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int StatX(int at, string path, int flags, uint mask, [Out] byte[] stat);

    [LibraryImport("libc", EntryPoint = "open", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int Open(string path, int flags, int mode);

    [LibraryImport("libc", EntryPoint = "write", SetLastError = true)]
    private static unsafe partial nint WriteTo(int file, byte* bytes, nint count);

    [LibraryImport("libc", EntryPoint = "_exit")]
    private static partial void ExitNow(int code);

    [LibraryImport("libc", EntryPoint = "mkdir", SetLastError = true, StringMarshalling = StringMarshalling.Utf8)]
    private static partial int MkDir(string path, uint mode);
}
