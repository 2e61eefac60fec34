namespace PushSim.Analysis.Statistics;

/// <summary>Welch's comparison of two means whose spreads may differ.
/// <code>
/// t = (m1 - m2) / sqrt(a + b)     a = s1^2/n1, b = s2^2/n2     df = (a + b)^2 / (a^2/(n1 - 1) + b^2/(n2 - 1))
/// </code>
/// Welch, Biometrika 34:28, 1947; Satterthwaite, Biometrics 2:110, 1946 (both from memory).</summary>
/// <param name="T">Difference in standard errors [1].</param>
/// <param name="Freedom">Degrees of freedom [1].</param>
/// <param name="P">Two-sided probability if there were no difference [1].</param>
/// <param name="Difference">m1 - m2 with its interval [unit of the data].</param>
public readonly record struct WelchTest(double T, double Freedom, double P, Interval Difference)
{
    /// <summary>Compares two samples of at least two values each.</summary>
    /// <param name="first">First sample [any unit].</param>
    /// <param name="second">Second sample [the same unit].</param>
    /// <param name="confidence">Of the interval [1].</param>
    public static WelchTest Compare(IReadOnlyList<double> first, IReadOnlyList<double> second, double confidence = 0.95)
    {
        double a = Sample.Variance(first) / first.Count;
        double b = Sample.Variance(second) / second.Count;
        double difference = Sample.Mean(first) - Sample.Mean(second);
        double error = Math.Sqrt(a + b);
        double df = Freedoms([(a, first.Count - 1), (b, second.Count - 1)]);
        double half = StudentT.Factor(confidence, df) * error;
        double t = difference / error;
        return new WelchTest(t, df, StudentT.TwoSided(t, df), new Interval(difference, difference - half, difference + half));
    }

    /// <summary>Degrees of freedom of a sum of independent variances, each with its own; infinite if all are known exactly.</summary>
    /// <param name="parts">Variances [unit of the data, squared] and degrees of freedom [1].</param>
    public static double Freedoms(IReadOnlyList<(double Variance, double Freedom)> parts)
    {
        double sum = parts.Sum(p => p.Variance);
        double below = parts.Sum(p => p.Variance * p.Variance / p.Freedom);
        return below > 0.0 ? sum * sum / below : double.PositiveInfinity;
    }
}
