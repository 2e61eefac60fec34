using PushSim.Analysis.Ladder;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Shares, places and cycles of a ladder out of its pairs.</summary>
public class LadderTableTests
{
    [Fact]
    public void Shares_stand_on_both_sides_of_the_diagonal_and_places_follow_the_wins()
    {
        var table = LadderTable.Of(3, [new(0, 1, 10, 70, 20), new(0, 2, 5, 90, 5), new(1, 2, 40, 50, 10)]);
        Assert.Equal([[null, 0.1, 0.05], [0.7, null, 0.4], [0.9, 0.5, null]], table.WinShares);
        Assert.Equal([2, 1, 0], table.Ranking.Select(r => r.Robot));
        Assert.Equal(0.0, table.Ranking.Sum(r => r.Score), 1e-9);
        Assert.False(table.HasPrior);
    }

    // by the difference of two log strengths with its standard error: of 20 matches 11 to 9 may be chance, of 2000 1100 to 900 is not
    [Theory]
    [InlineData(11, 9, false)]
    [InlineData(1100, 900, true)]
    public void A_lead_is_sure_with_enough_matches(double wins, double losses, bool isSure) => Assert.Equal(isSure, LadderTable.Of(2, [new(0, 1, wins, losses, 0)]).IsLeadSure);

    // 1100 of 2000 are 2.2 standard errors beyond a half for one pair of two robots; for six pairs at once 2.64 are asked (Bonferroni)
    [Theory]
    [InlineData("1900 100, 1900 100, 1100 900", "1 2 3")]
    [InlineData("1900 100, 1900 100, 1010 990", "1 2 2")]
    [InlineData("1010 990, 1010 990, 1010 990", "1 1 1")]
    public void Groups_are_robots_that_the_matches_tell_apart(string matches, string groups)
    {
        double[][] m = [.. matches.Split(", ").Select(p => p.Split(' ').Select(double.Parse).ToArray())];
        var table = LadderTable.Of(3, [new(0, 1, m[0][0], m[0][1], 0), new(0, 2, m[1][0], m[1][1], 0), new(1, 2, m[2][0], m[2][1], 0)]);
        Assert.Equal(groups, string.Join(' ', table.Groups));
    }

    // two robots: the leader's rank is right with the normal probability of its lead over its error; log odds ln(1040/960), error sqrt(1/1040 + 1/960)
    [Fact]
    public void The_chance_of_a_rank_is_that_of_the_lead()
    {
        var table = LadderTable.Of(2, [new(0, 1, 1040, 960, 0)]);
        double expected = MathNet.Numerics.Distributions.Normal.CDF(0.0, 1.0, Math.Log(1040.0 / 960.0) / Math.Sqrt((1.0 / 1040.0) + (1.0 / 960.0)));
        Assert.All(table.RankChances, c => Assert.Equal(expected, c, 0.02));
    }

    // a match of Latin draws that is worth 2.5 free ones makes a score as sure as 2.5 times the matches
    [Fact]
    public void Worth_counts_as_more_matches()
    {
        var one = LadderTable.Of(2, [new(0, 1, 110, 90, 0) { Worth = 2.5 }]);
        var other = LadderTable.Of(2, [new(0, 1, 275, 225, 0)]);
        Assert.Equal(other.Ranking[0].Low, one.Ranking[0].Low, 1e-9);
    }

    [Fact]
    public void A_pair_without_a_match_leaves_no_places_but_all_cycles()
    {
        var table = LadderTable.Of(4, [new(0, 1, 90, 10, 0), new(1, 2, 90, 10, 0), new(0, 2, 10, 90, 0), new(0, 3, 0, 0, 0), new(1, 3, 5, 5, 0), new(2, 3, 5, 5, 0)]);
        Assert.Empty(table.Ranking);
        Assert.False(table.IsLeadSure);
        Assert.Equal(new Cycle(0, 1, 2, true), Assert.Single(table.Cycles));
        Assert.Null(table.WinShares[0][3]);
    }
}
