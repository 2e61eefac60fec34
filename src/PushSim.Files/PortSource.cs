using System.Diagnostics;
using System.IO.Ports;

namespace PushSim.Files;

/// <summary>Lines on a serial port. When the cable falls out it waits for the port to come back, as long as it takes.</summary>
/// <param name="name">Name of the port.</param>
/// <param name="baud">Bits a second [1/s].</param>
public sealed class PortSource(string name, int baud) : ILineSource
{
    private const int Block = 4096;

    // A read that brings nothing ends after this, so that interrupt and unplugging are seen [ms].
    private const int Patience = 200;

    // From one try to open it again to the next [ms].
    private const int Retry = 300;

    /// <summary>Serial ports of this machine, in order; empty where it tells none.</summary>
    public static IReadOnlyList<string> Names()
    {
        try
        {
            return [.. SerialPort.GetPortNames().Distinct().Order(StringComparer.Ordinal)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or PlatformNotSupportedException)
        {
            return [];
        }
    }

    /// <inheritdoc/>
    public void Read(Action<SourceNews> got, CancellationToken cancel)
    {
        long start = Stopwatch.GetTimestamp();
        double Now() => Stopwatch.GetElapsedTime(start).TotalSeconds;
        bool wasOpen = false;
        byte[] buffer = new byte[Block];
        while (!cancel.IsCancellationRequested)
        {
            using SerialPort? port = Open(out string why);
            if (port is null && !wasOpen)
            {
                got(new SourceNews(SourceNewsKind.Refused, Now(), [], why));
                return;
            }

            if (port is null)
            {
                cancel.WaitHandle.WaitOne(Retry);
                continue;
            }

            wasOpen = true;
            got(new SourceNews(SourceNewsKind.Plugged, Now(), []));
            Listen(port, buffer, n => got(new SourceNews(SourceNewsKind.Bytes, Now(), buffer[..n])), cancel);
            if (!cancel.IsCancellationRequested)
            {
                got(new SourceNews(SourceNewsKind.Unplugged, Now(), []));
            }

            Close(port);
        }

        got(new SourceNews(SourceNewsKind.Ended, Now(), []));
    }

    // Until it is gone or nobody wants more
    private void Listen(SerialPort port, byte[] buffer, Action<int> got, CancellationToken cancel)
    {
        while (!cancel.IsCancellationRequested)
        {
            try
            {
                int n = port.BaseStream.Read(buffer, 0, buffer.Length);
                if (n <= 0)
                {
                    return;
                }

                got(n);
            }
            catch (TimeoutException)
            {
                // a port whose device is gone may go on giving nothing
                if (name.StartsWith('/') && Disk.Look(name) == PathKind.None)
                {
                    return;
                }
            }
            catch (Exception e) when (IsGone(e))
            {
                return;
            }
        }
    }

    private SerialPort? Open(out string why)
    {
        why = "";
        SerialPort? port = null;
        try
        {
            port = new SerialPort(name, baud) { ReadTimeout = Patience };
            port.Open();
            TellReady(port);
            return port;
        }
        catch (Exception e) when (IsGone(e))
        {
            why = name.StartsWith('/') && Disk.Look(name) == PathKind.None ? "it is not there" : e is UnauthorizedAccessException ? "it may not be opened: does another program hold it, or are you not in its group (dialout, uucp)?" : "it cannot be opened: " + e.Message;
            port?.Dispose();
            return null;
        }
    }

    // Many boards send only to who is ready
    private static void TellReady(SerialPort port)
    {
        try
        {
            port.DtrEnable = true;
        }
        catch (Exception e) when (IsGone(e))
        {
            // a port without that line needs none
        }
    }

    private static void Close(SerialPort port)
    {
        try
        {
            port.Close();
        }
        catch (Exception e) when (IsGone(e))
        {
            // gone already
        }
    }

    // What reading and opening throw when the other end hangs up, by trying it on Linux
    private static bool IsGone(Exception e) => e is IOException or UnauthorizedAccessException or InvalidOperationException or ArgumentException or OperationCanceledException or NotSupportedException or IndexOutOfRangeException;
}
