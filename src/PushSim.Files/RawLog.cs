using System.Diagnostics;
using System.Globalization;
using System.Text;

namespace PushSim.Files;

/// <summary>Every line of a cell, on the disk before anything is made of it: a killed process loses none that it had read, a power cut those of a few seconds.</summary>
public sealed class RawLog : IDisposable
{
    private const double SyncInterval = 5.0;

    private readonly WatchedStream _file;
    private readonly StringBuilder _pending = new();
    private long _synced = Stopwatch.GetTimestamp();

    private RawLog(string path, WatchedStream file) => (Path, _file) = (path, file);

    /// <summary>Where it is.</summary>
    public string Path { get; }

    /// <summary>Begins one in a folder, under the time of its start. It is the user's: no command ever replaces it.</summary>
    /// <param name="folder">The folder.</param>
    /// <param name="start">The time.</param>
    public static RawLog Begin(string folder, DateTime start)
    {
        string stem = "bench-" + start.ToString("yyyyMMdd-HHmmss", CultureInfo.InvariantCulture);
        for (int n = 1; ; n++)
        {
            string path = System.IO.Path.Combine(folder, n == 1 ? stem + ".log" : FormattableString.Invariant($"{stem}-{n}.log"));
            if (Disk.Look(path) == FileKind.None)
            {
                return new RawLog(path, Disk.Create(path));
            }
        }
    }

    /// <summary>Takes a line.</summary>
    public void Add(string line) => _pending.Append(line).Append('\n');

    /// <summary>Hands what was taken to the system.</summary>
    public void Flush()
    {
        if (_pending.Length == 0)
        {
            return;
        }

        _file.Write(Encoding.UTF8.GetBytes(_pending.ToString()));
        _file.Flush();
        _pending.Clear();
        if (Stopwatch.GetElapsedTime(_synced).TotalSeconds > SyncInterval)
        {
            _file.Sync();
            _synced = Stopwatch.GetTimestamp();
        }
    }

    /// <inheritdoc/>
    public void Dispose()
    {
        Flush();
        _file.Dispose();
    }
}
