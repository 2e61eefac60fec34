namespace PushSim.Surroundings;

/// <summary>What a load cell shows: first-order filter, readings at its own rate, tare, noise, resolution.</summary>
internal static class LoadCell
{
    private static readonly ulong s_noise = Philox.NumberOf("load cell noise");

    /// <summary>The readings (s, N); none without a cell, a force or a stretch of time.</summary>
    /// <param name="cell">The cell, if any.</param>
    /// <param name="time">Sample times, evenly spaced from 0 [s].</param>
    /// <param name="force">True force at each of them [N]; empty without a tether.</param>
    public static IReadOnlyList<(double Time, double Force)> Read(LoadCellSettings? cell, ReadOnlySpan<double> time, ReadOnlySpan<double> force)
    {
        if (cell is null || force.IsEmpty || time.Length < 2)
        {
            return [];
        }

        double[] filtered = Filter(time, force, cell.FilterTime);
        List<(double Time, double Force)> readings = [];
        for (int n = 0; n / cell.Rate <= time[^1]; n++)
        {
            double t = n / cell.Rate;
            double value = Interpolate(time, filtered, t) + cell.Tare;
            value += cell.Noise * NormalQuantile.Of(Philox.Uniform((ulong)cell.Seed, n, s_noise));
            readings.Add((t, cell.Resolution > 0.0 ? cell.Resolution * Math.Round(value / cell.Resolution) : value));
        }

        return readings;
    }

    // exact response of a first-order filter to straight lines between samples
    internal static double[] Filter(ReadOnlySpan<double> time, ReadOnlySpan<double> values, double tau)
    {
        if (tau <= 0.0)
        {
            return values.ToArray();
        }

        double[] filtered = new double[values.Length];
        filtered[0] = values[0];
        for (int i = 1; i < values.Length; i++)
        {
            double h = time[i] - time[i - 1];
            double decay = Math.Exp(-h / tau);
            double slope = (values[i] - values[i - 1]) / h;
            filtered[i] = values[i] - (slope * tau) + ((filtered[i - 1] - values[i - 1] + (slope * tau)) * decay);
        }

        return filtered;
    }

    private static double Interpolate(ReadOnlySpan<double> time, double[] values, double t)
    {
        double at = t * (time.Length - 1) / time[^1];
        int i = Math.Min((int)at, time.Length - 2);
        return values[i] + ((at - i) * (values[i + 1] - values[i]));
    }
}
