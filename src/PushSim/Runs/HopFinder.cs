using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Finds wheels that hop in a push: they leave the floor again and again, each time for less than it takes to lose one's stand.</summary>
internal static class HopFinder
{
    // A wheel hops that leaves the floor so often [1] and is off it for this share of the time [1]: what a collision throws up comes down once or twice.
    private const int FewestHops = 3;
    private const double LeastShare = 0.02;

    /// <summary>How the wheels keep the floor since the first touch; null without one.</summary>
    /// <param name="history">The robot's history.</param>
    /// <param name="touch">When the robot first touched what it pushes [s]; NaN if never.</param>
    public static PushHops? Find(RunHistory history, double touch)
    {
        int last = history.Time.Length - 1;
        int from = double.IsNaN(touch) ? last : Math.Max(1, history.IndexAt(touch));
        if (from >= last)
        {
            return null;
        }

        double span = history.Time[last] - history.Time[from];
        int[] samples = [.. Enumerable.Range(from, last - from + 1)];
        int[][] lifts = [.. history.Trace.Wheels.Select(w => samples.Where(i => w.Load[i] <= 0.0 && w.Load[i - 1] > 0.0).ToArray())];
        var hops = new PushHops([.. history.Trace.Wheels.Select((w, k) => Air(w.Name, samples.Count(i => w.Load[i] <= 0.0) / (double)samples.Length, lifts[k].Length, span))]);
        if (!hops.Wheels.Any(w => w.Hops))
        {
            return hops;
        }

        int most = Enumerable.Range(0, lifts.Length).Where(k => hops.Wheels[k].Hops).MaxBy(k => hops.Wheels[k].Share);
        (int first, int end) = (lifts[most][0], lifts[most][^1]);
        return hops with
        {
            Wheel = hops.Wheels[most].Wheel,
            From = history.Time[first],
            To = history.Time[end],
            Frequency = SwingOf(history, history.Trace.Wheels[most].Load, first, end, (lifts[most].Length - 1) / (history.Time[end] - history.Time[first])),
        };
    }

    private static WheelAir Air(string name, double share, int lifts, double span) =>
        new(name, share, lifts, lifts >= FewestHops && share > LeastShare && share * span < MatchWatch.LongestHop * lifts);

    // The strongest line of the load, not below half of how often it leaves the floor: slower swings shift loads and lift nothing. Of a few hops their mean rate.
    private static double SwingOf(RunHistory history, Series load, int first, int end, double rate)
    {
        int n = ForceSpectrum.Length(end - first + 1);
        if (n == 0)
        {
            return rate;
        }

        double sampling = 1.0 / (history.Time[1] - history.Time[0]);
        double[] power = WindowedPower.Of(load.Values.Slice(first, n));
        int lowest = Math.Clamp((int)Math.Ceiling(0.5 * rate * n / sampling), 1, power.Length - 1);
        return Enumerable.Range(lowest, power.Length - lowest).MaxBy(k => power[k]) * sampling / n;
    }
}
