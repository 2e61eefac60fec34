using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Chatter in the settled part of a run: the strongest line, above 15 Hz, of the forces of those tyres whose force swings by more than a stated share of the load
/// they carry.</summary>
internal static class ChatterFinder
{
    /// <summary>Swing of a tyre's force, as a share of its mean load, above which it is chatter [1]. A quiet turn shows under 0.01.</summary>
    public const double Threshold = 0.05;

    /// <summary>The samples that are looked at, a power of two of them at the end of the settled part; none if there are too few.</summary>
    public static (int First, int Count) Window(RunHistory history)
    {
        int last = history.Time.Length - 1;
        int n = ForceSpectrum.Length(last - AnswerFinder.SettledFrom(history) + 1);
        return (last - n + 1, n);
    }

    /// <summary>Whether a tyre chatters.</summary>
    /// <param name="spectrum">Spectrum of its force over the window.</param>
    /// <param name="load">Its load.</param>
    /// <param name="window">The window.</param>
    public static bool IsLoud(ForceSpectrum spectrum, Series load, (int First, int Count) window) => spectrum.Swing > Threshold * MeanLoad(load, window);

    /// <summary>Frequency of a run's chatter [Hz]; null if it is quiet or has too few samples.</summary>
    public static double? Find(RunHistory history)
    {
        (int first, int n) = Window(history);
        if (n == 0)
        {
            return null;
        }

        double rate = 1.0 / (history.Time[1] - history.Time[0]);
        ForceSpectrum[] loud = [.. history.Trace.Wheels.Where(w => MaySwing(w, (first, n))).Select(w => (Wheel: w, Spectrum: ForceSpectrum.Of(w, first, n, rate)))
            .Where(w => IsLoud(w.Spectrum, w.Wheel.Load, (first, n))).Select(w => w.Spectrum)];
        int lowest = (int)Math.Ceiling(ForceSpectrum.LowestFrequency * n / rate);
        return loud.Length == 0 ? null : Enumerable.Range(lowest, (n / 2) + 1 - lowest).MaxBy(k => loud.Sum(s => s.Amplitudes[k] * s.Amplitudes[k])) * rate / n;
    }

    // no transform for quiet runs: a force that swings by less in all swings by less above any frequency; the window gives the middle at most 1/mean square of its weight
    private static bool MaySwing(WheelTrace wheel, (int First, int Count) window)
    {
        double least = Threshold * MeanLoad(wheel.Load, window);
        return Variance(wheel.LongitudinalForce) + Variance(wheel.LateralForce) > WindowedPower.MeanSquare * least * least;

        double Variance(Series force)
        {
            ReadOnlySpan<double> values = force.Values.Slice(window.First, window.Count);
            double sum = 0.0;
            double squares = 0.0;
            foreach (double v in values)
            {
                sum += v - values[0];
                squares += (v - values[0]) * (v - values[0]);
            }

            return Math.Max(0.0, (squares / values.Length) - (sum / values.Length * (sum / values.Length)));
        }
    }

    private static double MeanLoad(Series load, (int First, int Count) window) => load.Mean(window.First, window.First + window.Count - 1);
}
