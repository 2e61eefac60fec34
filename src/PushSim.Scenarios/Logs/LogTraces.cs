namespace PushSim.Scenarios.Logs;

/// <summary>Sorts the samples of a log over time into histories: another tyre or pull, or a time that falls back, begins a new one.</summary>
internal sealed class LogTraces(LogOptions options, LogProblems problems)
{
    // A history that starts anew before it has this many samples is not several pulls but a wrong column of time [1].
    private const int ShortestTrace = 8;

    // A person's pull lasts longer than this, and a cell reads more often than this [s].
    private const double ShortestPull = 0.1;
    private const double LongestInterval = 1.0;

    private readonly List<TraceStore> _stores = [];
    private string? _lastTyre;
    private string? _lastPull;

    /// <summary>Adds a sample.</summary>
    public void Add(LogSample sample, IReadOnlyList<LogColumn> columns) => Store(sample, columns).Add(sample.Time, sample.Values, sample.Line);

    /// <summary>The histories.</summary>
    public List<LogTrace> Finish() => [.. _stores.Where(s => s.Count > 0).Select(s => s.Finish())];

    /// <summary>Times that no pull on a load cell has, in words; null for others.</summary>
    public static string? OddTime(LogTrace trace)
    {
        double[] time = trace.Trace.Time;
        double length = time[^1] - time[0];
        double apart = length / Math.Max(1, (time.Length - 1) * trace.PerSample);
        return time.Length < ShortestTrace ? null
            : length < ShortestPull ? FormattableString.Invariant($"the log lasts {1e3 * length:G3} ms in all: is the unit of its time right?")
            : apart >= LongestInterval ? FormattableString.Invariant($"the readings are {apart:G3} s apart: is the unit of their time right?")
            : null;
    }

    private TraceStore Store(LogSample sample, IReadOnlyList<LogColumn> columns)
    {
        TraceStore? last = _stores.Count > 0 ? _stores[^1] : null;
        bool fellBack = last is not null && sample.Time < last.LastTime;
        bool isSame = last is not null && sample.Tyre == _lastTyre && sample.Pull == _lastPull;
        if (isSame && !fellBack)
        {
            return last!;
        }

        if (isSame && last!.Count * last.PerSample < ShortestTrace)
        {
            problems.Error(sample.Line, 1, "time runs backwards", "the rows must stand in the order of time; is this the right column?");
        }

        (_lastTyre, _lastPull) = (sample.Tyre, sample.Pull);
        _stores.Add(new TraceStore(sample.Tyre, columns, options.MostSamples));
        return _stores[^1];
    }
}
