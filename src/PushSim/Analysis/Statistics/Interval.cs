namespace PushSim.Analysis.Statistics;

/// <summary>A value with a confidence interval.</summary>
/// <param name="Value">Middle, in the unit of the data [unit of the data].</param>
/// <param name="Low">Lower end [unit of the data].</param>
/// <param name="High">Upper end [unit of the data].</param>
public readonly record struct Interval(double Value, double Low, double High)
{
    /// <summary>The interval of a mean, m +- t s / sqrt(n) with n - 1 degrees of freedom; without ends for a single value.</summary>
    /// <param name="values">At least one value [any unit].</param>
    /// <param name="confidence">Share that such intervals hold the truth [1].</param>
    public static Interval OfMean(IReadOnlyList<double> values, double confidence = 0.95)
    {
        double m = Sample.Mean(values);
        if (values.Count < 2)
        {
            return new Interval(m, double.NaN, double.NaN);
        }

        double half = StudentT.Factor(confidence, values.Count - 1) * Math.Sqrt(Sample.Variance(values) / values.Count);
        return new Interval(m, m - half, m + half);
    }

    /// <summary>What is left of it where the truth may be greater by any amount: no upper end.</summary>
    public Interval OpenAbove() => this with { High = double.NaN };

    /// <summary>Whether the interval has ends.</summary>
    public bool IsBounded => double.IsFinite(Low) && double.IsFinite(High);
}
