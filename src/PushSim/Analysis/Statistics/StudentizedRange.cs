using System.Collections.Concurrent;
using MathNet.Numerics.Interpolation;

namespace PushSim.Analysis.Statistics;

/// <summary>Distribution of the studentized range: the range of k normal values over an independent estimate of their deviation with f degrees of freedom.
/// <code>
/// W(w) = k int phi(z) (Phi(z) - Phi(z - w))^(k-1) dz          P(q) = E[ W(q S) ],   S the chi variable over the root of f
/// </code>
/// W is tabulated once for each k (spline, error about 1e-8), the mean taken by Simpson's rule.</summary>
public static class StudentizedRange
{
    // Beyond this range of normal values nothing is left [1].
    private const double MostRange = 20.0;
    private const int Nodes = 501;
    private const double NormalEnd = 8.5;
    private const double NormalStep = 0.1;
    private const int Halvings = 60;

    private static readonly ConcurrentDictionary<int, CubicSpline> s_ranges = new();

    /// <summary>Probability of a range above q [1].</summary>
    /// <param name="q">The studentized range [1].</param>
    /// <param name="groups">Count k of values, at least 2 [1].</param>
    /// <param name="freedom">Degrees of freedom f, also broken [1].</param>
    public static double Above(double q, int groups, double freedom)
    {
        CubicSpline range = s_ranges.GetOrAdd(groups, Table);
        return Math.Clamp(ScaledChi.Mean(freedom, s => q * s < MostRange ? 1.0 - range.Interpolate(q * s) : 0.0), 0.0, 1.0);
    }

    /// <summary>The range that is exceeded with a probability [1].</summary>
    /// <param name="level">The probability [1].</param>
    /// <param name="groups">Count k of values, at least 2 [1].</param>
    /// <param name="freedom">Degrees of freedom f, also broken [1].</param>
    public static double Limit(double level, int groups, double freedom)
    {
        double high = 4.0;
        while (Above(high, groups, freedom) > level)
        {
            high *= 2.0;
        }

        double low = 0.0;
        for (int i = 0; i < Halvings && high - low > 1e-11 * high; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Above(middle, groups, freedom) > level ? (middle, high) : (low, middle);
        }

        return 0.5 * (low + high);
    }

    // the trapezium rule has no error to speak of on these bell-shaped functions
    private static CubicSpline Table(int groups)
    {
        double[] at = [.. Enumerable.Range(0, Nodes).Select(i => MostRange * i / (Nodes - 1.0))];
        double[] share = [.. at.Select(w =>
        {
            double sum = 0.0;
            for (double z = -NormalEnd; z <= NormalEnd; z += NormalStep)
            {
                sum += Math.Exp(-0.5 * z * z) * Math.Pow(StandardNormal.Below(z) - StandardNormal.Below(z - w), groups - 1);
            }

            return groups * NormalStep * sum / Math.Sqrt(2.0 * Math.PI);
        })];
        return CubicSpline.InterpolateNatural(at, share);
    }
}
