using MathNet.Numerics.Distributions;
using PushSim.Analysis.Statistics;
using Xunit;
using StudentT = PushSim.Analysis.Statistics.StudentT;

namespace PushSim.Tests.Analysis;

/// <summary>Student, Welch, Holm against printed examples.</summary>
public class StatisticsTests
{
    internal const string WelchFirst = "27.5 21.0 19.0 23.6 17.0 17.9 16.9 20.1 21.9 22.6 23.1 19.6 19.0 21.7 21.4";
    internal const string WelchSecond = "27.1 22.0 20.8 23.4 23.4 23.5 25.8 22.0 24.8 20.2 21.9 22.1 22.9 20.5 24.4";
    internal const string SleepFirst = "0.7 -1.6 -0.2 -1.2 -0.1 3.4 3.7 0.8 0.0 2.0";
    internal const string SleepSecond = "1.9 0.8 1.1 0.1 -0.1 4.4 5.5 1.6 4.6 3.4";

    // Rosetta Code, "Welch's t-test" (values from R, read second-hand); the last is Student's sleep data of R's t.test page, from memory; digits computed here
    [Theory]
    [InlineData(
        WelchFirst, WelchSecond,
        -2.455356398286, 24.98852929, 0.021378001462867, -3.984096267, -0.349237066)]
    [InlineData("30.02 29.99 30.11 29.97 30.01 29.99", "29.89 29.93 29.72 29.98 30.02 29.98", 1.959005808, 7.03055996, 0.090773324285671, -0.019569090, 0.209569090)]
    [InlineData("3.0 4.0 1.0 2.1", "490.2 340.0 433.9", -9.559497722, 2.000852349, 0.0107515611497845, double.NaN, double.NaN)]
    [InlineData("0.010268 0.000167 0.000167", "0.159258 0.136278 0.122389", -12.0523260, 2.3886264, 0.00339907162713746, double.NaN, double.NaN)]
    [InlineData(SleepFirst, SleepSecond, -1.860813467, 17.77647352, 0.0793941402, -3.3654832, 0.2054832)]
    public void Two_means_by_Welch(string first, string second, double t, double freedom, double p, double low, double high)
    {
        WelchTest test = WelchTest.Compare(Numbers(first), Numbers(second));
        Assert.Equal(t, test.T, 5e-8);
        Assert.Equal(freedom, test.Freedom, 5e-8);
        Assert.Equal(p, test.P, 1e-10);
        if (double.IsFinite(low))
        {
            Assert.Equal(low, test.Difference.Low, 6e-8);
            Assert.Equal(high, test.Difference.High, 6e-8);
        }
    }

    // worked example read at a copy of geeksforgeeks.org, "Holm-Bonferroni method"; adjusted values computed here
    [Fact]
    public void Several_comparisons_by_Holm() =>
        Assert.All(Holm.Adjust([0.01, 0.04, 0.03, 0.005]).Zip([0.03, 0.06, 0.06, 0.02]), pair => Assert.Equal(pair.Second, pair.First, 1e-15));

    // NIST e-Handbook 1.3.5.2 (read second-hand), digits computed here
    [Fact]
    public void Factor_for_195_values() => Assert.Equal(1.972267533, StudentT.Factor(0.95, 194), 1e-8);

    // computed here; agrees with printed t tables, from memory
    [Theory]
    [InlineData(1, 12.706205)]
    [InlineData(2, 4.302653)]
    [InlineData(3, 3.182446)]
    [InlineData(4, 2.776445)]
    [InlineData(5, 2.570582)]
    [InlineData(7, 2.364624)]
    [InlineData(9, 2.262157)]
    [InlineData(20, 2.085963)]
    [InlineData(double.PositiveInfinity, 1.959964)]
    public void Factor_of_Student(double freedom, double expected) => Assert.Equal(expected, StudentT.Factor(0.95, freedom), 6e-7);

    // computed here
    [Fact]
    public void The_interval_of_one_to_five()
    {
        Interval i = Interval.OfMean([1, 2, 3, 4, 5]);
        Assert.Equal(1.0367568385, i.Low, 1e-9);
        Assert.Equal(4.9632431615, i.High, 1e-9);
        Assert.False(Interval.OfMean([3]).IsBounded);
    }

    // the variance of a mean of an AR(1) series of rho 0.6, from the theory: n (1 - rho)/(1 + rho)
    [Fact]
    public void Correlated_readings_count_for_fewer()
    {
        var random = new Random(11);
        double sum = 0.0;
        for (int k = 0; k < 200; k++)
        {
            double[] y = new double[400];
            for (int i = 1; i < y.Length; i++)
            {
                y[i] = (0.6 * y[i - 1]) + Normal.Sample(random, 0.0, 1.0);
            }

            sum += Autocorrelation.EffectiveCount(y) / 400.0 / 200.0;
        }

        Assert.Equal(0.25, sum, 0.01);
    }

    // drawn by chance, 100 000 times
    [Theory]
    [InlineData(1.0, 0.2)]
    [InlineData(0.3, 1.0)]
    public void A_moment_in_a_gap_with_noise(double a, double sigma)
    {
        double half = UniformPlusNormal.HalfWidth(0.95, a, sigma);
        var random = new Random(3);
        int inside = Enumerable.Range(0, 100_000).Count(_ => Math.Abs((a * ((2.0 * random.NextDouble()) - 1.0)) + Normal.Sample(random, 0.0, sigma)) < half);
        Assert.InRange(inside, 94_730, 95_270);
        Assert.Equal(0.95, UniformPlusNormal.HalfWidth(0.95, 1.0, 0.0), 1e-12);
    }

    private static double[] Numbers(string text) => [.. text.Split(' ').Select(w => double.Parse(w, System.Globalization.CultureInfo.InvariantCulture))];

    // 1, 1, -1, -1 five times over: r = 1/20, freed of its bias (r + 1/20)/(1 - 4/20). Computed here.
    [Fact]
    public void Correlation_of_neighbours_is_freed_of_its_bias() =>
        Assert.Equal(0.125, Autocorrelation.LagOne([.. Enumerable.Range(0, 20).Select(i => i % 4 < 2 ? 1.0 : -1.0)]), 1e-12);

    [Fact]
    public void Without_tries_a_difference_of_shares_may_be_anything()
    {
        Assert.Equal(new PushSim.Analysis.Chance.Bounds(-1.0, 1.0), PushSim.Analysis.Chance.ShareInterval.OfTwo(3, 5, 0, 0));
        Assert.Equal(new PushSim.Analysis.Chance.Bounds(-1.0, 1.0), PushSim.Analysis.Chance.ShareInterval.OfTwo(0, 0, 3, 5));
    }
}
