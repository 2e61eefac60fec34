using Spectre.Console;

namespace PushSim.Cli.Shared;

/// <summary>A table on the terminal: side by side where every word fits, else row by row with each value under its own name.</summary>
internal static class ScreenTable
{
    // blanks and line between two columns [characters]
    private const int Gap = 3;

    public static void Write(IAnsiConsole console, AnswerTable table)
    {
        // its caption heads the first column
        string[] titles = [.. table.Columns.Select((c, i) => PlainText.Of(i == 0 ? table.Caption : c.Title))];
        string[][] columns = [.. titles.Select((t, i) => table.Rows.Select(r => PlainText.Of(r[i])).Append(t).ToArray())];

        // the widest columns are narrowed first, all to one width: the longest word must still fit it
        int word = columns.Max(c => c.Max(t => t.Split(' ').Max(w => w.Length)));
        int needed = columns.Sum(c => Math.Min(word, c.Max(t => t.Length)) + Gap);
        if (needed > console.Profile.Width)
        {
            WriteRowByRow(console, table, titles);
        }
        else
        {
            // where room is short, heads of values take lines below each other, so that names have it
            bool isTight = columns.Sum(c => c.Max(t => t.Length) + Gap) > console.Profile.Width;
            console.Write(SideBySide(table, !isTight ? titles : [.. titles.Select((t, i) => i == 0 ? t : Stacked(t, columns[i][..^1].Select(c => c.Length).DefaultIfEmpty().Max()))]));
        }
    }

    // as wide as its values or its longest word
    private static string Stacked(string title, int width)
    {
        string[] words = title.Split(' ');
        int most = Math.Max(width, words.Max(w => w.Length));
        List<string> lines = [words[0]];
        foreach (string word in words[1..])
        {
            if (lines[^1].Length + 1 + word.Length <= most)
            {
                lines[^1] += " " + word;
            }
            else
            {
                lines.Add(word);
            }
        }

        return string.Join('\n', lines);
    }

    private static Table SideBySide(AnswerTable table, string[] titles)
    {
        Table screen = new Table().Border(TableBorder.Minimal);
        for (int i = 0; i < titles.Length; i++)
        {
            var column = new TableColumn(new Text(titles[i]));
            screen.AddColumn(table.Columns[i].IsNumber ? column.RightAligned() : column);
        }

        string last = "";
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            // a name that heads several rows is said once
            string head = row[0] == last && !table.Columns[0].IsNumber ? "" : row[0];
            screen.AddRow(row.Select((c, i) => new Text(PlainText.Of(i == 0 ? head : c))));
            last = row[0];
        }

        return screen;
    }

    private static void WriteRowByRow(IAnsiConsole console, AnswerTable table, string[] titles)
    {
        console.WriteLine();
        foreach (IReadOnlyList<string> row in table.Rows)
        {
            CommandText.Line(console, $"{titles[0]}: {row[0]}");
            for (int i = 1; i < titles.Length; i++)
            {
                if (row[i].Length > 0)
                {
                    CommandText.Line(console, $"  {titles[i]}: {row[i]}");
                }
            }
        }

        console.WriteLine();
    }
}
