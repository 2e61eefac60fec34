namespace PushSim.Numerics;

/// <summary>The only run of a feed: it is handed out once.</summary>
internal sealed class OneRun
{
    private double[] _start = [];
    private LaneRun? _run;

    /// <summary>Makes a run ready.</summary>
    /// <param name="run">The run.</param>
    /// <param name="start">Its start, copied; each component in its own unit.</param>
    public void Ready(LaneRun run, ReadOnlySpan<double> start)
    {
        if (_start.Length != start.Length)
        {
            _start = new double[start.Length];
        }

        start.CopyTo(_start);
        _run = run;
    }

    /// <summary>Hands it out; see <see cref="ILaneFeed{T}.TryBegin"/>.</summary>
    public bool TryTake(Span<double> y, out LaneRun run)
    {
        run = _run.GetValueOrDefault();
        if (_run is null)
        {
            return false;
        }

        _start.CopyTo(y);
        _run = null;
        return true;
    }
}
