using PushSim.Analysis.Chance;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Several means at once, steps of a series, shares and their differences against printed examples.</summary>
public class FamilyTests
{
    internal const string Nile =
        "1120 1160 963 1210 1160 1160 813 1230 1370 1140 995 935 1110 994 1020 960 1180 799 958 1140 1100 1210 1150 1250 1260 1220 1030 1100 774 840 874 694 940 833 701 916 692 1020 1050 969 "
        + "831 726 456 824 702 1120 1100 832 764 821 768 845 864 862 698 845 744 796 1040 759 781 865 845 944 984 897 822 1010 771 676 649 846 812 742 801 1040 860 874 848 890 744 749 838 1050 "
        + "918 986 797 923 975 815 1020 906 901 1170 912 746 919 718 714 740";

    internal static readonly double[][] Sas = [[24.5, 23.5, 26.4, 27.1, 29.9], [28.4, 34.2, 29.5, 32.2, 30.1], [26.1, 28.3, 24.3, 26.2, 27.8]];

    private static readonly double[][] s_nist = [[6.9, 5.4, 5.8, 4.6, 4.0], [8.3, 6.8, 7.8, 9.2, 6.5], [8.0, 10.5, 8.1, 6.9, 9.3], [5.8, 3.8, 6.1, 5.6, 6.2]];

    internal static readonly double[][] Howell = [[24, 23, 31, 51], [34, 18, 18, 26], [17, 68, 59, 7]];

    // an example of SAS with the values that MATLAB prints, as SciPy's tests quote them (stats/tests/test_hypotests.py), read second-hand
    [Theory]
    [InlineData(0, 1, -4.6, -8.2491590248597, -0.9508409751403, 0.0144483269098)]
    [InlineData(0, 2, -0.26, double.NaN, double.NaN, 0.9803107240900)]
    [InlineData(1, 2, 4.34, 0.6908409751403, 7.9891590248597, 0.0203311368795)]
    public void Pooled_range_of_three_groups(int first, int second, double difference, double low, double high, double p)
    {
        RangeTest test = Pooled(Sas, first, second);
        Assert.Equal(difference, test.Difference.Value, 1e-12);
        Assert.Equal(p, test.P, 1e-7);
        if (double.IsFinite(low))
        {
            Assert.Equal(low, test.Difference.Low, 1e-6);
            Assert.Equal(high, test.Difference.High, 1e-6);
        }
    }

    // NIST/SEMATECH e-Handbook 7.4.7.1, read second-hand, printed with two decimals
    [Theory]
    [InlineData(1, 0, 0.29, 4.47)]
    [InlineData(2, 0, 1.13, 5.31)]
    [InlineData(0, 3, -2.25, 1.93)]
    [InlineData(1, 2, -2.93, 1.25)]
    [InlineData(1, 3, 0.13, 4.31)]
    [InlineData(2, 3, 0.97, 5.15)]
    public void Pooled_range_of_four_groups(int first, int second, double low, double high)
    {
        Interval i = Pooled(s_nist, first, second).Difference;
        Assert.Equal(low, i.Low, 0.00501);
        Assert.Equal(high, i.High, 0.00501);
    }

    // of two groups the studentized range is sqrt(2) |t|: also where two pulls of each leave hardly more than one degree of freedom
    [Theory]
    [InlineData(1.0)]
    [InlineData(1.05)]
    [InlineData(1.3)]
    [InlineData(1.7)]
    [InlineData(2.0)]
    [InlineData(3.0)]
    public void Range_of_two_groups_is_that_of_Student(double freedom)
    {
        double t = StudentT.Factor(0.95, freedom);
        Assert.Equal(0.05, StudentizedRange.Above(Math.Sqrt(2.0) * t, 2, freedom), 2e-7);
        Assert.Equal(StudentT.TwoSided(1.5, freedom), StudentizedRange.Above(Math.Sqrt(2.0) * 1.5, 2, freedom), 2e-7);
        Assert.Equal(Math.Sqrt(2.0) * t, StudentizedRange.Limit(0.05, 2, freedom), 1e-4);
    }

    // more digits of the first of them, computed here outside of this project
    [Fact]
    public void More_digits_of_the_first()
    {
        RangeTest test = Pooled(s_nist, 1, 0);
        Assert.Equal(0.2926316, test.Difference.Low, 1e-6);
        Assert.Equal(4.4673684, test.Difference.High, 1e-6);
        Assert.Equal(0.02279338, test.P, 1e-7);
    }

    // output of SPSS and of R's PMCMRplus, as SciPy's tests quote it, read second-hand
    [Theory]
    [InlineData(0, 1, 8.25, -16.5492749527, 33.0492749527, 0.558733632)]
    [InlineData(0, 2, -5.5, double.NaN, double.NaN, 0.941147751)]
    [InlineData(1, 2, -13.75, -74.3174374, 46.8174374, 0.682983915)]
    public void Ranges_by_own_spreads(int first, int second, double difference, double low, double high, double p)
    {
        RangeTest test = RangeTest.Of(WelchTest.Compare(Howell[first], Howell[second]), 3);
        Assert.Equal(difference, test.Difference.Value, 1e-12);
        Assert.Equal(p, test.P, 1e-6);
        if (double.IsFinite(low))
        {
            Assert.Equal(low, test.Difference.Low, 2e-5);
            Assert.Equal(high, test.Difference.High, 2e-5);
        }
    }

    [Fact]
    public void The_range_itself() => Assert.Equal(1.5467805949, RangeTest.Of(WelchTest.Compare(Howell[0], Howell[1]), 3).Q, 1e-9);

    // two groups: the range is the root of two times Student's t
    [Fact]
    public void Of_two_groups_it_is_Welch()
    {
        WelchTest welch = WelchTest.Compare(Howell[0], Howell[1]);
        RangeTest range = RangeTest.Of(welch, 2);
        Assert.Equal(welch.P, range.P, 1e-7);
        Assert.Equal(welch.Difference.Low, range.Difference.Low, 1e-5);
    }

    // place: strucchange and changepoint, https://pursuitofdatascience.github.io/ggchangepoint/articles/nile.html; the data from memory; the rest computed here (F agrees with R's supF, from memory)
    [Fact]
    public void The_step_of_the_Nile()
    {
        double[] x = Numbers(Nile);
        Assert.Equal(91935.0, x.Sum());
        StepTest test = StepTest.Of(x);
        Assert.Equal(28, test.After);
        Assert.Equal(75.929769, test.F, 5e-7);
        Assert.Equal(1617, test.K);
        Assert.Equal(3.59e-7, test.P, 0.005e-7);
    }

    // twelve pulls before and eight after the floor was wiped, against as many that lose a little each time
    [Fact]
    public void A_step_is_told_from_a_slope()
    {
        double[] wobble = [.. Enumerable.Range(0, 20).Select(i => 0.002 * Math.Sin(7.0 * i))];
        Assert.Equal(12, Trend([.. wobble.Select((w, i) => (i < 12 ? 0.8 : 0.72) + w)]).StepAfter);
        PullTrend slope = Trend([.. wobble.Select((w, i) => 0.8 - (0.006 * i) + w)]);
        Assert.True(slope.IsSeen);
        Assert.Null(slope.StepAfter);
        Assert.Null(Trend([.. wobble.Select(w => 0.8 + w)]).StepAfter);
    }

    // computed here
    [Fact]
    public void The_trend_of_the_Nile()
    {
        TrendTest test = TrendTest.Of(Numbers(Nile));
        Assert.Equal(-1387, test.S);
        Assert.Equal(-4.12807, test.Z, 5e-6);
        Assert.Equal(-2.6, test.Slope, 1e-9);
    }

    // Newcombe, Statistics in Medicine 17:857, 1998, table I, method 3, read second-hand; more digits and the others computed here
    [Theory]
    [InlineData(81, 263, 0.25528852, 0.36620958, 5e-9)]
    [InlineData(15, 148, 0.06238640, 0.16048724, 5e-9)]
    [InlineData(1, 29, 0.00611321, 0.17175522, 5e-9)]
    [InlineData(0, 20, 0.0, 0.1611, 5e-5)]
    [InlineData(29, 29, 0.8830, 1.0, 5e-5)]
    [InlineData(5, 10, 0.2366, 0.7634, 5e-5)]
    [InlineData(0, 10, 0.0, 0.2775, 5e-5)]
    [InlineData(18, 100, 0.1170, 0.2667, 5e-5)]
    [InlineData(540, 1000, 0.50901529, 0.57067857, 5e-9)]
    public void Share_by_Wilson(int hits, int n, double low, double high, double digit) => Holds(ShareInterval.Wilson(hits, n), low, high, digit);

    // Newcombe, Statistics in Medicine 17:873, 1998, method 10, from memory; digits computed here
    [Theory]
    [InlineData(56, 70, 48, 80, 0.05243147, 0.33387265, 5.1e-9)]
    [InlineData(9, 10, 3, 10, 0.1705, 0.8090, 5e-5)]
    [InlineData(0, 20, 0, 10, -0.2775, 0.1611, 5e-5)]
    public void Difference_of_two_shares(int a, int m, int b, int n, double low, double high, double digit) => Holds(ShareInterval.OfTwo(a, m, b, n), low, high, digit);

    // Rosetta Code, "Welch's t-test", read second-hand: two values in each group; the freedom by hand, (a + b)^2 / (a^2 + b^2) of a = 0.0022384102, b = 0.0009
    [Fact]
    public void Welch_of_two_and_two()
    {
        WelchTest test = WelchTest.Compare([1.0 / 15.0, 10.0 / 62.0], [1.0 / 10.0, 2.0 / 50.0]);
        Assert.Equal(1.692235, test.Freedom, 5e-7);
        Assert.Equal(0.52726574965384, test.P, 1e-10);
    }

    // R's power.t.test, read second-hand, counts only findings of the right sign (its strict = FALSE) at a two-sided level; it prints 16.71477 and 22.02110, but its root search stops at
    // eps^(1/4) = 1.2e-4, so that only four decimals are its own. The digits with either convention were computed here, outside of this project with 25 digits.
    [Theory]
    [InlineData(0.80, 16.71477, 16.7147598312, 16.714722447)]
    [InlineData(0.90, 22.02110, 22.0210955701, 22.0210884264)]
    public void Pulls_for_a_power_with_one_tail_or_both(double power, double printed, double oneTail, double bothTails)
    {
        Assert.Equal(printed, TTestPower.ExactCount(1.0, power, 0.05, hasFarTail: false), 1.2e-4);
        Assert.Equal(oneTail, TTestPower.ExactCount(1.0, power, 0.05, hasFarTail: false), 1e-8);
        Assert.Equal(bothTails, TTestPower.ExactCount(1.0, power), 1e-8);
    }

    /// <summary>The range by one spread pooled over all groups (Tukey 1949, Kramer 1956; from memory): Welch's test with that spread and its freedom in their place.</summary>
    internal static RangeTest Pooled(double[][] all, int first, int second)
    {
        double freedom = all.Sum(g => g.Length - 1.0);
        double variance = all.Sum(g => (g.Length - 1.0) * Sample.Variance(g)) / freedom;
        double error = Math.Sqrt((variance / all[first].Length) + (variance / all[second].Length));
        double difference = Sample.Mean(all[first]) - Sample.Mean(all[second]);
        double half = StudentT.Factor(0.95, freedom) * error;
        var pooled = new WelchTest(difference / error, freedom, StudentT.TwoSided(difference / error, freedom), new Interval(difference, difference - half, difference + half));
        return RangeTest.Of(pooled, all.Length);
    }

    private static PullTrend Trend(double[] frictions) => Assert.Single(TyreComparison.Of(
    [
        new TyreFit
        {
            Name = "a", AtRest = Interval.OfMean(frictions), IsBreakawayUnseen = true, Sliding = null, Cause = new PullCause(BindingKind.Tyre, false, double.NaN, PullReason.Dragged),
            Forces = frictions, Frictions = frictions, Load = 1.0, Pulls = frictions.Length,
        },
    ]).Trends);

    private static void Holds(PushSim.Analysis.Chance.Bounds i, double low, double high, double digit)
    {
        Assert.Equal(low, i.Low, digit);
        Assert.Equal(high, i.High, digit);
    }

    internal static double[] Numbers(string text) => [.. text.Split(' ').Select(w => double.Parse(w, System.Globalization.CultureInfo.InvariantCulture))];
}
