using CsvHelper;
using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Notebook;

/// <summary>How one notebook is laid out: separator, decimal sign, columns, line ends.</summary>
internal sealed record NotebookHead(LogFormat Format, IReadOnlyList<NotebookColumn> Columns, int Line, string LineEnd)
{
    private const int LookedAt = 1 << 16;

    /// <summary>The head of a text: its first row that is neither empty nor a remark; null where no such row is one of a notebook.</summary>
    public static NotebookHead? Of(string text)
    {
        text = text.TrimStart('\uFEFF');
        string begin = text[..Math.Min(text.Length, LookedAt)];
        LogFormat format = LogFormat.Of(begin, begin.Length == text.Length);
        using CsvParser parser = Parser(new StringReader(text), format);
        while (parser.Read())
        {
            if (parser.Record is not { Length: > 1 } cells || IsRemark(cells))
            {
                if (parser.Record is { Length: 1 } lone && lone[0].Trim().Length > 0 && !IsRemark(lone))
                {
                    return null;
                }

                continue;
            }

            NotebookColumn[] columns = [.. cells.Select((c, i) => NotebookColumn.Of(i, c))];

            // a role twice: the first counts
            columns = [.. columns.Select((c, i) => columns.Take(i).Any(b => b.Role == c.Role) ? c with { Role = null } : c)];
            return columns.Any(c => c.Role == NotebookRole.Tyre) && columns.Count(c => c.Role is NotebookRole.State or NotebookRole.LeftOut) > 0
                ? new NotebookHead(format, columns, parser.RawRow, begin.Contains("\r\n", StringComparison.Ordinal) ? "\r\n" : "\n") : null;
        }

        return null;
    }

    /// <summary>Whether a row is a remark of the file.</summary>
    public static bool IsRemark(string[] cells) => cells[0].TrimStart().StartsWith('#');

    /// <summary>A reader of rows.</summary>
    public static CsvParser Parser(TextReader text, LogFormat format)
    {
        var rows = LogLines.Configuration(format);
        rows.IgnoreBlankLines = true;
        return new CsvParser(text, rows);
    }

    /// <summary>The column of a role.</summary>
    public NotebookColumn? Of(NotebookRole role) => Columns.FirstOrDefault(c => c.Role == role);

    /// <summary>Numbers as this file writes them: where commas separate no cells, one in a number is its decimal sign.</summary>
    public LogCells Numbers() => new(Format with { HasDecimalComma = Format.HasDecimalComma || Format.Separator != ',' });
}
