using PushSim.Analysis.Ladder;

namespace PushSim.Words.Matches;

/// <summary>What a ladder says.</summary>
public static class LadderWords
{
    /// <summary>How scores are found.</summary>
    public const string Method = "Davidson 1970 (Bradley and Terry's model with stalemates), greatest likelihood, 95 % Wald intervals; 400 points are odds of ten to one";

    private const int MostFailed = 20;

    /// <summary>Who leads, and whether that is sure.</summary>
    public static string Verdict(IReadOnlyList<string> names, LadderTable table)
    {
        if (table.Ranking.Count == 0)
        {
            return "Some pairs have no finished match, so there is no ranking.";
        }

        string sure = table.IsLeadSure ? "" : $", though its lead over {names[table.Ranking[1].Robot]} may be chance";
        return $"{names[table.Ranking[0].Robot]} leads the ladder{sure}; the order is {string.Join(", ", table.Ranking.Select(r => names[r.Robot]))}.{Circle(names, table)}";
    }

    /// <summary>A sure cycle of three, in a sentence with a blank before it; empty where there is none.</summary>
    internal static string Circle(IReadOnlyList<string> names, LadderTable table)
    {
        Cycle? cycle = table.Cycles.FirstOrDefault(c => c.IsSure);
        return cycle is null ? "" : $" But {names[cycle.First]} beats {names[cycle.Second]}, {names[cycle.Second]} beats {names[cycle.Third]} and {names[cycle.Third]} beats {names[cycle.First]}: no ranking shows that.";
    }

    /// <summary>What to know before believing it.</summary>
    /// <param name="table">Who beats whom.</param>
    /// <param name="failed">Matches that failed: whose, which, and why.</param>
    public static IReadOnlyList<string> Warnings(LadderTable table, IReadOnlyList<(string Pair, long Match, string Cause)> failed) =>
    [
        .. table.HasPrior ? ["some robots never lose to the rest, or hardly anything but stalemates links them, which fits any score however large; their pairs count as if one match in twenty had gone each way more, and the open end of a score is not told"] : Array.Empty<string>(),
        .. failed.Take(MostFailed).Select(f => $"match {f.Match} of {f.Pair} failed and is left out: {f.Cause}"),
    ];

    /// <summary>Matches, seed, speed and method.</summary>
    /// <param name="matches">Finished matches [1].</param>
    /// <param name="seed">The seed.</param>
    /// <param name="rate">Matches per second [1/s].</param>
    public static string Computation(long matches, ulong seed, double? rate) => Text($"{matches} matches, seed {seed}{(rate is double r ? $", {PlainNumber.Of(r, 3)} a second" : "")}; score: {Method}");
}
