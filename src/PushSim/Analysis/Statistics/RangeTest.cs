namespace PushSim.Analysis.Statistics;

/// <summary>Two of several means compared so that the intervals of all pairs hold at once, by the studentized range q.
/// <code>q = |m1 - m2| / sqrt((s1^2/n1 + s2^2/n2) / 2)</code>
/// with each group's own spread and Welch's freedom (Games and Howell, J. Educ. Statist. 1:113, 1976; from memory).</summary>
/// <param name="Q">Studentized range [1].</param>
/// <param name="P">Probability that some pair of the family lies as far apart if none differs [1].</param>
/// <param name="Difference">m1 - m2 with its interval [unit of the data].</param>
public readonly record struct RangeTest(double Q, double P, Interval Difference)
{
    private const double Level = 0.05;

    /// <summary>By each group's own spread, from Welch's test of the two.</summary>
    /// <param name="test">Welch's test with its 95 % interval.</param>
    /// <param name="groups">Groups in the family, at least 2 [1].</param>
    public static RangeTest Of(WelchTest test, int groups)
    {
        double difference = test.Difference.Value;
        double error = (test.Difference.High - difference) / StudentT.Factor(1.0 - Level, test.Freedom);
        double unit = Math.Sqrt(0.5 * (error * error));
        double half = StudentizedRange.Limit(Level, groups, test.Freedom) * unit;
        double q = Math.Abs(difference) / unit;
        return new RangeTest(q, StudentizedRange.Above(q, groups, test.Freedom), new Interval(difference, difference - half, difference + half));
    }
}
