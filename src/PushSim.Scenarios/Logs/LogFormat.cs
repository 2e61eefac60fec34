using System.Text.RegularExpressions;

namespace PushSim.Scenarios.Logs;

/// <summary>How a file separates its cells and writes its numbers, out of its first lines.</summary>
/// <param name="Separator">Character between cells; a blank stands for any run of blanks.</param>
/// <param name="HasDecimalComma">Whether decimals follow a comma.</param>
/// <param name="Columns">Cells of most lines [1].</param>
internal sealed partial record LogFormat(char Separator, bool HasDecimalComma, int Columns)
{
    private const int LinesLookedAt = 60;

    // Share of the lines that must agree on a separator, on names before values, on a time of arrival [1].
    private const double Agree = 0.6;

    // and of the lines that name values [1].
    private const double AgreeOnNames = 0.8;

    private static readonly char[] Separators = [';', '\t', '|', ','];

    /// <summary>Sign between groups of three digits: "1.234,5", "1,234.5"; a zero if none is. An apostrophe and a narrow blank always are.</summary>
    public char Group { get; init; }

    /// <summary>Whether a terminal program wrote the time of arrival before each line: the first cell of each.</summary>
    public bool HasStamp { get; init; }

    /// <summary>Names of the values where each line names them ("Weight: 12.3 g"), the time of arrival first; null where a head does, or nothing.</summary>
    public IReadOnlyList<string>? Names { get; init; }

    /// <summary>Unit that the first line has behind each of these; empty without one.</summary>
    public IReadOnlyList<string> Units { get; init; } = [];

    /// <summary>Whether lines must be taken apart by <see cref="LogSplitter"/>, which no reader of separated values could.</summary>
    public bool IsPrinted => HasStamp || Names is not null;

    /// <summary>Looks at the start of a file.</summary>
    /// <param name="text">Its first characters.</param>
    /// <param name="isWhole">Whether that is the whole file; else the last line is cut and not looked at.</param>
    public static LogFormat Of(string text, bool isWhole)
    {
        string[] all = text.Split('\n');
        string[] lines = [.. all.Take(isWhole ? all.Length : all.Length - 1).Select(l => l.TrimEnd('\r', ' ')).Where(l => l.Trim().Length > 0 && !IsComment(l, '\0')).Take(LinesLookedAt)];
        int stamped = lines.Count(l => LogStamp.TryTake(l, out _, out _));
        bool hasStamp = stamped > 0 && stamped >= Agree * lines.Length;
        string[] bodies = hasStamp ? [.. lines.Select(l => LogStamp.TryTake(l, out _, out string body) ? body : l).Where(l => l.Trim().Length > 0)] : lines;
        LogFormat format = Labelled(bodies, hasStamp) ?? Separated(bodies);
        return format with { HasStamp = hasStamp, Columns = format.Columns + (hasStamp && format.Names is null ? 1 : 0) };
    }

    /// <summary>Whether a line is a remark.</summary>
    public static bool IsComment(string line, char separator)
    {
        string t = line.TrimStart();
        return t.StartsWith('#') || t.StartsWith('%') || t.StartsWith("//", StringComparison.Ordinal) || (separator != ';' && t.StartsWith(';'));
    }

    /// <summary>The cells of a line, quotation marks kept; between blanks a unit belongs to the number before it.</summary>
    public static List<string> Cells(string line, char separator)
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
        return separator == ' ' ? Joined(cells) : cells;
    }

    /// <summary>Cells between blanks: empty ones are none, and a unit belongs to the number or the name before it.</summary>
    public static List<string> Joined(IEnumerable<string> cells)
    {
        List<string> joined = [];
        foreach (string cell in cells)
        {
            if (cell.Length == 0)
            {
                continue;
            }

            bool isUnit = joined.Count > 0 && (char.IsAsciiDigit(joined[^1][^1]) ? char.IsLetter(cell[0]) && LogColumn.IsUnit(cell) : cell is ['[' or '(', .., ']' or ')'] && char.IsLetter(joined[^1][^1]));
            if (isUnit)
            {
                joined[^1] += " " + cell;
            }
            else
            {
                joined.Add(cell);
            }
        }

        return joined;
    }

    private static LogFormat? Labelled(string[] lines, bool hasStamp)
    {
        List<(string Name, string Value, string Unit)> values = [];
        List<(string Names, (string Name, string Value, string Unit)[] Values)> parsed = [];
        foreach (string line in lines)
        {
            if (LabelledLine.TryParse(line, values))
            {
                parsed.Add((string.Join('\n', values.Select(v => v.Name)), [.. values]));
            }
        }

        // lines that name different things ("soft: 12.3 N", "hard: 9.1 N") are rows of a table
        IGrouping<string, (string Names, (string Name, string Value, string Unit)[] Values)>? most = parsed.GroupBy(p => p.Names).MaxBy(g => g.Count());
        if (most is null || most.Count() < Agree * lines.Length || most.Count() < AgreeOnNames * parsed.Count)
        {
            return null;
        }

        // once more over other lines too: some values may come every second line only
        List<(string Name, string Unit)> columns = hasStamp ? [(LogStamp.Name, "")] : [];
        foreach ((string name, string _, string unit) in most.First().Values.Concat(parsed.SelectMany(p => p.Values)))
        {
            // what stands before the first name is the time
            string own = name.Length > 0 ? name : "time";
            if (!columns.Any(c => c.Name == own))
            {
                columns.Add((own, unit));
            }
        }

        string[] cells = [.. parsed.SelectMany(p => p.Values).Select(v => v.Value)];
        return new LogFormat(',', HasComma(cells), columns.Count) { Names = [.. columns.Select(c => c.Name)], Units = [.. columns.Select(c => c.Unit)], Group = GroupOf(cells) };
    }

    private static LogFormat Separated(string[] lines)
    {
        foreach (char separator in Separators)
        {
            int[] counts = [.. lines.Select(l => Cells(l, separator).Count)];
            IGrouping<int, int>? most = counts.Where(c => c > 1).GroupBy(c => c).MaxBy(g => g.Count());
            if (most is not null && most.Count() >= Agree * lines.Length && !(separator == ',' && most.Key == 2 && IsOneNumber(lines)))
            {
                return Numbers(lines, separator, most.Key);
            }
        }

        int blanks = lines.Select(l => Joined(l.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)).Count).GroupBy(c => c).MaxBy(g => g.Count())?.Key ?? 1;
        bool isSplit = lines.Length > 0 && (blanks > 1 || lines.Any(l => !l.Contains(',') && l.Trim().Any(char.IsWhiteSpace)) || IsOneNumber(lines));
        return isSplit ? Numbers(lines, ' ', Math.Max(1, blanks)) : new LogFormat(',', false, Math.Max(1, blanks));
    }

    private static LogFormat Numbers(string[] lines, char separator, int columns)
    {
        string[] cells = [.. lines.SelectMany(l => Cells(l, separator)).Select(c => c.Trim().Trim('"').Trim())];
        return new LogFormat(separator, HasComma(cells), columns)
        {
            // whole numbers beside 1.234 mean thousands only where they stand in the same column
            Group = Enumerable.Range(0, columns).Select(i => GroupOf([.. lines.Select(l => Cells(l, separator)).Where(c => c.Count > i).Select(c => c[i].Trim().Trim('"').Trim())])).FirstOrDefault(g => g != '\0'),
        };
    }

    // Lines of one number with a comma in it: "12,34" and "1,234.5". Two columns of whole numbers look like the first, but then one of them is a time that rises.
    private static bool IsOneNumber(string[] lines)
    {
        string[] numbers = [.. lines.Where(l => l.Any(char.IsAsciiDigit))];
        bool hasHead = lines.Any(l => !l.Any(char.IsAsciiDigit) && l.Contains(','));
        if (hasHead || numbers.Length < 3 || !numbers.All(l => OneNumber().IsMatch(l)))
        {
            return false;
        }

        double[] first = [.. numbers.Select(l => double.TryParse(l.Trim().Split(',', '.')[0], NumberStyles.Float, CultureInfo.InvariantCulture, out double v) ? v : 0.0)];
        bool isGrouped = numbers.All(l => !l.Contains(',') || Grouped().IsMatch(l.Trim().Split(' ')[0]));
        bool rises = first.Zip(first.Skip(1)).All(p => p.Second > p.First);
        bool isEven = numbers.Select(l => l.Trim().Split(' ')[0]).Where(l => l.Contains(',')).Select(l => l.Length - l.IndexOf(',', StringComparison.Ordinal)).Distinct().Count() <= 1;
        return numbers.Any(l => PointsThenComma().IsMatch(Bare(l.Trim()).Trim())) || (isGrouped && numbers.Any(l => l.Contains('.') && l.Contains(','))) || (isEven && !rises && numbers.All(l => !l.Contains('.')));
    }

    // A comma between digits in some cell, and no point between digits in any.
    private static bool HasComma(string[] cells)
    {
        bool hasComma = false;
        foreach (string text in cells)
        {
            string cell = Bare(text);
            if (cell.Length == 0 || !cell.All(c => char.IsAsciiDigit(c) || c is ',' or '.' or '+' or '-' or '\u2212' or 'e' or 'E'))
            {
                continue;
            }

            if (PointsThenComma().IsMatch(cell))
            {
                return true;
            }

            if (cell.Contains('.') && !WholeInThrees().IsMatch(cell))
            {
                return false;
            }

            hasComma |= cell.Count(c => c == ',') == 1 && !CommasThenPoint().IsMatch(cell);
        }

        return hasComma && GroupOf(cells) != ',';
    }

    // "1.234,5" or "1,234.5" somewhere; else whole numbers below and above a thousand: "998", "1.002"
    private static char GroupOf(string[] cells)
    {
        string[] bare = [.. cells.Select(Bare).Where(c => c.Length > 0 && (char.IsAsciiDigit(c[^1])))];
        if (bare.Any(c => PointsThenComma().IsMatch(c)))
        {
            return '.';
        }

        if (bare.Any(c => CommasThenPoint().IsMatch(c)))
        {
            return ',';
        }

        foreach (char sign in (char[])['.', ','])
        {
            string[] signed = [.. bare.Where(c => c.Contains(sign))];
            bool areWhole = signed.Length > 0 && signed.All(c => WholeInThrees().IsMatch(c)) && bare.Any(c => c.TrimStart('-', '+').Length is > 0 and <= 3 && c.TrimStart('-', '+').All(char.IsAsciiDigit) && c != "0")
                && bare.All(c => !c.Contains(sign == '.' ? ',' : '.'));
            if (areWhole)
            {
                return sign;
            }
        }

        return '\0';
    }

    // a number without the unit behind it
    private static string Bare(string cell)
    {
        int end = cell.Length;
        while (end > 0 && !char.IsAsciiDigit(cell[end - 1]))
        {
            end--;
        }

        return end > 0 && end < cell.Length && LogColumn.IsUnit(cell[end..]) ? cell[..end] : cell;
    }

    [GeneratedRegex(@"^[-+]?\d{1,3}(\.\d{3})+,\d+$")]
    private static partial Regex PointsThenComma();

    [GeneratedRegex(@"^[-+]?\d{1,3}(,\d{3})+\.\d+$")]
    private static partial Regex CommasThenPoint();

    [GeneratedRegex(@"^[-+]?[1-9]\d{0,2}([.,]\d{3})+$")]
    private static partial Regex WholeInThrees();

    [GeneratedRegex(@"^[-+]?\d{1,3}(,\d{3})*(\.\d+)?$")]
    private static partial Regex Grouped();

    [GeneratedRegex(@"^\s*[-+]?\d[\d.,]*(\s*[\p{L}]+)?\s*$")]
    private static partial Regex OneNumber();
}
