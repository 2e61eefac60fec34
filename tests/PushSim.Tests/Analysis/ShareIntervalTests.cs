using MathNet.Numerics.Distributions;
using PushSim.Analysis.Chance;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Intervals: exact coverage, counted over every outcome and by simulation.</summary>
public class ShareIntervalTests
{
    // exact coverage, computed here outside of this project; the see-saw is Brown, Cai and DasGupta's (Statist. Sci. 16:101, 2001, from memory)
    [Theory]
    [InlineData(10, 0.1, 0.92981)]
    [InlineData(20, 0.1, 0.95683)]
    [InlineData(50, 0.5, 0.93509)]
    [InlineData(100, 0.02, 0.94917)]
    [InlineData(1000, 0.5, 0.94632)]
    [InlineData(1000, 0.9, 0.94910)]
    public void Exact_coverage(int n, double p, double wilson) => Assert.Equal(wilson, Coverage(n, p, ShareInterval.Wilson), 6e-6);

    // n = z^2 (1/(4 h^2) - 1), computed here
    [Theory]
    [InlineData(0.05, 381)]
    [InlineData(0.02, 2398)]
    [InlineData(0.01, 9600)]
    public void Matches_for_a_half_width(double half, int n)
    {
        Assert.True(ShareInterval.Wilson(n / 2, n).HalfWidth <= half * 1.0003);
        Assert.True(ShareInterval.Wilson((n - 6) / 2, n - 6).HalfWidth > half);
    }

    [Fact]
    public void Nothing_known_is_everything_possible()
    {
        Assert.Equal(new Bounds(0.0, 1.0), ShareInterval.Wilson(0, 0));
        Assert.Equal(new Bounds(-1.0, 1.0), ShareInterval.Difference(0, 0, 0));
        Assert.Equal(0.0, ShareInterval.Wilson(0, 50).Low);
        Assert.Equal(1.0, ShareInterval.Wilson(50, 50).High);
        Assert.InRange(ShareInterval.Difference(0, 0, 50).HalfWidth, 0.03, 0.12);
    }

    // McNemar's test, exact: the chance of as uneven a split of a + b, each way alike. Five to none is 2/32, six to none 2/64
    [Theory]
    [InlineData(20, 8, 60)]
    [InlineData(16, 6, 100)]
    [InlineData(15, 5, 40)]
    [InlineData(30, 14, 500)]
    [InlineData(5, 0, 60)]
    [InlineData(6, 0, 60)]
    [InlineData(0, 5, 60)]
    [InlineData(10, 2, 1000)]
    [InlineData(9, 2, 1000)]
    public void The_interval_holds_no_difference_where_the_test_does(int a, int b, int n) =>
        Assert.Equal(2.0 * Binomial.CDF(0.5, a + b, Math.Min(a, b)) > 0.05, ShareInterval.Difference(a, b, n).Holds(0.0));

    [Fact]
    public void Swapping_swaps_the_difference()
    {
        Bounds one = ShareInterval.Difference(12, 5, 40);
        Bounds other = ShareInterval.Difference(5, 12, 40);
        Assert.Equal(one.Low, -other.High, 1e-12);
        Assert.Equal(one.High, -other.Low, 1e-12);
    }

    // every outcome of 60 matches, weighed; coverage of a 95 % interval within the see-saw
    [Theory]
    [InlineData(0.45, 0.45)]
    [InlineData(0.6, 0.3)]
    [InlineData(0.1, 0.1)]
    [InlineData(0.85, 0.1)]
    [InlineData(0.5, 0.5)]
    public void Coverage_of_wins_less_losses(double win, double lose)
    {
        const int N = 60;
        double covered = 0.0;
        for (int a = 0; a <= N; a++)
        {
            for (int b = 0; b <= N - a; b++)
            {
                double weight = Binomial.PMF(win, N, a) * Binomial.PMF(Math.Min(1.0, lose / (1.0 - win)), N - a, b);
                covered += weight > 1e-12 && ShareInterval.Difference(a, b, N).Holds(win - lose) ? weight : 0.0;
            }
        }

        // at no difference the exact test is the careful one: up to 0.985
        Assert.InRange(covered, 0.925, win == lose ? 0.985 : 0.975);
    }

    // of 1000 seeds; the bounds hold for a true 95 % interval with probability 0.997 (computed here)
    [Fact]
    public void Coverage_by_simulation()
    {
        int held = 0;
        for (ulong seed = 1; seed <= 1000; seed++)
        {
            ulong key = seed;
            int hits = Enumerable.Range(0, 300).Count(m => Philox.Uniform(key, m, 99) < 0.62);
            held += ShareInterval.Wilson(hits, 300).Holds(0.62) ? 1 : 0;
        }

        Assert.InRange(held, 930, 970);
    }

    /// <summary>Exact share of outcomes whose interval holds p.</summary>
    internal static double Coverage(int n, double p, Func<long, long, Bounds> of) =>
        Enumerable.Range(0, n + 1).Where(k => of(k, n).Holds(p)).Sum(k => Binomial.PMF(p, n, k));
}
