namespace PushSim.Cli.Ladder;

/// <summary>Square and scores of a ladder, for a file and for a page.</summary>
internal static class LadderPicture
{
    /// <summary>The picture of a ladder with a ranking.</summary>
    public static PlotSheet Of(LadderResult r) => LadderPlot.Of(Names(r), Shares(r), Scores(r));

    /// <summary>The same for a page; empty without a ranking.</summary>
    public static IReadOnlyList<ReportFigure> Figures(LadderResult r) => r.Table.Ranking.Count == 0 ? [] : LadderPlot.Figures(Names(r), Shares(r), Scores(r));

    private static string[] Names(LadderResult r) => [.. LadderTables.Order(r.Table).Select(i => r.Robots[i])];

    private static IReadOnlyList<double?>[] Shares(LadderResult r) => [.. LadderTables.Order(r.Table).Select(i => (IReadOnlyList<double?>)[.. LadderTables.Order(r.Table).Select(j => r.Table.WinShares[i][j])])];

    private static (double Score, double Low, double High)[] Scores(LadderResult r) => [.. r.Table.Ranking.Select(x => (x.Score, x.Low, x.High))];
}
