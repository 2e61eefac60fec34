namespace PushSim.Analysis.Statistics;

/// <summary>
/// Two of several means compared so that the intervals of all pairs hold at once, by the studentized range q.
/// <code>q = |m1 - m2| / sqrt((s1^2/n1 + s2^2/n2) / 2)</code>
/// with each group's own spread and Welch's freedom (Games and Howell, J. Educ. Statist. 1:113, 1976), or one pooled spread (Tukey 1949, Kramer 1956); all from
/// memory.
/// </summary>
/// <param name="Q">Studentized range [1].</param>
/// <param name="P">Probability that some pair of the family lies as far apart if none differs [1].</param>
/// <param name="Difference">m1 - m2 with its interval [unit of the data].</param>
public readonly record struct RangeTest(double Q, double P, Interval Difference)
{
    private const double Level = 0.05;

    /// <summary>By each group's own spread.</summary>
    /// <param name="first">First sample, at least two values [any unit].</param>
    /// <param name="second">Second sample [the same unit].</param>
    /// <param name="groups">Groups in the family, at least 2 [1].</param>
    public static RangeTest OwnSpreads(IReadOnlyList<double> first, IReadOnlyList<double> second, int groups) => Of(WelchTest.Compare(first, second), groups);

    /// <summary>By each group's own spread, from Welch's test of the two.</summary>
    /// <param name="test">Welch's test with its 95 % interval.</param>
    /// <param name="groups">Groups in the family, at least 2 [1].</param>
    public static RangeTest Of(WelchTest test, int groups)
    {
        double error = (test.Difference.High - test.Difference.Value) / StudentT.Factor(1.0 - Level, test.Freedom);
        return Of(test.Difference.Value, error * error, groups, test.Freedom);
    }

    /// <summary>By one spread pooled over all groups.</summary>
    /// <param name="all">All groups, each of at least two values [any unit].</param>
    /// <param name="first">Index of the first [1].</param>
    /// <param name="second">Index of the second [1].</param>
    public static RangeTest PooledSpread(IReadOnlyList<IReadOnlyList<double>> all, int first, int second)
    {
        int freedom = all.Sum(g => g.Count - 1);
        double variance = all.Sum(g => (g.Count - 1) * Sample.Variance(g)) / freedom;
        double square = (variance / all[first].Count) + (variance / all[second].Count);
        return Of(Sample.Mean(all[first]) - Sample.Mean(all[second]), square, all.Count, freedom);
    }

    private static RangeTest Of(double difference, double square, int groups, double freedom)
    {
        double unit = Math.Sqrt(0.5 * square);
        double half = StudentizedRange.Limit(Level, groups, freedom) * unit;
        double q = Math.Abs(difference) / unit;
        return new RangeTest(q, StudentizedRange.Above(q, groups, freedom), new Interval(difference, difference - half, difference + half));
    }
}
