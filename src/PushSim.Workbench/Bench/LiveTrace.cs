using PushSim.Words.Fits;
using static PushSim.Scenarios.Bench.BenchEvent;

namespace PushSim.Workbench.Bench;

/// <summary>The last seconds of a load cell as a screen shows them: of each tenth of a second the least and the greatest reading, so that no peak is lost. Memory does not grow.</summary>
internal sealed class LiveTrace
{
    /// <summary>Time that is shown [s].</summary>
    public const double Shown = 30.0;

    private const double Step = 0.1;

    private readonly List<(double Time, double? Force)> _points = [];
    private readonly List<TracePull> _pulls = [];
    private readonly List<TraceGap> _gaps = [];
    private (double Time, double Force) _least;
    private (double Time, double Force) _most;
    private long _place = long.MinValue;
    private double _last = double.NegativeInfinity;

    /// <summary>Takes a reading.</summary>
    public void Add(Sample sample)
    {
        long place = (long)Math.Floor(sample.Time / Step);
        if (place != _place)
        {
            Close();
            (_place, _least, _most) = (place, (sample.Time, sample.Force), (sample.Time, sample.Force));
        }
        else if (sample.Force < _least.Force)
        {
            _least = (sample.Time, sample.Force);
        }
        else if (sample.Force > _most.Force)
        {
            _most = (sample.Time, sample.Force);
        }

        _last = Math.Max(_last, sample.Time);
    }

    /// <summary>Takes a pull.</summary>
    public void Add(PullEnded ended)
    {
        double[] time = ended.Pull.Trace.Time;
        (int from, int to) = ended.Pull.Pull is { } found ? (found.Start, found.End) : (0, time.Length - 1);
        if (time.Length > 0)
        {
            _pulls.Add(new TracePull(ended.Number, time[from], time[Math.Min(to, time.Length - 1)], BenchWords.Of(ended.Number, ended.Pull), ended.Pull.Flaw == Analysis.Fit.PullFlaw.None));
        }
    }

    /// <summary>Takes a gap: the curve breaks there.</summary>
    public void Add(Gap gap)
    {
        Close();
        if (_points.Count > 0)
        {
            _points.Add((_points[^1].Time, null));
            _gaps.Add(new TraceGap(gap.From, gap.Time));
        }
    }

    /// <summary>What is shown now, times from its left end.</summary>
    public (double[] Time, double?[] Force, IReadOnlyList<TracePull> Pulls, IReadOnlyList<TraceGap> Gaps) Take()
    {
        _points.RemoveAll(p => p.Time < _last - Shown);
        _pulls.RemoveAll(p => p.To < _last - Shown);
        _gaps.RemoveAll(g => g.To < _last - Shown);
        (double Time, double? Force)[] all = [.. _points, .. Open()];
        double origin = all.Length == 0 ? 0.0 : all[0].Time;
        double Since(double time) => Math.Round(Math.Max(0.0, time - origin), 3);
        return (
            [.. all.Select(p => Since(p.Time))],
            [.. all.Select(p => p.Force is double f ? Math.Round(f, 4) : (double?)null)],
            [.. _pulls.Select(p => p with { From = Since(p.From), To = Since(p.To) })],
            [.. _gaps.Select(g => new TraceGap(Since(g.From), Since(g.To)))]);
    }

    private void Close()
    {
        _points.AddRange(Open());
        _place = long.MinValue;
    }

    private IEnumerable<(double Time, double? Force)> Open()
    {
        if (_place == long.MinValue)
        {
            return [];
        }

        return _least.Time == _most.Time ? [_least] : _least.Time < _most.Time ? [_least, _most] : [_most, _least];
    }
}
