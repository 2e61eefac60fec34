using CsvHelper;
using CsvHelper.Configuration;

namespace PushSim.Scenarios.Logs;

/// <summary>The rows of a whole log, remarks and empty ones left out.</summary>
internal static class LogLines
{
    /// <summary>How separated values are read: for all that reads logs.</summary>
    public static CsvConfiguration Configuration(LogFormat format) => new(CultureInfo.InvariantCulture)
    {
        Delimiter = format.Separator.ToString(),
        Mode = format.Separator == ' ' ? CsvMode.NoEscape : CsvMode.RFC4180,
        WhiteSpaceChars = [],
        BadDataFound = null,
        HasHeaderRecord = false,
        MaxFieldSize = LogRows.LongestCell,
        BufferSize = 1 << 16,
        DetectColumnCountChanges = false,
    };

    /// <summary>Reads them.</summary>
    /// <param name="text">The log.</param>
    /// <param name="format">How it keeps its cells apart.</param>
    /// <param name="splitter">Takes printed lines apart.</param>
    /// <param name="most">Rows at which reading ends [1].</param>
    public static List<LogLine> Read(string text, LogFormat format, LogSplitter splitter, int most)
    {
        List<LogLine> rows = [];
        if (format.IsPrinted)
        {
            var lines = new LineAssembler((line, number, _) => Add(new LogLine([.. splitter.Split(line).Select(c => c.Trim())], number, line)));
            lines.Push(text);
            lines.Finish();
            return rows;
        }

        using var parser = new CsvParser(new StringReader(text), Configuration(format));
        while (rows.Count <= most && parser.Read())
        {
            IEnumerable<string> cells = Enumerable.Range(0, parser.Count).Select(i => parser[i].Trim());
            Add(new LogLine([.. format.Separator == ' ' ? LogFormat.Joined(cells) : cells], parser.RawRow, parser.RawRecord));
        }

        return rows;

        void Add(LogLine row)
        {
            if (rows.Count <= most && row.Cells.Length > 0 && !LogFormat.IsComment(row.Cells[0], format.Separator) && row.Cells.Any(c => c.Length > 0))
            {
                rows.Add(row);
            }
        }
    }
}
