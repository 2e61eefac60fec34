namespace PushSim.Scenarios.Logs;

/// <summary>Takes the lines of a log apart, whatever wrote them: cells in the order of its columns. One for all that reads logs, whole files and a cell that is listened to.</summary>
internal sealed class LogSplitter(LogFormat format)
{
    private readonly List<(string Name, string Value, string Unit)> _values = [];

    /// <summary>The head where the lines name their values; null where a line of the file is it.</summary>
    public string[]? Head { get; } = format.Names is { } names ? [.. names.Select((n, i) => format.Units[i].Length > 0 && !n.Contains('[') && !n.Contains('(') ? $"{n} [{format.Units[i]}]" : n)] : null;

    /// <summary>The cells of a line; one cell where it is none of the log's lines.</summary>
    public string[] Split(string line)
    {
        string stamp = "";
        string body = line;
        if (format.HasStamp && !LogStamp.TryTake(line, out stamp, out body))
        {
            // a line without a time of arrival: the rest of the one before it
            return [line];
        }

        if (format.Names is not { } names)
        {
            List<string> cells = LogFormat.Cells(body, format.Separator);
            return [.. format.HasStamp ? cells.Prepend(stamp).Select(Unquoted) : cells.Select(Unquoted)];
        }

        if (!LabelledLine.TryParse(body, _values))
        {
            return [line];
        }

        string[] row = [.. Enumerable.Repeat("", names.Count)];
        row[0] = format.HasStamp ? stamp : "";
        foreach ((string name, string value, string unit) in _values)
        {
            int i = Find(names, name.Length > 0 ? name : "time");
            if (i >= 0)
            {
                // the unit of the column is said in its head
                row[i] = unit.Length == 0 || unit == format.Units[i] ? value : value + " " + unit;
            }
        }

        return row;
    }

    private static string Unquoted(string cell)
    {
        string t = cell.Trim();
        return t is ['"', .., '"'] ? t[1..^1].Replace("\"\"", "\"", StringComparison.Ordinal) : cell;
    }

    private static int Find(IReadOnlyList<string> names, string name)
    {
        for (int i = 0; i < names.Count; i++)
        {
            if (names[i] == name)
            {
                return i;
            }
        }

        return -1;
    }
}
