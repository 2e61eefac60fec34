using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Fit;

/// <summary>A measured pull on the clock of a simulated one, tare taken off and spikes left out.</summary>
public sealed record MeasuredOverlay
{
    /// <summary>Times on the run's clock [s].</summary>
    public required double[] Time { get; init; }

    /// <summary>Force [N].</summary>
    public required double[] Force { get; init; }

    /// <summary>Sliding force of the first measured pull [N]; null if it did not slide long enough.</summary>
    public double? Plateau { get; init; }

    /// <summary>Breakaway force of the first measured pull [N]; a lower bound where it has no interval.</summary>
    public required double Breakaway { get; init; }

    /// <summary>Lays the log that a run's scenario names over the run; null if it names none or the tether never pulled.</summary>
    public static MeasuredOverlay? Of(RunResult result)
    {
        if (result.Scenario.Measured is not MeasuredPull measured || result.Trace.Tether?.Force is not Series force)
        {
            return null;
        }

        FoundTrace found = PullFinder.Find(measured.Trace);
        if (found.Pulls.Count == 0)
        {
            return null;
        }

        FoundPull pull = found.Pulls[0];
        double level = pull.Plateau?.Value ?? pull.Breakaway.Value;
        double own = result.Answers.PullPlateau ?? force.Max();
        int mine = force.FindIndex(f => f >= 0.5 * own);
        int theirs = Array.FindIndex(measured.Trace.Force, pull.Start, f => f - pull.Tare >= 0.5 * level);
        if (mine < 0 || theirs < 0)
        {
            return null;
        }

        double shift = measured.Shift ?? (result.Time[mine] - measured.Trace.Time[theirs]);
        HashSet<int> spikes = [.. found.Spikes];
        int[] shown = [.. Enumerable.Range(0, measured.Trace.Time.Length).Where(i => !spikes.Contains(i) && measured.Trace.Time[i] + shift >= result.Time[0] && measured.Trace.Time[i] + shift <= result.Time[^1])];
        return new MeasuredOverlay
        {
            Time = [.. shown.Select(i => measured.Trace.Time[i] + shift)],
            Force = [.. shown.Select(i => measured.Trace.Force[i] - pull.Tare)],
            Plateau = pull.Plateau?.Value,
            Breakaway = pull.Breakaway.Value,
        };
    }
}
