namespace PushSim.Plotting.Report;

/// <summary>Which samples of a history a replay shows: evenly spaced ones and the last, few enough for a small page.</summary>
/// <param name="Samples">Their indices in the history, rising [1].</param>
internal sealed record ReplayFrames(int[] Samples)
{
    // A three-second shove has a frame every 5 ms; a page must stay small.
    private const int Most = 601;

    /// <summary>Those of a history.</summary>
    /// <param name="length">Its samples [1].</param>
    public static ReplayFrames Of(int length)
    {
        int last = length - 1;
        int stride = Math.Max(1, (int)Math.Ceiling(last / (Most - 1.0)));
        List<int> samples = [];
        for (int i = 0; i < last; i += stride)
        {
            samples.Add(i);
        }

        samples.Add(last);
        return new ReplayFrames([.. samples]);
    }

    /// <summary>A series at the frames, in whole multiples of a unit.</summary>
    /// <param name="values">All samples.</param>
    /// <param name="perUnit">Multiples per unit of the series, negative to turn the sign.</param>
    /// <param name="shift">Added before rounding, in the series' unit.</param>
    public IEnumerable<long> Whole(IReadOnlyList<double> values, double perUnit, double shift = 0.0) =>
        Samples.Select(i => (long)Math.Round((values[i] + shift) * perUnit));
}
