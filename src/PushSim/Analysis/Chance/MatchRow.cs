using PushSim.Binding;
using PushSim.Runs;

namespace PushSim.Analysis.Chance;

/// <summary>A match as a row of text, and read again.</summary>
internal static class MatchRow
{
    /// <summary>Columns of a match.</summary>
    public const string Columns = "match,winner,ending,ground_gained_m,end_time_s,limit,opponent_limit,cause";

    // Cells before the quoted cause [1].
    private const int Plain = 7;

    /// <summary>The row; a cause that a spreadsheet could take for a formula gets an apostrophe.</summary>
    public static string Text(in MatchEnd o, IMatchWords words)
    {
        string cause = o.HasFailed ? SafeCell.Of(words.Cause(o).ReplaceLineEndings(" ")).Replace("\"", "\"\"", StringComparison.Ordinal) : "";
        return o.HasFailed
            ? string.Create(CultureInfo.InvariantCulture, $"{o.Number},failed,,0,0,,,\"{cause}\"")
            : string.Create(CultureInfo.InvariantCulture, $"{o.Number},{Winner(o.Winner)},{Ending(o.Ending)},{o.GroundGained:R},{o.EndTime:R},{words.Key(o.Limit)},{words.Key(o.OpponentLimit)},\"\"");
    }

    /// <summary>The match of a row; null with the fault where it is none.</summary>
    public static MatchEnd? Read(ReadOnlySpan<char> row, IMatchWords words, out JournalFault fault)
    {
        Span<Range> cells = stackalloc Range[Plain + 1];
        fault = JournalFault.NoRow;
        if (row.Split(cells, ',') != cells.Length || !long.TryParse(row[cells[0]], NumberStyles.None, CultureInfo.InvariantCulture, out long number))
        {
            return null;
        }

        ReadOnlySpan<char> cause = row[cells[Plain]];
        if (cause.Length < 2 || cause[0] != '"' || cause[^1] != '"')
        {
            return null;
        }

        if (row[cells[1]] is "failed")
        {
            return MatchEnd.Failed(number, MatchFailure.Draws, Unsafe(cause[1..^1].ToString().Replace("\"\"", "\"", StringComparison.Ordinal)));
        }

        int winner = row[cells[1]] switch { "robot" => 0, "opponent" => 1, "none" => -1, _ => -2 };
        ShoveEnding? ending = row[cells[2]] switch { "line" => ShoveEnding.Line, "ground" => ShoveEnding.Ground, "tips" => ShoveEnding.Tips, "stalemate" => ShoveEnding.Stalemate, _ => null };
        if (winner == -2 || ending is null
            || !double.TryParse(row[cells[3]], NumberStyles.Float, CultureInfo.InvariantCulture, out double ground) || !double.TryParse(row[cells[4]], NumberStyles.Float, CultureInfo.InvariantCulture, out double end)
            || words.Parse(row[cells[5]].ToString()) is not BindingKind own || words.Parse(row[cells[6]].ToString()) is not BindingKind other)
        {
            return null;
        }

        if (!double.IsFinite(ground) || !double.IsFinite(end))
        {
            fault = JournalFault.NotFinite;
            return null;
        }

        return new MatchEnd(number, winner, ending.Value, ground, end, own, other);
    }

    private static string Winner(int winner) => winner switch { 0 => "robot", 1 => "opponent", _ => "none" };

    private static string Ending(ShoveEnding ending) => ending switch { ShoveEnding.Line => "line", ShoveEnding.Ground => "ground", ShoveEnding.Tips => "tips", _ => "stalemate" };

    // the apostrophe is the table's and not the cause's
    private static string Unsafe(string cause) => cause.Length > 1 && cause[0] == '\'' && SafeCell.Of(cause[1..]) == cause ? cause[1..] : cause;
}
