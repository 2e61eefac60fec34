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
    /// <param name="robot">Name of the first robot.</param>
    public static string Of(IReadOnlyList<SweepInput> inputs, SweepTable table, long odds, string robot)
    {
        // of several columns the last one asked, which is the win share if matches were drawn
        int k = table.Columns.Count - 1;
        SweepColumn column = table.Columns[k];
        if (column.Key != SweepTable.WinShare && table.Points.Count > 0 && table.Points.All(p => p.HasTipped))
        {
            return "In every run a robot tips over or loses the floor, so that none is best.";
        }

        if (column.Best is not int best)
        {
            return $"{KeyWords.Of(column.Key)} has no value at any point.";
        }

        string words = KeyWords.Of(column.Key);
        double most = table.Value(table.Points[best], k) ?? double.NaN;
        string value = PlainNumber.Of(most, 4);
        if (column.Key == SweepTable.WinShare && table.IsSame(k) && most is 0.0 or 1.0)
        {
            return $"{robot} wins {(most == 1.0 ? "every drawn match at every" : "no drawn match at any")} point{Quickest(inputs, table, robot)}.";
        }

        bool isGround = column.Key is SweepTable.Ground or SweepTable.GroundRate;
        if (isGround && table.Points.Count > 1 && table.Winner is int winner)
        {
            string all = winner switch { 0 => $"{robot} wins at every point; ", 1 => $"{robot} loses at every point; ", _ => "Every point is a stalemate; " };
            return all + How(inputs, table, k, winner, winner < 0 ? robot : "it") + ".";
        }

        if (table.IsSame(k))
        {
            return $"{words} is {value} at every point: these values of {string.Join(" and ", inputs.Select(i => i.Key))} make no difference to it.";
        }

        string head = $"{words} is {(column.IsHighestBest ? "highest" : "lowest")}, {value}, at {(column.Key == SweepTable.WinShare ? SweepWords.At(inputs, table.Points[best]) : Where(inputs, table, column))}";
        if (column.Key == SweepTable.WinShare)
        {
            return head + Apart(inputs, table, odds, best) + ".";
        }

        string wins = isGround && table.Points.All(p => p.Shove is not null) ? $" {robot} wins at {table.Points.Count(p => p.Shove!.Winner == 0)} of {table.Points.Count} points." : "";
        if (column.Flatness is Optimum o)
        {
            return $"{head}{Flat(inputs[0], column, o)}.{wins}";
        }

        return $"{head}; {column.GoodPoints.Count} of {table.Points.Count} points {(column.GoodPoints.Count == 1 ? "is" : "are")} within 5 % of that.{wins}";
    }

    private static string Flat(SweepInput input, SweepColumn column, Optimum o)
    {
        string unit = input.Unit.Length == 0 ? "" : " " + input.Unit;
        string end = o.IsAtEnd && column.Alone is not null ? "; the best lies at the end of the range, a wider one may hold a better" : "";
        return $"; within 5 % of that from {PlainNumber.Of(o.Low, 4)} to {PlainNumber.Of(o.High, 4)}{unit}{end}";
    }

    // The best point, or those that tie for it
    private static string Where(IReadOnlyList<SweepInput> inputs, SweepTable table, SweepColumn column)
    {
        if (column.Alone is int alone)
        {
            return SweepWords.At(inputs, table.Points[alone]);
        }

        IEnumerable<string> named = column.Ties.Take(MostNamed).Select(t => SweepWords.At(inputs, table.Points[t]));
        string rest = column.Ties.Count > MostNamed ? $" and {column.Ties.Count - MostNamed} more" : "";
        return $"{column.Ties.Count} points that tie ({SweepWords.Ties(column.Key)}): {string.Join("; ", named)}{rest}";
    }

    // What is best among points that all end alike
    private static string How(IReadOnlyList<SweepInput> inputs, SweepTable table, int k, int winner, string robot)
    {
        SweepColumn column = table.Columns[k];
        if (table.IsSame(k))
        {
            return $"{KeyWords.Of(column.Key)} ties ({SweepWords.Ties(column.Key)}), so that none is best{(column.Key == SweepTable.Ground ? $"; --ask {SweepTable.GroundRate} tells the quickest" : "")}";
        }

        string verb = (winner, column.IsHighestBest) switch { (0, true) => "wins quickest", (0, false) => "wins slowest", (1, true) => "loses slowest", (1, false) => "loses quickest", (_, true) => "gains most", _ => "gains least" };
        string value = PlainNumber.Of(table.Value(table.Points[column.Best!.Value], k) ?? double.NaN, 3);
        string flat = column.Flatness is Optimum o ? Flat(inputs[0], column, o) : "";
        return $"{robot} {verb} at {Where(inputs, table, column)} ({value} {(column.Key == SweepTable.Ground ? "m" : "m a second")}{flat})";
    }

    private static string Quickest(IReadOnlyList<SweepInput> inputs, SweepTable table, string robot)
    {
        int k = table.Columns.Count - 2;
        return k >= 0 && table.Columns[k].Key == SweepTable.GroundRate && table.Winner is int winner && table.Points.Count > 1 ? "; without draws " + How(inputs, table, k, winner, robot) : "";
    }

    private static string Apart(IReadOnlyList<SweepInput> inputs, SweepTable table, long odds, int best)
    {
        int[] alike = [.. table.Columns[^1].Ties.Where(t => t != best)];
        string which = alike.Length <= MostNamed ? string.Join("; ", alike.Select(t => SweepWords.At(inputs, table.Points[t]))) : $"{alike.Length} of the others";
        return alike.Length == 0 ? $"; {odds} matches tell it from all others" : $"; {odds} matches do not tell it from {which}";
    }
}
