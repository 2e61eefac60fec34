namespace PushSim.Analysis.Statistics;

/// <summary>Power of the comparison of two means with n values each and one spread: the share of experiments that find a true difference of d standard
/// deviations. With S the chi variable over the root of its freedom f = 2 n - 2, and delta = d sqrt(n/2),
/// <code>
/// power = E[ Phi(delta - t S) + Phi(-delta - t S) ]
/// </code>
/// which is the non-central t distribution with both tails, as an integral over S by Simpson's rule.</summary>
public static class TTestPower
{
    private const double MostPulls = 1e6;

    /// <summary>The power.</summary>
    /// <param name="count">Values in each group, above 1, also broken [1].</param>
    /// <param name="difference">True difference in standard deviations [1].</param>
    /// <param name="level">Two-sided level of the test [1].</param>
    /// <param name="hasFarTail">Whether findings of the wrong sign count, which some tables leave out.</param>
    public static double Of(double count, double difference, double level = 0.05, bool hasFarTail = true)
    {
        double freedom = (2.0 * count) - 2.0;
        double limit = StudentT.Factor(1.0 - level, freedom);
        double delta = Math.Abs(difference) * Math.Sqrt(0.5 * count);
        return ScaledChi.Mean(freedom, s => StandardNormal.Below(delta - (limit * s)) + (hasFarTail ? StandardNormal.Below(-delta - (limit * s)) : 0.0));
    }

    /// <summary>Values in each group for a given power, not rounded, at least 2 [1]; infinite where more than a million are needed.</summary>
    /// <param name="difference">True difference in standard deviations [1].</param>
    /// <param name="power">Wanted power [1].</param>
    /// <param name="level">Two-sided level of the test [1].</param>
    /// <param name="hasFarTail">Whether findings of the wrong sign count, which some tables leave out.</param>
    public static double ExactCount(double difference, double power = 0.8, double level = 0.05, bool hasFarTail = true)
    {
        double high = 2.0;
        while (Of(high, difference, level, hasFarTail) < power)
        {
            high *= 2.0;
            if (high > MostPulls)
            {
                return double.PositiveInfinity;
            }
        }

        return high > 2.0 ? Solve(n => Of(n, difference, level, hasFarTail) < power, 0.5 * high, high) : high;
    }

    /// <summary>Values needed in each group, at least 2, rounded up [1]; the greatest integer where no sensible number is enough.</summary>
    /// <param name="difference">True difference in standard deviations [1].</param>
    /// <param name="power">Wanted power [1].</param>
    /// <param name="level">Two-sided level of the test [1].</param>
    public static int Count(double difference, double power = 0.8, double level = 0.05)
    {
        double exact = ExactCount(difference, power, level);
        return double.IsFinite(exact) ? (int)Math.Ceiling(exact - 1e-9) : int.MaxValue;
    }

    /// <summary>Smallest difference that is found with a given power, in standard deviations [1].</summary>
    /// <param name="count">Values in each group [1].</param>
    /// <param name="power">Wanted power [1].</param>
    /// <param name="level">Two-sided level of the test [1].</param>
    public static double SmallestDifference(int count, double power = 0.8, double level = 0.05)
    {
        double high = 1.0;
        while (Of(count, high, level) < power)
        {
            high *= 2.0;
        }

        return Solve(d => Of(count, d, level) < power, 0.0, high);
    }

    private static double Solve(Func<double, bool> isBelow, double low, double high)
    {
        while (high - low > 1e-10 * high)
        {
            double middle = 0.5 * (low + high);
            (low, high) = isBelow(middle) ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
