using System.Diagnostics;

namespace PushSim.Files;

/// <summary>A lock that one process holds. It is a file that names its holder; the system lets go of it when the process ends, however it does, so none is left behind for long.</summary>
public sealed class HeldLock : IDisposable
{
    private const int LookAgainMilliseconds = 40;
    private const int MostText = 4096;
    private const double LongestUnnamed = 0.5;

    private readonly string _path;
    private readonly FileStream _file;

    private HeldLock(string path, FileStream file) => (_path, _file) = (path, file);

    /// <summary>Takes a lock, waiting for whoever holds it. Throws <see cref="IOException"/> that names the holder when the wait is over.</summary>
    /// <param name="path">Its file.</param>
    /// <param name="ask">Who asks, and how long it waits.</param>
    public static HeldLock Take(string path, LockAsk ask)
    {
        long start = Stopwatch.GetTimestamp();
        bool isTold = false;
        while (true)
        {
            ask.Cancel.ThrowIfCancellationRequested();
            if (Disk.Lock(path) is FileStream file)
            {
                LockHolder? left = LockHolder.Read(Text(file));
                if (left is null || !left.IsAlive())
                {
                    return Own(path, file, ask);
                }

                // a file system without locks: the text alone tells
                file.Dispose();
            }

            string? known = LockHolder.Read(Disk.Text(path, MostText) ?? "")?.Words;
            string holder = known ?? "another command";
            // who has just taken it may not have written its name yet
            double seconds = Stopwatch.GetElapsedTime(start).TotalSeconds;
            if (!isTold && seconds >= Math.Min(ask.TellAfter, ask.Wait) && (known is not null || seconds > LongestUnnamed))
            {
                isTold = true;
                ask.Tell(string.Create(CultureInfo.InvariantCulture, $"{ask.What} is in use by {holder}; waiting up to {ask.Wait:0} s"));
            }

            if (seconds >= ask.Wait)
            {
                throw new IOException($"{ask.What} is in use by {holder}; wait until it ends, or give another folder with --out");
            }

            ask.Cancel.WaitHandle.WaitOne(LookAgainMilliseconds);
        }
    }

    /// <summary>Who holds a lock, in words; null if nobody does.</summary>
    /// <param name="path">Its file.</param>
    internal static string? Holder(string path)
    {
        if (Disk.Look(path) != PathKind.File)
        {
            return null;
        }

        using FileStream? free = Disk.Lock(path);
        LockHolder? holder = LockHolder.Read(free is null ? Disk.Text(path, MostText) ?? "" : Text(free));
        return free is null ? holder?.Words ?? "another command" : holder?.IsAlive() == true ? holder.Words : null;
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        try
        {
            // while it is held: nobody else's can stand there
            if (_file.CanWrite)
            {
                Disk.Delete(_path);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            // the file stays, without a lock: the next one takes it over
        }
        finally
        {
            _file.Dispose();
        }
    }

    private static HeldLock Own(string path, FileStream file, LockAsk ask)
    {
        try
        {
            file.SetLength(0);
            file.Write(Encoding.UTF8.GetBytes(LockHolder.Now(ask.Command).Text));
            file.Flush();
            return new HeldLock(path, file);
        }
        catch
        {
            file.Dispose();
            throw;
        }
    }

    private static string Text(FileStream file)
    {
        byte[] bytes = new byte[MostText];
        int length = file.ReadAtLeast(bytes, MostText, throwOnEndOfStream: false);
        file.Seek(0, SeekOrigin.Begin);
        return Encoding.UTF8.GetString(bytes, 0, length);
    }
}
