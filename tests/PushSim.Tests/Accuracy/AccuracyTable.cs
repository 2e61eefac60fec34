namespace PushSim.Tests.Accuracy;

/// <summary>Every group of the page, in its order.</summary>
internal static class AccuracyTable
{
    public static readonly (string Title, AccuracyRow[] Rows)[] Groups =
    [
        ("Solvers", SolverRows.All),
        ("Motors and batteries", PowertrainRows.All),
        ("Tyres", TyreRows.All),
        ("Robot and contact", RobotRows.All),
        ("Statistics", StatisticsRows.All),
        ("Ranking", RankingRows.All),
        ("Random numbers and sensitivity", ChanceRows.All),
        ("Against measurements", MeasuredRows.All),
    ];

    public static IEnumerable<AccuracyRow> Rows => Groups.SelectMany(g => g.Rows);
}
