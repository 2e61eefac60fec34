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
    private const int MostAssured = 10_000;

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

    /// <summary>Power where the spread comes from a pilot and may itself be off: the mean of the power over the true spreads that the pilot leaves open, s / S with S the scaled chi variable of its freedom. Planned
    /// with s alone 62 to 75 of 100 tests find what 80 are promised, at 2 to 8 degrees of freedom (computed here).</summary>
    /// <param name="count">Values in each group, above 1 [1].</param>
    /// <param name="difference">True difference in standard deviations of the pilot [1].</param>
    /// <param name="pilot">Degrees of freedom of the pilot's standard deviation; infinite: it is exact [1].</param>
    /// <param name="level">Two-sided level of the test [1].</param>
    public static double Assured(double count, double difference, double pilot, double level = 0.05) =>
        double.IsInfinity(pilot) ? Of(count, difference, level) : ScaledChi.Coarse(pilot, s => Of(count, difference * s, level));

    /// <summary>Values needed in each group where the spread comes from a pilot, at least 2; the greatest integer where more than ten thousand are needed [1].</summary>
    /// <param name="difference">True difference in standard deviations of the pilot [1].</param>
    /// <param name="power">Wanted power in the mean [1].</param>
    /// <param name="pilot">Degrees of freedom of the pilot [1].</param>
    /// <param name="level">Two-sided level of the test [1].</param>
    public static int AssuredCount(double difference, double power, double pilot, double level = 0.05)
    {
        if (double.IsInfinity(pilot))
        {
            return Count(difference, power, level);
        }

        int high = 2;
        while (Assured(high, difference, pilot, level) < power)
        {
            high *= 2;
            if (high > MostAssured)
            {
                return int.MaxValue;
            }
        }

        int low = Math.Max(1, high / 2);
        while (high - low > 1)
        {
            int middle = (low + high) / 2;
            (low, high) = Assured(middle, difference, pilot, level) < power ? (middle, high) : (low, middle);
        }

        return high;
    }

    /// <summary>Smallest difference that is found with a given power where the spread comes from a pilot, in its standard deviations [1].</summary>
    /// <param name="count">Values in each group [1].</param>
    /// <param name="power">Wanted power in the mean [1].</param>
    /// <param name="pilot">Degrees of freedom of the pilot [1].</param>
    /// <param name="level">Two-sided level of the test [1].</param>
    public static double SmallestAssured(int count, double power, double pilot, double level = 0.05)
    {
        double high = 1.0;
        while (Assured(count, high, pilot, level) < power && high < MostAssured)
        {
            high *= 2.0;
        }

        double low = 0.0;
        while (high - low > 1e-4 * high)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Assured(count, middle, pilot, level) < power ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
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
