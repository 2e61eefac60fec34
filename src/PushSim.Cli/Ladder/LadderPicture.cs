namespace PushSim.Cli.Ladder;

/// <summary>Square and scores of a ladder with a ranking, in its order.</summary>
internal static class LadderPicture
{
    public static PlotSheet Of(LadderResult r)
    {
        int[] order = [.. LadderTables.Order(r.Table)];
        return LadderPlot.Of(
            [.. order.Select(i => r.Robots[i])],
            [.. order.Select(i => (IReadOnlyList<double?>)[.. order.Select(j => r.Table.WinShares[i][j])])],
            [.. r.Table.Ranking.Select(x => (x.Score, x.Low, x.High))]);
    }
}
