using Microsoft.Win32.SafeHandles;

namespace PushSim.Files;

/// <summary>
/// The gate for reading what a user names. A file is opened first and judged then: its real path must lie in the folder that is allowed, whatever links led there, and whatever
/// happens to them meanwhile. Opening never waits for the other end of a pipe.
/// </summary>
public static class ReadGate
{
    private const string Gone = " (deleted)";

    /// <summary>Opens a file. Throws <see cref="IOException"/> or <see cref="UnauthorizedAccessException"/> where the system refuses.</summary>
    /// <param name="path">The file.</param>
    /// <param name="ask">How.</param>
    public static OpenedFile Open(string path, OpenAsk? ask = null)
    {
        ask ??= new OpenAsk();
        if (Directory.Exists(path))
        {
            return new OpenedFile(OpenState.Folder, null, "");
        }

        (WatchedStream Stream, PathKind Kind, SafeFileHandle Handle) file;
        try
        {
            file = Disk.OpenAny(path);
        }
        catch (Exception e) when (e is FileNotFoundException or DirectoryNotFoundException)
        {
            return new OpenedFile(OpenState.NotThere, null, "");
        }

        try
        {
            return Judge(path, file.Stream, file.Kind, file.Handle, ask);
        }
        catch
        {
            file.Stream.Dispose();
            throw;
        }
    }

    private static OpenedFile Judge(string path, WatchedStream stream, PathKind kind, SafeFileHandle handle, OpenAsk ask)
    {
        if (kind != PathKind.File)
        {
            stream.Dispose();
            return ask is { TakesPipes: true, Root: null }
                ? new OpenedFile(OpenState.Open, new PatientStream(path, ask.MostOfPipe, ask.Cancel), Path.GetFullPath(path))
                : new OpenedFile(OpenState.NoRegularFile, null, "");
        }

        string real = Real(handle, path);
        if (ask.Root is not null && (real.EndsWith(Gone, StringComparison.Ordinal) || !PushSim.Files.RealPath.IsInside(ask.Root, real)))
        {
            stream.Dispose();
            return new OpenedFile(OpenState.Outside, null, "");
        }

        InputLog.Add(real);
        return new OpenedFile(OpenState.Open, stream, real);
    }

    // Where an open file lies: Linux tells it (proc(5)), elsewhere the links are followed once more.
    private static string Real(SafeFileHandle handle, string path) => OperatingSystem.IsLinux()
        && new FileInfo(string.Create(CultureInfo.InvariantCulture, $"/proc/self/fd/{handle.DangerousGetHandle()}")).LinkTarget is { Length: > 0 } real && real[0] == '/'
        ? real : PushSim.Files.RealPath.Of(path);
}
