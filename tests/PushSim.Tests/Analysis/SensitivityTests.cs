using PushSim.Analysis.Chance;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Sensitivity against Ishigami's function, whose indices are known in closed form (Ishigami and Homma 1990; values of Saltelli et al. 2008, chapter 4).</summary>
public class SensitivityTests
{
    private static readonly double[] s_first = [0.31390519114781, 0.44241114479004, 0.0];
    private static readonly double[] s_total = [0.55758885520996, 0.44241114479004, 0.24368366406215];

    // root mean square error of plain random points at n = 16384, computed here outside of this project
    private static readonly double[] s_totalError = [0.0103, 0.0057, 0.0034];

    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void Total_from_pairs_that_differ_in_one_input(int input)
    {
        (double share, Bounds interval) = Total(input, 11, 16_384);
        Assert.Equal(s_total[input], share, 3.0 * s_totalError[input]);
        Assert.True(interval.Holds(share) && interval.HalfWidth < 4.0 * s_totalError[input]);
    }

    // of 200 true 95 % intervals at least 181 hold, with probability 0.997 (binomial, computed here)
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    [InlineData(2)]
    public void The_interval_of_a_total_holds_as_often_as_it_says(int input) =>
        Assert.InRange(Enumerable.Range(1, 200).Count(seed => Total(input, (ulong)seed, 1000).Bounds.Holds(s_total[input])), 181, 199);

    // the same of the first order; the third input, without effect by itself, is not told, so it has no interval to be tested
    [Theory]
    [InlineData(0)]
    [InlineData(1)]
    public void The_interval_of_a_first_order_index_holds_as_often_as_it_says(int input)
    {
        int held = 0;
        for (ulong seed = 1; seed <= 200; seed++)
        {
            double[][] points = [.. Enumerable.Range(0, 1000).Select(m => Point(m, 0, seed))];
            double[] moves = new double[points.Length];
            double share = Sensitivity.FirstOrder([.. points.Select(p => p[input])], [.. points.Select(Ishigami)], moves);
            held += Math.Abs(share - s_first[input]) <= Sensitivity.Scatter(moves) ? 1 : 0;
        }

        Assert.InRange(held, 181, 199);
    }

    // from one plain sample; 32 bins resolve the sines to under a hundredth
    [Theory]
    [InlineData(0, 2000, 0.05)]
    [InlineData(1, 2000, 0.05)]
    [InlineData(2, 2000, 0.02)]
    [InlineData(0, 100_000, 0.01)]
    [InlineData(1, 100_000, 0.01)]
    [InlineData(2, 100_000, 0.002)]
    public void First_order_from_the_matches_themselves(int input, int n, double tolerance)
    {
        Assert.Equal(s_first[input], FirstOrder(input, n), tolerance);
    }

    /// <summary>First-order index of an input from n points.</summary>
    internal static double FirstOrder(int input, int n)
    {
        double[] x = [.. Enumerable.Range(0, n).Select(m => Point(m, 0)[input])];
        double[] y = [.. Enumerable.Range(0, n).Select(m => Ishigami(Point(m, 0)))];
        return Sensitivity.FirstOrder(x, y);
    }

    // 1 % of the samples, three of their standard deviations either way, however many inputs are looked at; the outcome is won or lost, as shoves are
    [Theory]
    [InlineData(100, 1, 1000, 1, 19)]
    [InlineData(100, 40, 400, 0, 10)]
    public void Inputs_without_effect_seldom_pass_the_noise_level(int n, int inputs, int samples, int least, int most)
    {
        int passed = 0;
        for (ulong seed = 1; seed <= (ulong)samples; seed++)
        {
            ulong key = seed;
            double[] y = [.. Enumerable.Range(0, n).Select(m => Philox.Uniform(key, m, 0) < 0.3 ? 1.0 : 0.1 * Philox.Uniform(key, m, 1))];
            bool any = false;
            for (int k = 0; k < inputs; k++)
            {
                double[] x = [.. Enumerable.Range(0, n).Select(m => Philox.Uniform(key, m, 2 + (ulong)k))];
                any |= Sensitivity.FirstOrder(x, y) > Sensitivity.NoiseLevel(n, inputs);
            }

            passed += any ? 1 : 0;
        }

        Assert.InRange(passed, least, most);
    }

    [Fact]
    public void Too_few_matches_or_no_variance_say_nothing()
    {
        Assert.Equal(0.0, Sensitivity.FirstOrder([1, 2, 3], [1, 2, 3]));
        Assert.Equal(0.0, Sensitivity.FirstOrder(new double[100], new double[100]));
        Assert.Equal((0.0, new Bounds(0.0, 1.0)), Sensitivity.Total(new double[100], new double[100]));
    }

    /// <summary>Total index of an input from n pairs, with its interval.</summary>
    internal static (double Share, Bounds Bounds) Total(int input, ulong seed, int n)
    {
        double[] a = [.. Enumerable.Range(0, n).Select(m => Ishigami(Point(m, 0, seed)))];
        double[] ab = [.. Enumerable.Range(0, n).Select(m => Ishigami([.. Point(m, 0, seed).Select((x, i) => i == input ? Point(m, 10, seed)[i] : x)]))];
        return Sensitivity.Total(a, ab);
    }

    private static double[] Point(int m, ulong offset, ulong seed = 11) => [.. Enumerable.Range(0, 3).Select(i => Math.PI * ((2.0 * Philox.Uniform(seed, m, offset + (ulong)i)) - 1.0))];

    private static double Ishigami(double[] x) => Math.Sin(x[0]) + (7.0 * Math.Sin(x[1]) * Math.Sin(x[1])) + (0.1 * Math.Pow(x[2], 4) * Math.Sin(x[0]));
}
