using PushSim.Analysis.Sweep;
using PushSim.Words.Answers;

namespace PushSim.Words.Sweeps;

/// <summary>What a sweep answers, in a sentence.</summary>
public static class SweepVerdict
{
    // Points that a sentence names one by one [1].
    private const int MostNamed = 3;

    /// <summary>What is best and how sharply, of several columns in the last one asked.</summary>
    /// <param name="inputs">The inputs.</param>
    /// <param name="table">The points and what is best.</param>
    /// <param name="odds">Drawn matches at each point; 0 for none [1].</param>
    public static string Of(IReadOnlyList<SweepInput> inputs, SweepTable table, long odds)
    {
        // of several columns the last one asked, which is the win share if matches were drawn
        int k = table.Columns.Count - 1;
        SweepColumn column = table.Columns[k];
        if (column.Key != SweepTable.WinShare && table.Points.Count > 0 && table.Points.All(p => p.HasTipped))
        {
            return "In every run a robot tips past 20 deg or loses the floor, so that none is best.";
        }

        if (column.Best is not int best)
        {
            return $"{KeyWords.Of(column.Key)} has no value at any point.";
        }

        string words = KeyWords.Of(column.Key);
        string value = PlainNumber.Of(table.Value(table.Points[best], k) ?? double.NaN, 4);
        if (table.IsSame(k))
        {
            return $"{words} is {value} at every point: these values of {string.Join(" and ", inputs.Select(i => i.Key))} make no difference to it.";
        }

        string head = $"{words} is {(column.IsHighestBest ? "highest" : "lowest")}, {value}, at {SweepWords.At(inputs, table.Points[best])}";
        if (column.Key == SweepTable.WinShare)
        {
            return head + Apart(inputs, table, odds, best) + ".";
        }

        if (column.Flatness is Optimum o)
        {
            string unit = inputs[0].Unit.Length == 0 ? "" : " " + inputs[0].Unit;
            string end = o.IsAtEnd ? "; the best lies at the end of the range, a wider one may hold a better" : "";
            return $"{head}; within 5 % of that from {PlainNumber.Of(o.Low, 4)} to {PlainNumber.Of(o.High, 4)}{unit}{end}.";
        }

        return $"{head}; {column.GoodPoints.Count} of {table.Points.Count} points {(column.GoodPoints.Count == 1 ? "is" : "are")} within 5 % of that.";
    }

    private static string Apart(IReadOnlyList<SweepInput> inputs, SweepTable table, long odds, int best)
    {
        IReadOnlyList<SweepPoint> alike = table.NotToldFrom(best);
        string which = alike.Count <= MostNamed ? string.Join("; ", alike.Select(p => SweepWords.At(inputs, p))) : $"{alike.Count} of the others";
        return alike.Count == 0 ? $"; {odds} matches tell it from all others" : $"; {odds} matches do not tell it from {which}";
    }
}
