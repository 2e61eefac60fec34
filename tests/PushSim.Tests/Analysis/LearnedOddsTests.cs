using System.Globalization;
using PushSim.Analysis.Chance;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Learning from real matches: truths are pairs that the learner never sees, drawn from the same tolerances; what it predicts of their next match must be calibrated. `PUSHSIM_LEARNED=4000` takes more of them.</summary>
public class LearnedOddsTests(ITestOutputHelper output)
{
    private const long Unseen = 1L << 30;

    [Theory]
    [InlineData("mixed", 0.3, 4)]
    [InlineData("mostly unknown", 0.5, 4)]
    [InlineData("mixed", 0.0, 12)]
    public void The_next_match_is_predicted_as_it_comes(string kind, double cut, int matches)
    {
        int truths = int.TryParse(Environment.GetEnvironmentVariable("PUSHSIM_LEARNED"), CultureInfo.InvariantCulture, out int n) ? n : 800;
        var pair = new PlausiblePair(77, kind, cut);
        PairOdds pairs = Pairs(pair);
        List<(double, bool)> learned = [];
        List<(double, bool)> before = [];
        for (int k = 0; k < truths; k++)
        {
            MatchEnd At(int t) => pair.End(Unseen + k + (t * DrawFactor.Again));
            int wins = Enumerable.Range(1, matches).Count(t => At(t).Winner == 0);
            var odds = LearnedOdds.Of(pairs, new RealResults(wins, matches - wins, 0));
            learned.Add((odds.Share.Value, At(0).Winner == 0));
            before.Add((odds.Before, At(0).Winner == 0));
        }

        (PastPredictions after, PastPredictions first) = (new(learned), new(before));
        output.WriteLine(string.Create(CultureInfo.InvariantCulture, $"{kind}, {matches} matches: Brier {after.Brier:0.0000}, expected {after.Expected:0.0000} ({after.Z:0.0} sd), before {first.Brier:0.0000}"));
        Assert.InRange(after.Z, -4.0, 4.0);
        Assert.True(after.Brier < 0.9 * first.Brier);
        Assert.All(after.Fifths.Where(f => f.Matches >= 50), f => Assert.InRange(f.Wins - (f.Predicted * f.Matches), -4.0 * Math.Sqrt(0.25 * f.Matches), 4.0 * Math.Sqrt(0.25 * f.Matches)));
    }

    [Fact]
    public void No_match_changes_nothing()
    {
        PairOdds pairs = Pairs(new PlausiblePair(5, "mixed", 0.3));
        var odds = LearnedOdds.Of(pairs, new RealResults(0, 0, 0));
        Assert.Equal(odds.Before, odds.Share.Value, 1e-12);
        Assert.Equal(pairs.Pairs.Count, odds.EffectivePairs, 1e-9);
    }

    [Fact]
    public void A_record_that_hardly_any_pair_allows_leaves_few_of_them()
    {
        PairOdds pairs = Pairs(new PlausiblePair(5, "mostly unknown", 2.0));
        Assert.True(LearnedOdds.Of(pairs, new RealResults(30, 0, 0)).EffectivePairs < LearnedOdds.LeastEffective);
    }

    // Brier's score by hand: (0.2^2 + 0.7^2) / 2
    [Fact]
    public void Score_of_two_predictions() => Assert.Equal(0.265, new PastPredictions([(0.8, true), (0.7, false)]).Brier, 1e-12);

    private static PairOdds Pairs(PlausiblePair pair) => PairOdds.Of(pair, Enumerable.Range(0, LearnedOdds.MostPairs).Select(n => pair.End(n)), LearnedOdds.MostPairs, pair, 1, most: LearnedOdds.MostPairs)!;
}
