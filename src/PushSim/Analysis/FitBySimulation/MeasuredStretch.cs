using PushSim.Analysis.Fit;
using PushSim.Surroundings;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>One measured pull, from the slack before it to the end of its sliding, with the tare taken off. Long logs are averaged to a few hundred samples.</summary>
internal sealed class MeasuredStretch
{
    // More samples than this tell no more, since neighbours are alike [1].
    private const int MostSamples = 400;

    // Slack taken in before the pull, which ties down its zero: at least that many samples, at least that share of the pull [1].
    private const int SlackSamples = 10;
    private const double SlackShare = 0.1;

    private MeasuredStretch(double[] time, double[] force, double half, double peak) => (Time, Force, HalfTime, PeakTime) = (time, force, half, peak);

    /// <summary>Times on the log's clock [s].</summary>
    public double[] Time { get; }

    /// <summary>Force, tare taken off [N].</summary>
    public double[] Force { get; }

    /// <summary>When the force first reaches half of what it slides at, on the log's clock [s].</summary>
    public double HalfTime { get; }

    /// <summary>When it lets go, on the log's clock [s].</summary>
    public double PeakTime { get; }

    /// <summary>The pulls of a log that slide long enough to be followed.</summary>
    public static IEnumerable<MeasuredStretch> Of(FoundTrace found)
    {
        HashSet<int> spikes = [.. found.Spikes];
        int before = 0;
        foreach (FoundPull pull in found.Pulls)
        {
            if (pull.Plateau is { } plateau)
            {
                int slack = Math.Max(SlackSamples, (int)(SlackShare * (pull.PlateauTo - pull.Start)));
                int from = Math.Max(before, pull.Start - slack);
                int[] kept = [.. Enumerable.Range(from, pull.PlateauTo - from).Where(i => !spikes.Contains(i))];
                yield return Averaged(found.Trace, kept, pull.Tare, 0.5 * plateau.Value, found.Trace.Time[pull.Peak]);
            }

            before = pull.End;
        }
    }

    /// <summary>The stretch up to a time on its own clock [s].</summary>
    public MeasuredStretch Until(double end)
    {
        int n = Array.FindIndex(Time, t => t > end);
        return n < 0 ? this : new MeasuredStretch(Time[..n], Force[..n], HalfTime, PeakTime);
    }

    /// <summary>The stretch up to a share of its sliding.</summary>
    /// <param name="share">Share of the time after it lets go [1].</param>
    /// <param name="least">What is kept of that time at least [s].</param>
    public MeasuredStretch UpTo(double share, double least) => Until(PeakTime + Math.Max(least, share * (Time[^1] - PeakTime)));

    private static MeasuredStretch Averaged(ForceTrace trace, int[] kept, double tare, double half, double peak)
    {
        int each = (kept.Length + MostSamples - 1) / MostSamples;
        int[][] groups = [.. kept.Chunk(each)];
        double[] time = [.. groups.Select(g => g.Average(i => trace.Time[i]))];
        double[] force = [.. groups.Select(g => g.Average(i => trace.Force[i]) - tare)];
        int at = Array.FindIndex(force, f => f >= half);
        return new MeasuredStretch(time, force, time[Math.Max(0, at)], peak);
    }
}
