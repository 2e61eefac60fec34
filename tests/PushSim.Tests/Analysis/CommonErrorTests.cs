using System.Globalization;
using MathNet.Numerics.Distributions;
using PushSim.Analysis.Fit;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>What load and cell are off in all pulls alike widens a friction however many pulls there are, and cancels between tyres. JCGM 100 (GUM), section 5.2: errors in common do not average out.
/// `PUSHSIM_COMMON=20000` runs as many cases; the usual run 2000.</summary>
public class CommonErrorTests(ITestOutputHelper output)
{
    private const double True = 0.8;
    private const double Load = 13.0;

    [Theory]
    [InlineData(5, 0.02, 0.04)]
    [InlineData(12, 0.01, 0.06)]
    [InlineData(3, 0.03, 0.02)]
    public void The_interval_holds_the_truth(int readings, double scatter, double off)
    {
        int cases = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_COMMON"), CultureInfo.InvariantCulture, out int n) ? n : 2000;
        var random = new Random(311);
        int held = 0;
        for (int k = 0; k < cases; k++)
        {
            double stated = Load * (1.0 + (0.5 * off * Normal.Sample(random, 0.0, 1.0)));
            double[] forces = [.. Enumerable.Range(0, readings).Select(_ => True * Load * (1.0 + (scatter * Normal.Sample(random, 0.0, 1.0))))];
            TyreFit fit = PullFit.OfReadings("tyre", forces, [], GripLoad.Fixed(stated, off), null, isDrag: false);
            held += fit.Sliding is { } i && i.Low <= True && True <= i.High ? 1 : 0;
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{readings} readings, scatter {scatter}, common {off}: {100.0 * held / cases:0.0} % of {cases}"));
        Assert.InRange((double)held / cases, 0.93, 0.985);
    }

    // 0.8 of a load that may be 5 % off: 0.04 is left however many readings agree
    [Fact]
    public void Many_readings_do_not_make_it_smaller()
    {
        TyreFit fit = PullFit.OfReadings("tyre", [.. Enumerable.Range(0, 400).Select(i => 10.4 + (i % 2 == 0 ? 0.01 : -0.01))], [], GripLoad.Fixed(Load, 0.05), null, isDrag: false);
        Assert.Equal(0.04, 0.5 * (fit.Sliding!.Value.High - fit.Sliding.Value.Low), 1e-3);
    }

    [Fact]
    public void Between_tyres_of_one_test_it_cancels()
    {
        TyreFit Of(string name, double force, double off) => PullFit.OfReadings(name, [force - 0.1, force, force + 0.1], [], GripLoad.Fixed(Load, off), null, isDrag: false);
        TyreComparison Compare(double off) => TyreComparison.Of([Of("a", 10.4, off), Of("b", 9.4, off)]);
        Assert.Equal(Compare(0.0).Pairs[0].Adjusted, Compare(0.2).Pairs[0].Adjusted);
    }
}
