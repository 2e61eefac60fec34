using System.Globalization;

namespace PushSim.Benchmarks.Measurements;

/// <summary>The table of figures in a page of the docs, between two marks: parts that are measured anew replace their rows, the others stay.</summary>
internal static class FigureTable
{
    private const string Begin = "<!-- figures: begin -->";
    private const string End = "<!-- figures: end -->";

    /// <summary>Puts rows into the page.</summary>
    /// <param name="page">The file.</param>
    /// <param name="form">What was measured, for the line above the table.</param>
    /// <param name="rows">The rows.</param>
    public static void Write(string page, string form, IReadOnlyList<Figure> rows)
    {
        string text = File.ReadAllText(page);
        int from = text.IndexOf(Begin, StringComparison.Ordinal) + Begin.Length;
        int to = text.IndexOf(End, StringComparison.Ordinal);
        HashSet<string> parts = [.. rows.Select(r => r.Part)];
        IEnumerable<string> kept = text[from..to].Split('\n').Where(line => line.StartsWith("| ", StringComparison.Ordinal) && !line.StartsWith("| part ", StringComparison.Ordinal) && !parts.Contains(line.Split('|')[1].Trim()));
        string[] lines =
        [
            $"Last measured {DateTime.UtcNow.ToString("yyyy-MM-dd", CultureInfo.InvariantCulture)}, {form}.", "",
            "| part | what | command | before | now | times better |", "|---|---|---|---|---|---|",
            .. kept.Concat(rows.Select(r => r.ToString())).OrderBy(l => Array.IndexOf(MeasureBench.Names, l.Split('|')[1].Trim())),
        ];
        File.WriteAllText(page, text[..from] + "\n" + string.Join('\n', lines) + "\n" + text[to..]);
    }
}
