using System.Security.Cryptography;

namespace PushSim.Analysis.Chance;

/// <summary>A line that closes a session of a journal: how far the part is, and SHA-256 of all lines above it, each with one line feed.</summary>
/// <param name="IsEnd">Whether all matches of the part are there.</param>
/// <param name="Matches">Matches of the campaign at that time [1].</param>
/// <param name="Rows">Rows above it [1].</param>
/// <param name="Played">Matches that the session played [1].</param>
/// <param name="Seconds">Time that they took [s].</param>
/// <param name="Hash">The hash in hexadecimal digits.</param>
internal sealed record JournalClosing(bool IsEnd, long Matches, long Rows, long Played, double Seconds, string Hash)
{
    private const string End = "# end";
    private const string SoFar = "# so far";

    /// <summary>The line.</summary>
    public string Text => string.Create(CultureInfo.InvariantCulture, $"{(IsEnd ? End : SoFar)}; matches {Matches}; rows {Rows}; played {Played}; seconds {Seconds:R}; sha256 {Hash}");

    /// <summary>Hash of what was added so far.</summary>
    public static string HashOf(IncrementalHash hash) => Convert.ToHexStringLower(hash.GetCurrentHash());

    /// <summary>The closing of a line; null if it is none.</summary>
    public static JournalClosing? Read(string line)
    {
        string[] cells = line.Split("; ");
        return cells.Length == 6 && cells[0] is End or SoFar && Whole(cells[1], "matches ") is long matches && Whole(cells[2], "rows ") is long rows && Whole(cells[3], "played ") is long played
            && cells[4].StartsWith("seconds ", StringComparison.Ordinal) && double.TryParse(cells[4].AsSpan("seconds ".Length), NumberStyles.Float, CultureInfo.InvariantCulture, out double seconds) && double.IsFinite(seconds)
            && cells[5].StartsWith("sha256 ", StringComparison.Ordinal)
            ? new JournalClosing(cells[0] == End, matches, rows, played, seconds, cells[5]["sha256 ".Length..])
            : null;
    }

    private static long? Whole(string cell, string name) =>
        cell.StartsWith(name, StringComparison.Ordinal) && long.TryParse(cell.AsSpan(name.Length), NumberStyles.None, CultureInfo.InvariantCulture, out long value) ? value : null;
}
