using PushSim.Analysis.Ladder;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Rankings against published worked examples.</summary>
public class RankingTests
{
    // American League East 1987: Agresti, Categorical Data Analysis, 2nd ed., table 10.11; MIL DET TOR NYY BOS CLE BAL, wins of row over column (data from memory; the fit returns every printed digit)
    private static readonly int[][] s_east =
    [
        [0, 7, 9, 7, 7, 9, 11], [6, 0, 7, 5, 11, 9, 9], [4, 6, 0, 7, 7, 8, 12], [6, 8, 6, 0, 6, 7, 10], [6, 2, 6, 7, 0, 7, 12], [4, 4, 5, 6, 6, 0, 6], [2, 4, 1, 3, 1, 7, 0],
    ];

    private static readonly PairRecord[] s_dice = [new(0, 1, 24, 12, 0), new(1, 2, 24, 12, 0), new(2, 3, 24, 12, 0), new(0, 3, 12, 24, 0), new(0, 2, 16, 20, 0), new(1, 3, 18, 18, 0)];

    // digits printed with two decimals; more from a fit computed here
    [Theory]
    [InlineData(0, 1.58135588, 0.343256)]
    [InlineData(1, 1.43640843, 0.339569)]
    [InlineData(2, 1.29448512, 0.336669)]
    [InlineData(3, 1.24761785, 0.335861)]
    [InlineData(4, 1.10769771, 0.333878)]
    [InlineData(5, 0.68385277, 0.331877)]
    public void A_published_season(int team, double strength, double error)
    {
        Ranking ranking = East();
        Assert.Equal(strength, ranking.LogStrengths[team] - ranking.LogStrengths[6], 5e-8);
        Assert.Equal(error, ranking.ErrorOfDifference(team, 6), 1e-6);
        Assert.False(ranking.HasPrior);
    }

    // 274.71 points between first and last, computed here
    [Fact]
    public void First_and_last_are_275_points_apart() => Assert.Equal(274.71, East().Score(0).Score - East().Score(6).Score, 0.01);

    // Two robots, 5 wins and 3 losses: the log odds have the error sqrt(1/5 + 1/3), each score half of it (from memory; computed here)
    [Fact]
    public void The_interval_of_a_score_is_that_of_the_log_odds()
    {
        (double score, double low, double high) = Ranking.Fit(2, [new PairRecord(0, 1, 5, 3, 0)]).Score(0);
        double perUnit = 400.0 / Math.Log(10.0);
        Assert.Equal(perUnit * 0.5 * Math.Log(5.0 / 3.0), score, 1e-8);
        double half = perUnit * 0.5 * 1.959963984540054 * Math.Sqrt((1.0 / 5.0) + (1.0 / 3.0));
        Assert.Equal((score - half, score + half), (low, high), (a, b) => Math.Abs(a.Item1 - b.Item1) < 1e-7 && Math.Abs(a.Item2 - b.Item2) < 1e-7);
    }

    // Davidson, JASA 65:317, 1970 (from memory): two robots, 5 wins, 3 losses, 2 stalemates; closed form computed here
    [Fact]
    public void Stalemates_have_a_strength_of_their_own()
    {
        Ranking ranking = FiveThreeTwo();
        Assert.Equal(Math.Log(5.0 / 3.0), ranking.LogStrengths[0] - ranking.LogStrengths[1], 1e-10);
        Assert.Equal(0.516398, ranking.StalemateFactor, 1e-6);
    }

    // Ford, Amer. Math. Monthly 64:28, 1957 (from memory): no finite estimate
    [Fact]
    public void A_robot_that_never_loses_gets_a_stated_prior()
    {
        var ranking = Ranking.Fit(3, [new PairRecord(0, 1, 10, 0, 0), new PairRecord(0, 2, 10, 0, 0), new PairRecord(1, 2, 6, 4, 0)]);
        Assert.True(ranking.HasPrior);
        Assert.True(double.IsFinite(ranking.LogStrengths[0]) && ranking.LogStrengths[0] > ranking.LogStrengths[1]);
        (double score, double low, double high) = ranking.Score(0);
        Assert.True(double.IsPositiveInfinity(high) && low < score && double.IsFinite(low));
        Assert.True(double.IsNegativeInfinity(ranking.Score(1).Low) && double.IsFinite(ranking.Score(1).High));
    }

    // n wins and n/20 more each way: odds of 21 to one, whatever n; computed here
    [Theory]
    [InlineData(10)]
    [InlineData(1000)]
    public void The_score_of_an_unbeaten_robot_does_not_grow_with_the_matches(int matches)
    {
        var ranking = Ranking.Fit(3, [new PairRecord(0, 1, matches, 0, 0), new PairRecord(0, 2, matches, 0, 0), new PairRecord(1, 2, 0.6 * matches, 0.4 * matches, 0)]);
        Assert.InRange(ranking.LogStrengths[0] - (0.5 * (ranking.LogStrengths[1] + ranking.LogStrengths[2])), 0.99 * Math.Log(21.0), 1.02 * Math.Log(21.0));

        // the two others among themselves as without a prior, to 0.04 (computed here)
        Assert.Equal(Math.Log(1.5), ranking.LogStrengths[1] - ranking.LogStrengths[2], 0.05);
    }

    // the lower end of one that never loses is one-sided: true odds as far as ten to one and 200 to one, seeds 1 to 2000
    [Theory]
    [InlineData(0.9, 20)]
    [InlineData(0.97, 40)]
    [InlineData(0.995, 40)]
    public void The_interval_of_a_score_holds_the_strength(double share, int matches)
    {
        int held = 0;
        double truth = 0.5 * Ranking.PointsPerUnit * Math.Log(share / (1.0 - share));
        for (int seed = 1; seed <= 2000; seed++)
        {
            var random = new Random(seed);
            int wins = Enumerable.Range(0, matches).Count(_ => random.NextDouble() < share);
            (_, double low, double high) = Ranking.Fit(2, [new PairRecord(0, 1, wins, matches - wins, 0)]).Score(0);
            held += low <= truth && truth <= high ? 1 : 0;
        }

        Assert.InRange(held, 1860, 2000);
    }

    // nu, or a strength against it, has no finite estimate: stalemates only; one win among stalemates; a chain of stalemates whose ends are told apart
    [Theory]
    [InlineData(2, "0 1 0 0 10")]
    [InlineData(2, "0 1 1 0 10")]
    [InlineData(3, "0 1 0 0 200, 1 2 0 0 200, 0 2 0 0 200")]
    [InlineData(3, "0 1 0 0 10, 1 2 0 0 10, 0 2 10 0 0")]
    [InlineData(3, "0 1 10 0 10, 1 2 0 0 10, 0 2 0 0 10")]
    public void Stalemates_that_leave_no_estimate_get_the_stated_prior(int robots, string matches)
    {
        PairRecord[] pairs = [.. matches.Split(", ").Select(m => m.Split(' ').Select(int.Parse).ToArray()).Select(m => new PairRecord(m[0], m[1], m[2], m[3], m[4]))];
        var ranking = Ranking.Fit(robots, pairs);
        Assert.True(ranking.HasPrior);
        Assert.All(Enumerable.Range(0, robots), i => Assert.True(ranking.Score(i).High - ranking.Score(i).Low > 1.0));
        Assert.All(Enumerable.Range(0, robots), i => Assert.InRange(ranking.LogStrengths[i], -5.0, 5.0));
        Assert.True(ranking.LogStrengths[0] >= ranking.LogStrengths[robots - 1] - 1e-9);
        Assert.True(double.IsFinite(ranking.StalemateFactor) && ranking.StalemateFactor > 0.0);
    }

    // stalemates and a win each way: told without a prior
    [Fact]
    public void A_win_each_way_among_stalemates_is_enough() => Assert.False(Ranking.Fit(2, [new PairRecord(0, 1, 1, 1, 1000)]).HasPrior);

    [Fact]
    public void A_cycle_is_named_and_leaves_the_scores_equal()
    {
        PairRecord[] pairs = [new(0, 1, 70, 30, 0), new(1, 2, 70, 30, 0), new(0, 2, 30, 70, 0)];
        Assert.All(Ranking.Fit(3, pairs).LogStrengths, s => Assert.Equal(0.0, s, 1e-10));
        Cycle cycle = Assert.Single(Cycles.Find(3, pairs));
        Assert.Equal(new Cycle(0, 1, 2, true), cycle);
        Assert.False(Assert.Single(Cycles.Find(3, [.. pairs.Select(p => p with { Wins = p.Wins / 10, Losses = p.Losses / 10 })])).IsSure);
    }

    // Efron's dice (Gardner 1970, from memory): A beats B beats C beats D beats A, each with 2/3; strengths computed here
    [Fact]
    public void Dice_hide_their_cycle_in_flat_scores()
    {
        Assert.Equal([0.2362988, 0.2498070, 0.2640873, 0.2498070], DiceShares(), (a, b) => Math.Abs(a - b) < 1e-7);
        Assert.NotEmpty(Cycles.Find(4, s_dice));
    }

    /// <summary>Strengths of the four dice, their sum 1.</summary>
    internal static double[] DiceShares()
    {
        double[] p = [.. Ranking.Fit(4, s_dice).LogStrengths.Select(Math.Exp)];
        return [.. p.Select(s => s / p.Sum())];
    }

    /// <summary>Two robots: five wins, three losses, two stalemates.</summary>
    internal static Ranking FiveThreeTwo() => Ranking.Fit(2, [new PairRecord(0, 1, 5, 3, 2)]);

    // where every pair has a winner the wins a alone tell the count of cycles, n(n-1)(2n-1)/12 - sum(a^2)/2: Kendall and Babington Smith, Biometrika 31:324, 1940 (from memory)
    [Theory]
    [InlineData(3)]
    [InlineData(4)]
    [InlineData(7)]
    [InlineData(12)]
    public void As_many_cycles_as_the_wins_alone_tell(int robots)
    {
        var random = new Random(1940 + robots);
        int most = 0;
        for (int round = 0; round < 20; round++)
        {
            List<PairRecord> pairs = EveryPair(robots, (_, _) => random.Next(2) == 0);
            double squares = Enumerable.Range(0, robots).Sum(r => Math.Pow(pairs.Count(p => (p.First == r && p.Wins > 0.0) || (p.Second == r && p.Losses > 0.0)), 2));
            int found = Cycles.Find(robots, pairs).Count;
            Assert.Equal((robots * (robots - 1.0) * ((2.0 * robots) - 1.0) / 12.0) - (0.5 * squares), found);
            most = Math.Max(most, found);
        }

        Assert.True(most > 0);
    }

    /// <summary>Five robots, each of which beats the next two.</summary>
    internal static List<PairRecord> TwoWinsEach() => EveryPair(5, (first, second) => second - first <= 2);

    private static List<PairRecord> EveryPair(int robots, Func<int, int, bool> isWon) =>
    [
        .. from first in Enumerable.Range(0, robots)
           from second in Enumerable.Range(first + 1, robots - first - 1)
           let won = isWon(first, second)
           select new PairRecord(first, second, won ? 10 : 0, won ? 0 : 10, 0),
    ];

    /// <summary>That season, fitted.</summary>
    internal static Ranking East() => Ranking.Fit(7, Pairs(s_east));

    private static List<PairRecord> Pairs(int[][] wins)
    {
        List<PairRecord> pairs = [];
        for (int i = 0; i < wins.Length; i++)
        {
            for (int j = i + 1; j < wins.Length; j++)
            {
                pairs.Add(new PairRecord(i, j, wins[i][j], wins[j][i], 0));
            }
        }

        return pairs;
    }
}
