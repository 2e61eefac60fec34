using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>Finds lone readings that have nothing to do with their neighbours (Hampel's rule: far from the median of a window, in
/// units of the window's median deviation; from memory). A breakaway peak is no spike: its ramp lies in the window.</summary>
internal static class SpikeFilter
{
    // Readings to each side; a glitch of up to three in a row is outvoted [1].
    private const int Side = 3;

    // Standard deviations beyond which a reading is a spike; the window's own spread and the whole log's both count [1].
    private const double Far = 8.0;

    /// <summary>The readings with spikes replaced by the median about them.</summary>
    /// <param name="force">Readings [N].</param>
    /// <param name="isSpike">Which were replaced.</param>
    public static double[] Clean(double[] force, out bool[] isSpike)
    {
        double[] clean = [.. force];
        isSpike = new bool[force.Length];
        double floor = Far * Math.Max(Sample.NoiseOf(force), Quantisation.StepOf(force));
        double[] window = new double[(2 * Side) + 1];
        double[] deviation = new double[window.Length];
        for (int i = 0; i < force.Length && force.Length > window.Length; i++)
        {
            int first = Math.Clamp(i - Side, 0, force.Length - window.Length);

            // most readings lie close to both neighbours: no need to sort for them
            if (Math.Abs(force[i] - force[Math.Max(0, i - 1)]) <= floor && Math.Abs(force[i] - force[Math.Min(force.Length - 1, i + 1)]) <= floor)
            {
                continue;
            }

            Array.Copy(force, first, window, 0, window.Length);
            double median = Sample.Quantile(window, 0.5);
            for (int k = 0; k < window.Length; k++)
            {
                deviation[k] = Math.Abs(window[k] - median);
            }

            double spread = Sample.NormalPerDeviation * Sample.Quantile(deviation, 0.5);
            if (Math.Abs(force[i] - median) > Math.Max(floor, Far * spread))
            {
                (clean[i], isSpike[i]) = (median, true);
            }
        }

        return clean;
    }
}
