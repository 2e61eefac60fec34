using PushSim.Words.Tables;

namespace PushSim.Plotting.Report;

/// <summary>Tables of a page. Every text goes through <see cref="HtmlText"/>.</summary>
internal sealed class TableWriter(TextWriter html)
{
    // Tables of more columns take the whole width of the page [1].
    private const int MostNarrow = 4;

    // Letters of its widest cells in a row, or of words of its head, from which on a table does not stand in half the width of a page.
    private const int MostLetters = 56;

    /// <summary>Tables beside each other, each with what is to know under it.</summary>
    public void Write(IReadOnlyList<AnswerTable> tables)
    {
        html.WriteLine("<div class=\"tables\">");
        foreach (AnswerTable table in tables)
        {
            if (table.Rows.Count > 0)
            {
                Write(table, int.MaxValue);
            }

            WriteRemarks(table);
        }

        html.WriteLine("</div>");
    }

    /// <summary>A table in a box of its own that scrolls, so that a wide one does not widen the page of a telephone. It takes the focus, so that keys can scroll it.</summary>
    /// <param name="table">The table.</param>
    /// <param name="longest">Letters of a cell that are shown [1].</param>
    public void Write(AnswerTable table, int longest)
    {
        string caption = Text(table.Caption);
        html.WriteLine($"<div class=\"scroll{(IsWide(table) ? " wide" : "")}\" tabindex=\"0\" role=\"region\" aria-label=\"{caption}\"><table><caption>{caption}</caption><thead><tr>");
        foreach ((string title, bool isNumber) in table.Columns)
        {
            html.Write($"<th scope=\"col\"{(isNumber ? " class=\"n\"" : "")}>{Text(title, PlainLabel.Longest)}</th>");
        }

        html.WriteLine("</tr></thead><tbody>");
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            html.Write($"<tr><th scope=\"row\"{(table.Columns[0].IsNumber ? " class=\"n\"" : "")}>{Text(row[0], Math.Min(longest, 200))}</th>");
            for (int i = 1; i < row.Count; i++)
            {
                html.Write($"<td{(table.Columns[i].IsNumber ? " class=\"n\"" : "")}>{Text(row[i], Math.Min(longest, 200))}</td>");
            }

            html.WriteLine("</tr>");
        }

        html.WriteLine("</tbody></table></div>");
    }

    private void WriteRemarks(AnswerTable table)
    {
        if (table.Remarks.Count == 0)
        {
            return;
        }

        html.Write("<div class=\"remarks\">");
        if (table.Rows.Count == 0)
        {
            html.Write($"<h3>{Text(table.Caption)}</h3>");
        }

        foreach ((string text, bool isAside) in table.Remarks)
        {
            html.Write($"<p{(isAside ? " class=\"aside\"" : "")}>{Text(text)}</p>");
        }

        html.WriteLine("</div>");
    }

    private static bool IsWide(AnswerTable table) => table.Columns.Count > MostNarrow || table.Remarks.Count > 0
        || Enumerable.Range(0, table.Columns.Count).Sum(i => table.Rows.Select(r => r[i].Length).Append(LongestWord(table.Columns[i].Title)).Max()) >= MostLetters;

    private static int LongestWord(string title) => title.Split(' ').Max(w => w.Length);

    private static string Text(string text, int longest = 2000) => HtmlText.Of(text, longest);
}
