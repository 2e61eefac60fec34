namespace PushSim.Analysis.Statistics;

/// <summary>Mean and spread of a sample.</summary>
public static class Sample
{
    /// <summary>Standard deviation of a normal distribution over its median absolute deviation [1].</summary>
    internal const double NormalPerDeviation = 1.4826;

    /// <summary>Mean.</summary>
    public static double Mean(IReadOnlyList<double> values)
    {
        double sum = 0.0;
        for (int i = 0; i < values.Count; i++)
        {
            sum += values[i];
        }

        return sum / values.Count;
    }

    /// <summary>Variance with n - 1.</summary>
    public static double Variance(IReadOnlyList<double> values)
    {
        double m = Mean(values);
        double sum = 0.0;
        for (int i = 0; i < values.Count; i++)
        {
            sum += (values[i] - m) * (values[i] - m);
        }

        return sum / (values.Count - 1);
    }

    /// <summary>Value below which a share of a sample lies, between neighbours by a straight line; sorts the span.</summary>
    /// <param name="values">Not empty; sorted afterwards.</param>
    /// <param name="share">0 to 1 [1].</param>
    public static double Quantile(Span<double> values, double share)
    {
        values.Sort();
        double at = share * (values.Length - 1);
        int i = Math.Min((int)at, values.Length - 2);
        return values.Length == 1 ? values[0] : values[i] + ((at - i) * (values[i + 1] - values[i]));
    }

    /// <summary>Standard deviation of a noise, out of the median of its successive differences: steps and slow changes hardly count.</summary>
    /// <param name="values">Series in order of time.</param>
    public static double NoiseOf(ReadOnlySpan<double> values)
    {
        if (values.Length < 3)
        {
            return 0.0;
        }

        double[] steps = new double[values.Length - 1];
        for (int i = 0; i < steps.Length; i++)
        {
            steps[i] = Math.Abs(values[i + 1] - values[i]);
        }

        return NormalPerDeviation * Quantile(steps, 0.5) / Math.Sqrt(2.0);
    }
}
