namespace PushSim.Analysis.Statistics;

/// <summary>Grubbs' test for one outlier in a normal sample: G = max |x - m| / s against
/// <code>
/// Gc = (n - 1)/sqrt(n) sqrt(t^2 / (n - 2 + t^2))        t at level/(2 n) in each tail, n - 2 degrees of freedom
/// </code></summary>
/// <param name="Index">Place of the value farthest from the mean.</param>
/// <param name="G">Its distance in standard deviations [1].</param>
/// <param name="Critical">Distance above which it is an outlier [1].</param>
public readonly record struct GrubbsTest(int Index, double G, double Critical)
{
    /// <summary>Whether it is one.</summary>
    public bool IsOutlier => G > Critical;

    /// <summary>Tests a sample; null for fewer than three values or none that differ.</summary>
    /// <param name="values">The sample [any unit].</param>
    /// <param name="level">Two-sided level [1].</param>
    public static GrubbsTest? Of(IReadOnlyList<double> values, double level = 0.05)
    {
        if (values.Count < 3 || values.Max() <= values.Min())
        {
            return null;
        }

        double mean = Sample.Mean(values);
        int worst = Enumerable.Range(0, values.Count).MaxBy(i => Math.Abs(values[i] - mean));
        return new GrubbsTest(worst, Math.Abs(values[worst] - mean) / Math.Sqrt(Sample.Variance(values)), CriticalOf(values.Count, level));
    }

    /// <summary>The critical distance, two-sided [1].</summary>
    /// <param name="count">Values, three or more [1].</param>
    /// <param name="level">Two-sided level; twice a one-sided one [1].</param>
    public static double CriticalOf(int count, double level)
    {
        double t = StudentT.Factor(1.0 - (level / count), count - 2);
        return (count - 1) / Math.Sqrt(count) * Math.Sqrt(t * t / (count - 2 + (t * t)));
    }
}
