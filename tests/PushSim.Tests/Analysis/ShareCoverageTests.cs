using System.Globalization;
using PushSim.Analysis.Chance;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Every printed 95 % interval of shares holds the truth in 93 to 97 of 100 cases. `PUSHSIM_COVERAGE=2000` runs as many cases a row, seeds from 1 and fixed beforehand; the usual run takes 40 of each,
/// of which no fewer hold than of 40 right intervals once in a thousand rows (binomial, computed here). Too wide is no fault here: the rows tell it.</summary>
public class ShareCoverageTests(ITestOutputHelper output)
{
    private static readonly int s_cases = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_COVERAGE"), CultureInfo.InvariantCulture, out int n) ? n : 40;

    [Theory]
    [InlineData("mixed", 0.0, 1000)]
    [InlineData("mixed", 0.5, 1000)]
    [InlineData("mixed", 1.5, 1000)]
    [InlineData("mixed", 0.0, 300)]
    [InlineData("mixed", 0.3, 600)]
    [InlineData("mostly unknown", 0.0, 1000)]
    [InlineData("mostly unknown", 1.0, 2000)]
    [InlineData("one cause", 0.2, 1000)]
    [InlineData("product", 0.0, 1000)]
    public void Shares_of_wins(string kind, double cut, int matches)
    {
        double truth = new PlausiblePair(0, kind, cut).BestOf(1);
        Held($"{kind}, {matches} matches, true share {truth:0.0000}", seed =>
        {
            Tally tally = new PlausiblePair(seed, kind, cut).Drawn(matches);
            return (tally.WinInterval.Holds(truth), tally.WinInterval.HalfWidth);
        });
    }

    [Theory]
    [InlineData("mixed", 0.0, 1000)]
    [InlineData("mixed", 0.5, 2000)]
    public void Wins_less_losses(string kind, double cut, int matches)
    {
        double truth = new PlausiblePair(0, kind, cut).BestOf(1);
        Held($"lead, {kind}", seed => new PlausiblePair(seed, kind, cut).Drawn(matches).LeadInterval is var b ? (b.Holds((2.0 * truth) - 1.0), b.HalfWidth) : default);
    }

    [Theory]
    [InlineData("mixed", 0.3, 3)]
    [InlineData("mixed", 0.3, 7)]
    [InlineData("mostly unknown", 0.5, 3)]
    public void Best_of_several(string kind, double cut, int bout)
    {
        double truth = new PlausiblePair(0, kind, cut).BestOf(bout);
        Held($"best of {bout}, {kind}, true share {truth:0.0000}", seed =>
        {
            var pair = new PlausiblePair(seed, kind, cut);
            PairOdds pairs = PairOdds.Of(pair, Enumerable.Range(0, 1000).Select(n => pair.End(n)), 1000, pair, 1)!;
            PushSim.Analysis.Statistics.Interval share = pairs.BestOf(bout, pair.Drawn(1000));
            return (truth >= share.Low && truth <= share.High, 0.5 * (share.High - share.Low));
        });
    }

    [Fact]
    public void Two_designs_on_the_same_draws()
    {
        double truth = new PlausiblePair(0, "mixed", 0.2).BestOf(1) - new PlausiblePair(0, "mixed", 0.4).BestOf(1);
        Held("designs on the same draws", seed =>
        {
            (PlausiblePair one, PlausiblePair other) = (new(seed, "mixed", 0.2), new(seed, "mixed", 0.4));
            Bounds b = OddsDifference.Of(Enumerable.Range(0, 1000).Select(n => one.End(n)), Enumerable.Range(0, 1000).Select(n => other.End(n))).Bounds;
            return (b.Holds(truth), b.HalfWidth);
        });
    }

    // stopping at a look costs a little
    [Fact]
    public void Stopped_within_three_points()
    {
        double truth = new PlausiblePair(0, "mixed", 0.3).BestOf(1);
        double matches = 0.0;
        Held("--within 3 %", seed =>
        {
            var pair = new PlausiblePair(seed, "mixed", 0.3);
            var tally = Tally.Of(Campaign.Run(pair, pair, (0, 100_000), [], 0.03, 1, _ => { }, default));
            matches += (double)tally.Matches / s_cases;
            return (tally.WinInterval.Holds(truth), tally.WinInterval.HalfWidth);
        });
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"matches in the mean: {matches:0}"));
    }

    private void Held(string what, Func<ulong, (bool Holds, double HalfWidth)> one)
    {
        int held = 0;
        double width = 0.0;
        for (ulong seed = 1; seed <= (ulong)s_cases; seed++)
        {
            (bool holds, double half) = one(seed);
            held += holds ? 1 : 0;
            width += half / s_cases;
        }

        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{what}: {held} of {s_cases} held, half-width {100.0 * width:0.00} %"));
        int least = s_cases >= 2000 ? (int)Math.Ceiling(0.93 * s_cases) : Enumerable.Range(0, s_cases + 1).First(k => MathNet.Numerics.Distributions.Binomial.CDF(0.95, s_cases, k) > 0.001);
        Assert.True(held >= least, $"{held} of {s_cases}, at least {least}");
    }
}
