using PushSim.Surroundings;

namespace PushSim.Scenarios.Logs;

/// <summary>
/// Collects a history of any length in bounded memory: when it is full, neighbours are averaged in pairs, and so are all readings
/// that follow. An average of readings is an honest reading at a lower rate.
/// </summary>
internal sealed class TraceStore
{
    private readonly int _most;
    private readonly List<double>?[] _series = new List<double>?[Roles.Length];
    private readonly List<double> _time = [];
    private readonly List<int> _lines = [];
    private readonly double[] _sums = new double[Roles.Length];
    private double _timeSum;
    private int _pending;
    private int _pendingLine;

    private static readonly LogRole[] Roles = [LogRole.Force, LogRole.SurfaceSpeed, LogRole.TurnRate, LogRole.Current, LogRole.Voltage];

    public TraceStore(string? tyre, IReadOnlyList<LogColumn> columns, int most)
    {
        (Tyre, _most) = (tyre, most - (most % 2));
        for (int k = 0; k < Roles.Length; k++)
        {
            _series[k] = columns.Any(c => c.Role == Roles[k]) ? [] : null;
        }
    }

    public string? Tyre { get; }

    /// <summary>Rows averaged into one sample [1].</summary>
    public int PerSample { get; private set; } = 1;

    /// <summary>Samples kept [1].</summary>
    public int Count => _time.Count;

    /// <summary>Time of the last row [s].</summary>
    public double LastTime { get; private set; } = double.NegativeInfinity;

    /// <summary>Place of a role among the values of <see cref="Add"/>; -1 if it is not kept.</summary>
    public static int Slot(LogRole role) => Array.IndexOf(Roles, role);

    /// <summary>Values of one row that <see cref="Add"/> takes.</summary>
    public static int Slots => Roles.Length;

    public void Add(double time, ReadOnlySpan<double> values, int line)
    {
        LastTime = time;
        _pendingLine = _pending == 0 ? line : _pendingLine;
        _timeSum += time;
        for (int k = 0; k < _sums.Length; k++)
        {
            _sums[k] += values[k];
        }

        if (++_pending < PerSample)
        {
            return;
        }

        double share = 1.0 / _pending;
        _time.Add(_timeSum * share);
        _lines.Add(_pendingLine);
        for (int k = 0; k < _sums.Length; k++)
        {
            _series[k]?.Add(_sums[k] * share);
            _sums[k] = 0.0;
        }

        (_timeSum, _pending) = (0.0, 0);
        if (_time.Count == _most)
        {
            Halve();
        }
    }

    public LogTrace Finish() => new(
        Tyre,
        new ForceTrace
        {
            Time = [.. _time],
            Force = [.. _series[0]!],
            SurfaceSpeed = _series[1]?.ToArray(),
            TurnRate = _series[2]?.ToArray(),
            Current = _series[3]?.ToArray(),
            Voltage = _series[4]?.ToArray(),
        },
        [.. _lines],
        PerSample);

    private void Halve()
    {
        int half = _time.Count / 2;
        PerSample *= 2;
        foreach (List<double> values in _series.OfType<List<double>>().Append(_time))
        {
            for (int i = 0; i < half; i++)
            {
                values[i] = 0.5 * (values[2 * i] + values[(2 * i) + 1]);
            }

            values.RemoveRange(half, values.Count - half);
        }

        for (int i = 0; i < half; i++)
        {
            _lines[i] = _lines[2 * i];
        }

        _lines.RemoveRange(half, _lines.Count - half);
    }
}
