using PushSim.Analysis.Statistics;
using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>Finds the pulls of a log, or why none can be found in it. All levels are shares of the log's own span, so that neither unit nor rate matters.</summary>
public static class PullFinder
{
    // Fewer readings are no log [1].
    private const int FewestReadings = 8;

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

        var meter = new PullMeter(trace, clean, isSpike, tare ?? low, high, noise, step, tare);
        List<FoundPull> pulls = meter.FindAll();
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
        double limit = low + (PullMeter.Off * (high - low));
        int n = FewestReadings / 2;
        bool beginsHigh = clean.Take(n).All(f => f > high - (PullMeter.Off * (high - low)));

        // what begins taut and goes on sliding ends at its lowest too
        return clean.Take(n).All(f => f < limit) || (clean.TakeLast(n).All(f => f < limit) && !beginsHigh);
    }

    // So looks a reversed cell that was not tared: slack is its greatest reading.
    private static bool BeginsAndEndsHigh(double[] clean, double low, double high)
    {
        double limit = high - (PullMeter.Off * (high - low));
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
}
