using PushSim.Analysis.Chance;
using PushSim.Analysis.Sweep;
using PushSim.Words.Answers;
using PushSim.Words.Tables;

namespace PushSim.Words.Sweeps;

/// <summary>A sweep as a table.</summary>
public static class SweepTables
{
    /// <summary>The points, for screen and page.</summary>
    /// <param name="inputs">The inputs.</param>
    /// <param name="sweep">The points and what is best.</param>
    /// <param name="hasOdds">Whether matches were drawn.</param>
    /// <param name="mostRows">Points that are shown [1].</param>
    public static AnswerTable Of(IReadOnlyList<SweepInput> inputs, SweepTable sweep, bool hasOdds, int mostRows)
    {
        AnswerTable table = new(inputs[0].Key);
        foreach (SweepInput input in inputs)
        {
            _ = input.Numbers is null ? table.AddColumn(input.Key) : table.AddNumberColumn(input.Key);
        }

        foreach (SweepColumn column in sweep.Columns)
        {
            table.AddNumberColumn(KeyWords.Of(column.Key));
        }

        if (hasOdds)
        {
            table.AddColumn("95 % interval");
        }

        foreach ((int number, SweepPoint point) in sweep.Points.Take(mostRows).Index())
        {
            Bounds? odds = point.Odds?.WinInterval;
            table.AddRow([
                .. inputs.Select((input, i) => input.Texts[point.Place[i]]),
                .. sweep.Columns.Select((c, k) => sweep.Value(point, k) is double v ? PlainNumber.Of(v, 5) + (c.Ties.Contains(number) ? " tie" : "") : "-"),
                .. hasOdds ? [Text($"{odds?.Low:0.000} to {odds?.High:0.000}")] : Array.Empty<string>()]);
        }

        if (sweep.Columns.Any(c => c.Ties.Count > 0))
        {
            table.AddRemark($"tie: not told from the best, {string.Join("; ", sweep.Columns.Where(c => c.Ties.Count > 0).Select(c => $"{KeyWords.Of(c.Key)} {SweepWords.Ties(c.Key)}"))}", isAside: true);
        }

        return sweep.Points.Count > mostRows ? table.AddRemark($"and {sweep.Points.Count - mostRows} more points, all in sweep.csv") : table;
    }
}
