using System.Runtime.InteropServices;
using System.Text;

namespace PushSim.Cli.Tests.Bench;

/// <summary>A pseudo-terminal pair (POSIX.1-2008, posix_openpt): what is written here comes out of the port of that name.</summary>
internal sealed partial class Pty : IDisposable
{
    // Linux, fcntl.h
    private const int ReadWrite = 2;
    private const int NoControllingTerminal = 0x100;

    private readonly int _master;
    private bool _isClosed;

    private Pty(int master, string port) => (_master, Port) = (master, port);

    /// <summary>Name of the port.</summary>
    public string Port { get; }

    /// <summary>Opens a pair; null where the system has none.</summary>
    public static Pty? Open()
    {
        if (!OperatingSystem.IsLinux())
        {
            return null;
        }

        int master = posix_openpt(ReadWrite | NoControllingTerminal);
        if (master < 0 || grantpt(master) != 0 || unlockpt(master) != 0 || Marshal.PtrToStringAnsi(ptsname(master)) is not string port)
        {
            return null;
        }

        return new Pty(master, port);
    }

    /// <summary>Sends a line.</summary>
    public void Line(string text) => Send(text + "\r\n");

    /// <summary>Sends characters as they are.</summary>
    public void Send(string text)
    {
        byte[] bytes = Encoding.UTF8.GetBytes(text);
        for (int sent = 0; sent < bytes.Length;)
        {
            nint n = write(_master, ref bytes[sent], bytes.Length - sent);
            if (n <= 0)
            {
                return;
            }

            sent += (int)n;
        }
    }

    /// <summary>Pulls the cable out.</summary>
    public void Dispose()
    {
        if (!_isClosed)
        {
            _isClosed = true;
            _ = close(_master);
        }
    }

    [LibraryImport("libc", SetLastError = true)]
    private static partial int posix_openpt(int flags);

    [LibraryImport("libc")]
    private static partial int grantpt(int fd);

    [LibraryImport("libc")]
    private static partial int unlockpt(int fd);

    [LibraryImport("libc")]
    private static partial nint ptsname(int fd);

    [LibraryImport("libc")]
    private static partial nint write(int fd, ref byte bytes, nint count);

    [LibraryImport("libc")]
    private static partial int close(int fd);
}
