using MathNet.Numerics.Distributions;

namespace PushSim.Analysis.Statistics;

/// <summary>Mann-Kendall test for a trend, with Sen's slope (the median of all slopes between two values). S counts the pairs that rise less those that
/// fall. Up to ten values without ties its distribution is counted exactly, else it is normal with
/// <code>
/// V = (n (n - 1)(2 n + 5) - sum t (t - 1)(2 t + 5)) / 18        z = (|S| - 1) / sqrt(V)        t values that tie
/// </code></summary>
/// <param name="S">Rising pairs less falling pairs [1].</param>
/// <param name="Z">S in standard deviations, one less for continuity, with its sign [1].</param>
/// <param name="P">Two-sided probability if there were no trend [1].</param>
/// <param name="Slope">Sen's slope [unit of the data per place].</param>
public readonly record struct TrendTest(int S, double Z, double P, double Slope)
{
    private const int MostExact = 10;

    /// <summary>Tests a series in order of time, at even places; at least three values.</summary>
    /// <param name="values">The series [any unit].</param>
    public static TrendTest Of(IReadOnlyList<double> values)
    {
        int n = values.Count;
        int s = 0;
        double[] slopes = new double[n * (n - 1) / 2];
        for (int i = 0, k = 0; i < n; i++)
        {
            for (int j = i + 1; j < n; j++, k++)
            {
                s += Math.Sign(values[j] - values[i]);
                slopes[k] = (values[j] - values[i]) / (j - i);
            }
        }

        int[] ties = [.. values.GroupBy(v => v).Select(g => g.Count()).Where(c => c > 1)];
        double variance = ((n * (n - 1.0) * ((2.0 * n) + 5.0)) - ties.Sum(t => t * (t - 1.0) * ((2.0 * t) + 5.0))) / 18.0;
        double z = s == 0 || variance <= 0.0 ? 0.0 : Math.Sign(s) * (Math.Abs(s) - 1) / Math.Sqrt(variance);
        double p = n <= MostExact && ties.Length == 0 ? Math.Min(1.0, 2.0 * AtLeast(n, Math.Abs(s))) : Math.Min(1.0, 2.0 * Normal.CDF(0.0, 1.0, -Math.Abs(z)));
        return new TrendTest(s, z, p, Sample.Quantile(slopes, 0.5));
    }

    /// <summary>Exact one-sided probability of at least S among n values in random order without ties [1].</summary>
    /// <param name="n">Values [1].</param>
    /// <param name="s">Rising pairs less falling pairs [1].</param>
    public static double AtLeast(int n, int s)
    {
        // orders with k falling pairs: the m-th value may stand before 0 .. m - 1 of the smaller ones
        int pairs = n * (n - 1) / 2;
        double[] share = new double[pairs + 1];
        share[0] = 1.0;
        for (int m = 2; m <= n; m++)
        {
            double[] next = new double[pairs + 1];
            for (int k = 0; k <= pairs; k++)
            {
                for (int a = 0; a < m && a <= k; a++)
                {
                    next[k] += share[k - a] / m;
                }
            }

            share = next;
        }

        return share.Where((_, k) => pairs - (2 * k) >= s).Sum();
    }
}
