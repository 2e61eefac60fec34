using MathNet.Numerics.Distributions;

namespace PushSim.Analysis.Chance;

/// <summary>95 % intervals of shares and of differences of shares.</summary>
public static class ShareInterval
{
    /// <summary>Normal quantile of a two-sided 95 % interval [1].</summary>
    public const double Z = 1.959963984540054;

    private const int Halvings = 60;

    /// <summary>Normal quantile of two-sided intervals that all hold in 95 of 100 cases, however many are looked at together (Bonferroni's inequality) [1].</summary>
    /// <param name="together">Intervals that are looked at [1].</param>
    public static double ZOf(int together) => together <= 1 ? Z : Normal.InvCDF(0.0, 1.0, 1.0 - (0.025 / together));

    /// <summary>Wilson's score interval of a share. Wilson, J. Amer. Statist. Assoc. 22:209, 1927.</summary>
    /// <param name="hits">Count of hits [1].</param>
    /// <param name="n">Count of tries [1].</param>
    public static Bounds Wilson(long hits, long n) => Wilson((double)hits, n);

    /// <summary>The same of counts that need not be whole.</summary>
    /// <param name="hits">Hits [1].</param>
    /// <param name="n">Tries [1].</param>
    public static Bounds Wilson(double hits, double n)
    {
        if (n == 0.0)
        {
            return new Bounds(0.0, 1.0);
        }

        double p = hits / n;
        double z2n = Z * Z / n;
        double middle = (p + (0.5 * z2n)) / (1.0 + z2n);
        double half = Z * Math.Sqrt((p * (1.0 - p) / n) + (0.25 * z2n / n)) / (1.0 + z2n);
        return new Bounds(hits == 0.0 ? 0.0 : middle - half, hits == n ? 1.0 : middle + half);
    }

    /// <summary>Score interval of the difference of two shares counted on the same matches: (a - b) / n, where a matches speak for the one, b for the other and the rest for
    /// neither. Tango, Statistics in Medicine 17:891, 1998.</summary>
    /// <param name="a">Matches for the one [1].</param>
    /// <param name="b">Matches for the other [1].</param>
    /// <param name="n">All matches [1].</param>
    public static Bounds Difference(long a, long b, long n) => Difference((double)a, b, n, Z);

    /// <summary>The same of counts that need not be whole.</summary>
    /// <param name="a">Matches for the one [1].</param>
    /// <param name="b">Matches for the other [1].</param>
    /// <param name="n">All matches [1].</param>
    /// <param name="z">Normal quantile of the interval [1].</param>
    public static Bounds Difference(double a, double b, double n, double z = Z)
    {
        if (n == 0.0)
        {
            return new Bounds(-1.0, 1.0);
        }

        double d = (a - b) / n;
        double low = a == 0.0 && b == n ? -1.0 : Bisect(-1.0, d, x => Score(a, b, n, x) > z);
        double high = b == 0.0 && a == n ? 1.0 : Bisect(d, 1.0, x => Score(a, b, n, x) >= -z);
        return new Bounds(low, high);
    }

    /// <summary>Bounds of the difference of two shares counted on different matches, from the Wilson interval of each. Newcombe, Statistics in Medicine 17:873, 1998, method 10.</summary>
    /// <param name="first">Hits of the first [1].</param>
    /// <param name="firstOf">Tries of the first [1].</param>
    /// <param name="second">Hits of the second [1].</param>
    /// <param name="secondOf">Tries of the second [1].</param>
    public static Bounds OfTwo(long first, long firstOf, long second, long secondOf)
    {
        if (firstOf == 0 || secondOf == 0)
        {
            return new Bounds(-1.0, 1.0);
        }

        double p = (double)first / firstOf;
        double q = (double)second / secondOf;
        (Bounds a, Bounds b) = (Wilson(first, firstOf), Wilson(second, secondOf));
        return new Bounds(p - q - double.Hypot(p - a.Low, b.High - q), p - q + double.Hypot(a.High - p, q - b.Low));
    }

    // (a - b - n D) / sqrt(n (2 q + D (1 - D))), q the most likely share of b-matches if the difference were D
    private static double Score(double a, double b, double n, double difference)
    {
        double twoA = 4.0 * n;
        double minusB = a + b - (((2.0 * n) - a + b) * difference);
        double c = -b * difference * (1.0 - difference);
        double q = (Math.Sqrt(Math.Max(0.0, (minusB * minusB) - (2.0 * twoA * c))) + minusB) / twoA;
        double variance = n * ((2.0 * q) + (difference * (1.0 - difference)));
        double off = a - b - (n * difference);
        return off == 0.0 ? 0.0 : variance <= 0.0 ? Math.CopySign(double.PositiveInfinity, off) : off / Math.Sqrt(variance);
    }

    private static double Bisect(double low, double high, Func<double, bool> isLeft)
    {
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = isLeft(middle) ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }
}
