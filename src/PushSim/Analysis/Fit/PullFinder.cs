using PushSim.Analysis.Statistics;
using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>
/// Finds the pulls of a log: slack, ramp, breakaway peak, sliding plateau, release. All levels are shares of the log's own span, so
/// that neither unit nor rate matters.
/// </summary>
public static class PullFinder
{
    // Fewer readings are no log [1].
    private const int FewestReadings = 8;

    // Share of the span at which a pull begins, and below which it has ended [1].
    private const double On = 0.3;
    private const double Off = 0.2;

    // Between two pulls the force goes below this share [1].
    private const double Slackened = 0.08;

    // and for longer than this: robots bounce on a chain several times a second [s].
    private const double LongestDip = 0.35;

    // A slack part keeps within this share of the span of its level [1].
    private const double SlackBand = 0.03;

    // A span this small against the readings may be a log without slack [1].
    private const double SmallSpan = 0.4;

    // A span below this many noise widths is no pull [1].
    private const double LeastSpan = 12.0;

    // Noise that rounding hides, as a share of the step [1].
    private const double LeastStepShare = 0.3;

    // A stretch of so many readings that is so many times quieter than the whole log is slack, and the rest swings; in fewer, noise may happen to be as quiet.
    // A log needs twice as many to be sure to hold such a stretch if half of it is slack [1].
    private const int QuietReadings = 32;
    private const double MuchQuieter = 4.0;

    // Equal readings in a row at the very top that are a stop, if others keep changing [1].
    private const int StuckReadings = 6;

    /// <summary>Finds the pulls.</summary>
    /// <param name="trace">The log.</param>
    /// <param name="tare">Tare, if it is known [N]; null: taken from the slack parts.</param>
    public static FoundTrace Find(ForceTrace trace, double? tare = null)
    {
        double[] force = trace.Force;
        if (force.Length < FewestReadings)
        {
            return Wrong(trace, TraceFault.TooFew, Math.Max(0, force.Length - 1));
        }

        if (force.All(f => f == 0.0))
        {
            return Wrong(trace, TraceFault.AllZero, 0);
        }

        double[] clean = SpikeFilter.Clean(force, out bool[] isSpike);
        double step = Quantisation.StepOf(clean);
        double noise = Sample.NoiseOf(clean);
        double low = Sample.Quantile([.. clean], 0.02);
        double high = clean.Max();
        double least = clean.Min();
        double start = Sample.Quantile([.. clean.Take(FewestReadings)], 0.5);
        if (high - least < LeastSpan * Math.Max(noise, LeastStepShare * step) && tare is null)
        {
            bool isCoarse = high > least && high - least >= LeastSpan * noise;
            return Swings(clean, noise, step, out int from) ? Wrong(trace, TraceFault.Swings, from)
                : Wrong(trace, isCoarse ? TraceFault.TooCoarse : high > least && force.Length < 2 * QuietReadings ? TraceFault.TooFewToTell : TraceFault.NoPull, 0);
        }

        if (tare is null && high - low < SmallSpan * Math.Abs(high) && !BeginsOrEndsSlack(clean, low, high) && !BeginsAndEndsHigh(clean, low, high))
        {
            return Wrong(trace, TraceFault.NoSlack, 0);
        }

        double zero = tare ?? start;
        if (zero - least > 1.5 * (high - zero))
        {
            return Wrong(trace, TraceFault.Reversed, Array.IndexOf(clean, least));
        }

        if (Stuck(clean) is int stuck)
        {
            return Wrong(trace, TraceFault.Saturated, stuck);
        }

        var work = new Work(trace, clean, isSpike, tare ?? low, high, noise, step, tare);
        List<FoundPull> pulls = work.FindAll();
        return new FoundTrace
        {
            Trace = trace,
            Pulls = pulls,
            Problem = pulls.Count == 0 ? new TraceProblem(TraceFault.NoPull, 0, force[0]) : null,
            Spikes = [.. Enumerable.Range(0, isSpike.Length).Where(i => isSpike[i])],
            Noise = noise,
            Step = step,
        };
    }

    private static FoundTrace Wrong(ForceTrace trace, TraceFault fault, int sample) => new()
    {
        Trace = trace, Problem = new TraceProblem(fault, sample, sample < trace.Force.Length ? trace.Force[sample] : 0.0),
    };

    // What passes for noise is the pull itself if some stretch is far quieter; from the first reading that leaves the level of that stretch.
    private static bool Swings(double[] clean, double noise, double step, out int from)
    {
        from = 0;
        double quiet = double.PositiveInfinity;
        int at = 0;
        for (int i = 0; i + QuietReadings <= clean.Length; i += QuietReadings / 2)
        {
            double here = Math.Max(Sample.NoiseOf(clean.AsSpan(i, QuietReadings)), LeastStepShare * step);
            (quiet, at) = here < quiet ? (here, i) : (quiet, at);
        }

        if (!(MuchQuieter * quiet < noise))
        {
            return false;
        }

        double level = Sample.Quantile(clean.AsSpan(at, QuietReadings).ToArray(), 0.5);
        from = Math.Max(0, Array.FindIndex(clean, f => Math.Abs(f - level) > LeastSpan * quiet));
        return true;
    }

    private static bool BeginsOrEndsSlack(double[] clean, double low, double high)
    {
        double limit = low + (Off * (high - low));
        int n = FewestReadings / 2;
        bool beginsHigh = clean.Take(n).All(f => f > high - (Off * (high - low)));

        // what begins taut and goes on sliding ends at its lowest too
        return clean.Take(n).All(f => f < limit) || (clean.TakeLast(n).All(f => f < limit) && !beginsHigh);
    }

    // So looks a reversed cell that was not tared: slack is its greatest reading.
    private static bool BeginsAndEndsHigh(double[] clean, double low, double high)
    {
        double limit = high - (Off * (high - low));
        int n = FewestReadings / 2;
        return clean.Take(n).All(f => f > limit) && clean.TakeLast(n).All(f => f > limit);
    }

    // The first of many equal readings at the greatest value, while readings elsewhere hardly repeat.
    private static int? Stuck(double[] clean)
    {
        double top = clean.Max();
        int longest = 0;
        int run = 0;
        int at = 0;
        int equal = 0;
        int others = 0;
        for (int i = 1; i < clean.Length; i++)
        {
            bool isTop = clean[i] == top && clean[i - 1] == top;
            run = isTop ? run + 1 : 0;
            (longest, at) = run > longest ? (run, i - run) : (longest, at);
            others += isTop ? 0 : 1;
            equal += !isTop && clean[i] == clean[i - 1] ? 1 : 0;
        }

        return longest + 1 >= StuckReadings && equal < 0.3 * others ? at : null;
    }

    private sealed class Work(ForceTrace trace, double[] clean, bool[] isSpike, double low, double high, double noise, double step, double? known)
    {
        // Plateau: from this share of the time between arrival and release on, less this share before the release [1].
        private const double Settled = 0.4;
        private const double Letting = 0.05;
        private const int FewestPlateau = 5;

        // A peak stands out if it is this many spreads of the plateau above it [1].
        private const double StandsOut = 5.0;

        private readonly double[] _time = trace.Time;
        private readonly double _span = high - low;

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
}
