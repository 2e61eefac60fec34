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
