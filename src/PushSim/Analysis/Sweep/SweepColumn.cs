namespace PushSim.Analysis.Sweep;

/// <summary>One column of a sweep: an asked quantity or the win share.</summary>
/// <param name="Key">Its name.</param>
/// <param name="IsHighestBest">True if more is better.</param>
/// <param name="Best">Number of the best point; null if no point has a value [1].</param>
/// <param name="Flatness">Best of a curve with its range within 5 %; null for names and maps.</param>
/// <param name="GoodPoints">Numbers of the points within 5 % of the best [1].</param>
/// <param name="Ties">Numbers of the points, the best among them, that tie with it; empty if it stands alone [1].</param>
public sealed record SweepColumn(string Key, bool IsHighestBest, int? Best, Optimum? Flatness, IReadOnlyList<int> GoodPoints, IReadOnlyList<int> Ties)
{
    /// <summary>Number of the best point where none ties with it [1]; null else.</summary>
    public int? Alone => Ties.Count == 0 ? Best : null;
}
