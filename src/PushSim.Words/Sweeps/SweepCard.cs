using PushSim.Analysis.Sweep;
using PushSim.Words.Answers;
using PushSim.Words.Tables;

namespace PushSim.Words.Sweeps;

/// <summary>The answer card of a sweep.</summary>
public static class SweepCard
{
    /// <summary>The card.</summary>
    /// <param name="inputs">The inputs.</param>
    /// <param name="table">The points and what is best.</param>
    /// <param name="odds">Drawn matches at each point; 0 for none [1].</param>
    /// <param name="verdict">The whole answer.</param>
    public static AnswerCard Of(IReadOnlyList<SweepInput> inputs, SweepTable table, long odds, string verdict) => new(Clauses.First(verdict))
    {
        Facts = Clauses.Rest(verdict),
        Numbers = [.. table.Points.Count == 0 || table.Columns.Count == 0 ? [] : Numbers(inputs, table)],
        Sure = odds > 0 ? $"{odds} drawn matches at each point; values whose 95 % intervals overlap tie."
            : $"one run at each point; values {SweepWords.Ties(table.Columns.Count == 0 ? "" : table.Columns[^1].Key)} tie.",
        Next = Next(inputs, table, odds),
    };

    // the best point, and both ends of what was tried
    private static IEnumerable<CardNumber> Numbers(IReadOnlyList<SweepInput> inputs, SweepTable table)
    {
        int k = table.Columns.Count - 1;
        (int Point, string Label)[] told = [.. table.Columns[k].Best is int best ? [(best, table.Columns[k].Ties.Count > 1 ? "one of the best" : "best")] : Array.Empty<(int, string)>(), (0, "first point"), (table.Points.Count - 1, "last point")];
        foreach ((int i, string label) in told.DistinctBy(t => t.Point))
        {
            string value = table.Value(table.Points[i], k) is double v ? $"{PlainNumber.Of(v, 4)} {KeyWords.UnitOf(table.Columns[k].Key)}".TrimEnd() : "none";
            yield return new CardNumber(label, value, "", SweepWords.At(inputs, table.Points[i]));
        }
    }

    private static string Next(IReadOnlyList<SweepInput> inputs, SweepTable table, long odds)
    {
        if (table.Columns.Count == 0 || table.Columns[^1].Best is null)
        {
            return "";
        }

        return table.Columns[^1] is { Flatness.IsAtEnd: true, Alone: not null } ? $"a wider range of {inputs[0].Key} may hold a better value."
            : odds == 0 && table.Points.Any(p => p.Shove is not null) ? "--odds 200 draws matches at each point and tells the share of wins." : "";
    }
}
