namespace PushSim.Scenarios.Logs;

/// <summary>How a file separates its cells and writes its decimals, out of its first lines.</summary>
/// <param name="Separator">Character between cells; a blank stands for any run of blanks.</param>
/// <param name="HasDecimalComma">Whether decimals follow a comma.</param>
/// <param name="Columns">Cells of most lines [1].</param>
internal sealed record LogFormat(char Separator, bool HasDecimalComma, int Columns)
{
    private const int LinesLookedAt = 60;

    // Share of the lines that must agree on a separator [1].
    private const double Agree = 0.6;

    private static readonly char[] Separators = [';', '\t', '|', ','];

    /// <summary>Looks at the start of a file.</summary>
    /// <param name="text">Its first characters.</param>
    /// <param name="isWhole">Whether that is the whole file; else the last line is cut and not looked at.</param>
    public static LogFormat Of(string text, bool isWhole)
    {
        string[] all = text.Split('\n');
        string[] lines = [.. all.Take(isWhole ? all.Length : all.Length - 1).Select(l => l.TrimEnd('\r', ' ')).Where(l => l.Trim().Length > 0 && !IsComment(l, '\0')).Take(LinesLookedAt)];
        foreach (char separator in Separators)
        {
            int[] counts = [.. lines.Select(l => Cells(l, separator).Count)];
            IGrouping<int, int>? most = counts.Where(c => c > 1).GroupBy(c => c).MaxBy(g => g.Count());
            if (most is not null && most.Count() >= Agree * lines.Length)
            {
                return new LogFormat(separator, HasComma(lines, separator), most.Key);
            }
        }

        int blanks = lines.Select(l => l.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries).Length).GroupBy(c => c).MaxBy(g => g.Count())?.Key ?? 1;
        bool isSplit = lines.Length > 0 && blanks > 1;
        return new LogFormat(isSplit ? ' ' : ',', isSplit && HasComma(lines, ' '), Math.Max(1, blanks));
    }

    /// <summary>Whether a line is a remark.</summary>
    public static bool IsComment(string line, char separator)
    {
        string t = line.TrimStart();
        return t.StartsWith('#') || t.StartsWith('%') || t.StartsWith("//", StringComparison.Ordinal) || (separator != ';' && t.StartsWith(';'));
    }

    // A comma between digits in some cell, and no point between digits in any.
    private static bool HasComma(string[] lines, char separator)
    {
        bool hasComma = false;
        foreach (string cell in lines.SelectMany(l => Cells(l, separator)).Select(c => c.Trim().Trim('"').Trim()))
        {
            if (cell.Length == 0 || !cell.All(c => char.IsAsciiDigit(c) || c is ',' or '.' or '+' or '-' or '\u2212' or 'e' or 'E'))
            {
                continue;
            }

            if (cell.Contains('.'))
            {
                return false;
            }

            hasComma |= cell.Count(c => c == ',') == 1;
        }

        return hasComma;
    }

    private static List<string> Cells(string line, char separator)
    {
        List<string> cells = [];
        bool isQuoted = false;
        int from = 0;
        for (int i = 0; i < line.Length; i++)
        {
            isQuoted ^= line[i] == '"';
            if (line[i] == separator && !isQuoted)
            {
                cells.Add(line[from..i]);
                from = i + 1;
            }
        }

        cells.Add(line[from..]);
        return separator == ' ' ? [.. cells.Where(c => c.Length > 0)] : cells;
    }
}
