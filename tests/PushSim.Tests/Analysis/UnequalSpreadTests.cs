using System.Globalization;
using PushSim.Analysis.Statistics;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Equal tyres with unequal scatter and unequal numbers of pulls are told apart in at most 6 of 100 experiments, and plans from a pilot keep their promise in the mean.
/// `PUSHSIM_SPREADS=20000` runs as many experiments a row; the usual run 1000, with four standard deviations more.</summary>
public class UnequalSpreadTests(ITestOutputHelper output)
{
    private static readonly int s_experiments = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_SPREADS"), CultureInfo.InvariantCulture, out int n) ? n : 1000;

    [Theory]
    [InlineData("3 5 10", "1 1 1")]
    [InlineData("3 5 10", "3 1 1")]
    [InlineData("3 5 10", "5 1 0.3")]
    [InlineData("3 3 10", "3 1 1")]
    [InlineData("4 6 10", "3 1 1")]
    [InlineData("3 3 12 12", "1 1 1 1")]
    [InlineData("3 3 12 12", "5 1 0.3 1")]
    [InlineData("6 6 6 6", "5 1 0.3 1")]
    public void Equal_tyres_are_seldom_told_apart(string pulls, string scatter)
    {
        int[] n = [.. pulls.Split(' ').Select(t => int.Parse(t, CultureInfo.InvariantCulture))];
        double[] s = [.. scatter.Split(' ').Select(t => double.Parse(t, CultureInfo.InvariantCulture))];
        var random = new Random(2026);
        int wrong = 0;
        for (int k = 0; k < s_experiments; k++)
        {
            double[][] tyres = [.. n.Select((count, i) => Enumerable.Range(0, count).Select(_ => s[i] * MathNet.Numerics.Distributions.Normal.Sample(random, 0.0, 1.0)).ToArray())];
            List<double> p = [];
            for (int i = 0; i < n.Length; i++)
            {
                p.AddRange(Enumerable.Range(i + 1, n.Length - i - 1).Select(j => WelchTest.Careful(tyres[i], tyres[j]).P));
            }

            wrong += Holm.Adjust([.. p]).Any(a => a <= 0.05) ? 1 : 0;
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{pulls} pulls, scatter {scatter}: {100.0 * wrong / s_experiments:0.0} % of {s_experiments}"));
        Assert.InRange((double)wrong / s_experiments, 0.0, s_experiments >= 20_000 ? 0.06 : 0.06 + (4.0 * Math.Sqrt(0.05 * 0.95 / s_experiments)));
    }

    // over all pilots of a true scatter, by the quantiles of chi squared; more than promised comes of whole pulls
    [Theory]
    [InlineData(2, 0.5)]
    [InlineData(2, 1.0)]
    [InlineData(4, 0.5)]
    [InlineData(4, 1.0)]
    [InlineData(8, 0.5)]
    [InlineData(8, 1.0)]
    public void A_plan_from_a_pilot_keeps_its_promise(int freedom, double difference)
    {
        const int Pilots = 24;
        double found = Enumerable.Range(0, Pilots).Average(i =>
        {
            double pilot = Math.Sqrt(MathNet.Numerics.Distributions.ChiSquared.InvCDF(freedom, (i + 0.5) / Pilots) / freedom);
            return TTestPower.Of(Math.Min(TTestPower.AssuredCount(difference / pilot, 0.8, freedom), 1_000_000), difference);
        });
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{freedom} degrees of freedom, difference {difference}: {found:0.000} of 0.8"));
        Assert.InRange(found, 0.78, 0.83);
    }
}
