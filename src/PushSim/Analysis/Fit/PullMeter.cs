using PushSim.Analysis.Statistics;
using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>Cuts a sound log into pulls and measures each: slack, ramp, breakaway peak, sliding plateau, release.</summary>
/// <param name="trace">The log.</param>
/// <param name="clean">Its forces without spikes [N].</param>
/// <param name="isSpike">Which readings were spikes.</param>
/// <param name="low">Level of the slack parts, roughly [N].</param>
/// <param name="high">Greatest force [N].</param>
/// <param name="noise">Standard deviation of the readings' noise [N].</param>
/// <param name="step">Step of the readings, 0 if none shows [N].</param>
/// <param name="known">Tare, if it is known [N]; null: taken from the slack parts.</param>
internal sealed class PullMeter(ForceTrace trace, double[] clean, bool[] isSpike, double low, double high, double noise, double step, double? known)
{
    /// <summary>Share of the span below which a pull has ended [1].</summary>
    public const double Off = 0.2;

    // Share of the span at which a pull begins [1].
    private const double On = 0.3;

    // Between two pulls the force goes below this share [1].
    private const double Slackened = 0.08;

    // and for longer than this: robots bounce on a chain several times a second [s].
    private const double LongestDip = 0.35;

    // A slack part keeps within this share of the span of its level [1].
    private const double SlackBand = 0.03;

    // Plateau: from this share of the time between arrival and release on, less this share before the release [1].
    private const double Settled = 0.4;
    private const double Letting = 0.05;
    private const int FewestPlateau = 5;

    // A peak stands out if it is this many spreads of the plateau above it [1].
    private const double StandsOut = 5.0;

    private readonly double[] _time = trace.Time;
    private readonly double _span = high - low;

    /// <summary>The pulls in order of time.</summary>
    public List<FoundPull> FindAll()
    {
        List<(int From, int To)> regions = Regions();
        List<FoundPull> pulls = [];
        for (int r = 0; r < regions.Count; r++)
        {
            int from = r == 0 ? 0 : regions[r - 1].To;
            int to = r == regions.Count - 1 ? clean.Length : regions[r + 1].From;
            if (Tare(from, regions[r], to) is TareLine tare && Measure(regions[r], tare) is FoundPull pull)
            {
                pulls.Add(pull);
            }
        }

        return pulls;
    }

    // Stretches above the threshold, with some give so that a ripple does not cut one in two.
    private List<(int From, int To)> Regions()
    {
        List<(int From, int To)> regions = [];
        int from = -1;
        for (int i = 0; i <= clean.Length; i++)
        {
            double s = i < clean.Length ? Median3(i) : double.NegativeInfinity;
            if (from < 0 && s > low + (On * _span))
            {
                from = i;
            }
            else if (from >= 0 && s < low + (Off * _span))
            {
                // a chattering pull dips deep, but neither for long nor to the slack level (which may have drifted up since)
                if (regions.Count > 0 && _time[from] - _time[regions[^1].To] < LongestDip && clean.AsSpan(regions[^1].To, from - regions[^1].To).IndexOfAnyInRange(double.NegativeInfinity, low + (Slackened * _span)) < 0)
                {
                    regions[^1] = (regions[^1].From, i);
                }
                else if (i - from >= 3)
                {
                    regions.Add((from, i));
                }

                from = -1;
            }
        }

        return regions;
    }

    private double Median3(int i)
    {
        double a = clean[Math.Max(0, i - 1)];
        double b = clean[i];
        double c = clean[Math.Min(clean.Length - 1, i + 1)];
        return Math.Max(Math.Min(a, b), Math.Min(Math.Max(a, b), c));
    }

    private TareLine? Tare(int from, (int From, int To) region, int to)
    {
        if (known is double level)
        {
            return TareLine.Known(level);
        }

        (int a, int b) = Slack(from, region.From, isBefore: true);
        (int c, int d) = Slack(region.To, to, isBefore: false);
        return b - a + d - c < 3 ? null : TareLine.Through(Pick(_time, a, b), Pick(clean, a, b), Pick(_time, c, d), Pick(clean, c, d), step);
    }

    private List<double> Pick(double[] values, int from, int to)
    {
        List<double> picked = [];
        for (int i = from; i < to; i++)
        {
            if (!isSpike[i])
            {
                picked.Add(values[i]);
            }
        }

        return picked;
    }

    // The slack part between two pulls: within a band of its level, less a margin where the pulls' feet would lift it.
    private (int From, int To) Slack(int from, int to, bool isBefore)
    {
        if (to - from < 3)
        {
            return (from, from);
        }

        double level = Sample.Quantile(clean.AsSpan(from, to - from).ToArray(), 0.3);
        double band = Math.Max(SlackBand * _span, Math.Max(4.0 * noise, step));
        int a = from;
        int b = to;
        while (a < to && Math.Abs(Median3(a) - level) > band)
        {
            a++;
        }

        while (b > a && Math.Abs(Median3(b - 1) - level) > band)
        {
            b--;
        }

        // a foot that rises by the band takes about as long as the part from the band to the threshold, scaled
        int rise = to - b;
        int fall = a - from;
        a += from == 0 && isBefore ? 0 : Math.Min((b - a) / 3, 1 + (fall / 2));
        b -= to == clean.Length ? 0 : Math.Min((b - a) / 3, 1 + (rise / 2));
        return (a, Math.Max(a, b));
    }

    private FoundPull? Measure((int From, int To) region, TareLine tare)
    {
        double At(int i) => clean[i] - tare.At(_time[i]);
        double[] upper = [.. Enumerable.Range((region.From + region.To) / 2, region.To - ((region.From + region.To) / 2)).Select(At)];
        double level = Sample.Quantile(upper, 0.5);
        if (level <= 0.0)
        {
            return null;
        }

        int end = region.To;
        while (end > region.From && At(end - 1) < 0.9 * level)
        {
            end--;
        }

        int start = region.From;
        while (start > 0 && At(start - 1) > Math.Max(0.02 * level, 3.0 * noise) && At(start - 1) < At(start) + (3.0 * noise))
        {
            start--;
        }

        int arrival = start;
        while (arrival < end - 1 && At(arrival) < level)
        {
            arrival++;
        }

        double duration = _time[Math.Max(arrival, end - 1)] - _time[arrival];
        int from = IndexAt(_time[arrival] + (Settled * duration), arrival, end);
        int to = Math.Max(from, IndexAt(_time[arrival] + ((1.0 - Letting) * duration), arrival, end) - 1);
        (Interval? plateau, double effective, double spread) = Plateau(from, to, tare);
        double height = plateau?.Value ?? level;
        int peak = PeakOf(arrival, plateau is null ? end : from, At, height, Math.Max(spread, noise), out bool standsOut);
        int foot = peak;
        while (foot > 0 && At(foot - 1) > 0.1 * At(peak) && _time[foot - 1] < _time[peak])
        {
            foot--;
        }

        var pull = new FoundPull
        {
            Start = start, Peak = peak, PlateauFrom = from, PlateauTo = plateau is null ? from : to, End = end, RampSamples = peak - foot + 1,
            Plateau = plateau, Breakaway = Breakaway.Bound(At(peak)), Quality = BreakawayQuality.NoPeak, Tare = tare.At(_time[from]), SeesDrift = tare.SeesDrift, EffectiveReadings = effective,
            HighestReading = Enumerable.Range(start, Math.Max(0, end - start)).Append(peak).Max(At),
        };
        return standsOut ? Breakaway.Measure(pull, _time, clean, foot, tare, noise, step) : pull with { Breakaway = Breakaway.Bound(plateau?.Value ?? At(peak)) };
    }

    private int IndexAt(double time, int from, int to)
    {
        int i = from;
        while (i < to - 1 && _time[i] < time)
        {
            i++;
        }

        return i;
    }

    // The first peak from which the force has fallen half-way to the plateau.
    private static int PeakOf(int arrival, int to, Func<int, double> at, double height, double spread, out bool standsOut)
    {
        int peak = arrival;
        standsOut = false;
        for (int i = arrival; i < to; i++)
        {
            peak = at(i) > at(peak) ? i : peak;
            double above = at(peak) - height;
            if (above > StandsOut * spread && above > 0.01 * height && at(i) < height + (0.5 * above))
            {
                standsOut = true;
                return peak;
            }
        }

        return arrival;
    }

    private (Interval? Force, double Effective, double Spread) Plateau(int from, int to, TareLine tare)
    {
        List<double> y = [];
        for (int i = from; i < to; i++)
        {
            if (!isSpike[i])
            {
                y.Add(clean[i] - tare.At(_time[i]));
            }
        }

        if (y.Count < FewestPlateau)
        {
            return (null, 0.0, noise);
        }

        double mean = Sample.Mean(y);
        double variance = Sample.Variance(y);
        double effective = Math.Max(2.0, Autocorrelation.EffectiveCount(y));
        double middle = 0.5 * (_time[from] + _time[to - 1]);
        (double tareNoise, double tareSteps) = tare.VarianceAt(middle);
        double steps = tareSteps + Quantisation.VarianceOfMean(step, Math.Sqrt(variance));
        double own = variance / effective;
        double freedom = WelchTest.Freedoms([(own, effective - 1.0), (tareNoise, tare.Freedom), (steps, double.PositiveInfinity)]);
        double half = StudentT.Factor(0.95, freedom) * Math.Sqrt(own + tareNoise + steps);
        return (new Interval(mean, mean - half, mean + half), effective, Math.Sqrt(variance));
    }
}
