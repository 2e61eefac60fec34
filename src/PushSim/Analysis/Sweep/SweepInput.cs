using System.Text.RegularExpressions;

namespace PushSim.Analysis.Sweep;

/// <summary>One input of a sweep: the texts it takes, as a file would give them, and their numbers if they have any.</summary>
/// <param name="Key">Its path, for example "drive.*.gear_ratio".</param>
/// <param name="Texts">The texts in their order.</param>
/// <param name="Numbers">The numbers of the texts in the unit written; null for names.</param>
/// <param name="Unit">That unit; empty for a pure number or names.</param>
public sealed record SweepInput(string Key, IReadOnlyList<string> Texts, IReadOnlyList<double>? Numbers, string Unit)
{
    private static readonly char[] s_quotes = ['"', '\''];

    // "10-40", "10 to 40", "1kg - 2kg": two numbers with a dash or a word between
    private static readonly Regex s_dashed = new(@"^(?<from>[\d.]+ ?(?<unit>(?![eE]-)[^\d\s.,:-]*))\s*(?:-|–|to\b)\s*(?<to>[\d.]+ ?(?<last>[^\d\s.,:-]*))$", RegexOptions.CultureInvariant);

    /// <summary>Values that a list has at most [1].</summary>
    public const int MostPoints = 1000;

    /// <summary>Reads "KEY=FROM..TO" or "KEY=A,B,C"; a list may stand in brackets, and a name with a comma in quotes: KEY=["A, B", C].</summary>
    /// <param name="text">The text.</param>
    /// <param name="points">Points of a range, at least 2 [1].</param>
    /// <param name="input">The input.</param>
    /// <param name="fault">What is wrong with the text; null if nothing.</param>
    public static bool TryParse(string text, int points, out SweepInput? input, out SweepFault? fault)
    {
        bool isRead = TryParse([text], _ => points, out IReadOnlyList<SweepInput> inputs, out fault);
        input = isRead ? inputs[0] : null;
        return isRead;
    }

    /// <summary>Reads the texts of all inputs. Where several texts have one key each is one whole value, whatever commas it holds.</summary>
    /// <param name="texts">The texts.</param>
    /// <param name="points">Points of a range by the count of different keys, at least 2 [1].</param>
    /// <param name="inputs">The inputs, one for each key, in the order in which the keys first come.</param>
    /// <param name="fault">What is wrong with the texts; null if nothing.</param>
    public static bool TryParse(IReadOnlyList<string> texts, Func<int, int> points, out IReadOnlyList<SweepInput> inputs, out SweepFault? fault)
    {
        inputs = [];
        List<(string Key, string Values)> pairs = [];
        foreach (string text in texts)
        {
            int equals = text.IndexOf('=', StringComparison.Ordinal);
            (string key, string values) = equals < 0 ? ("", "") : (text[..equals].Trim(), text[(equals + 1)..].Trim());
            if (key.Length == 0 || values.Length == 0)
            {
                fault = new SweepFault(SweepFaultKind.Form, text);
                return false;
            }

            pairs.Add((key, values));
        }

        IGrouping<string, string>[] keys = [.. pairs.GroupBy(p => p.Key, p => p.Values)];
        List<SweepInput> read = [];
        foreach (IGrouping<string, string> key in keys)
        {
            string[] values = [.. key];
            SweepInput? input;
            if (!(values.Length == 1 ? TryOne(key.Key, values[0], points(keys.Length), out input, out fault) : TryWhole(key.Key, values, out input, out fault)))
            {
                return false;
            }

            read.Add(input!);
        }

        inputs = read;
        fault = null;
        return true;
    }

    private static bool TryOne(string key, string values, int points, out SweepInput? input, out SweepFault? fault)
    {
        int dots = values.IndexOf("..", StringComparison.Ordinal);
        bool isRange = dots >= 0 && values.IndexOfAny(s_quotes) < 0 && values[0] != '[';
        return isRange ? TryRange(key, values[..dots], values[(dots + 2)..], points, out input, out fault) : TryList(key, values, out input, out fault);
    }

    // One value a text.
    private static bool TryWhole(string key, string[] texts, out SweepInput? input, out SweepFault? fault)
    {
        input = null;
        fault = Array.Find(texts, t => t[0] == '[' || TryRange(key, t, 2)) is string several ? new SweepFault(SweepFaultKind.Again, $"{key}={several}") : null;
        if (fault is not null)
        {
            return false;
        }

        // quotes around the whole are no part of it
        return TryTexts(key, [.. texts.Select(t => t.Length > 1 && s_quotes.Contains(t[0]) && t.IndexOf(t[0], 1) == t.Length - 1 ? t[1..^1].Trim() : t)], string.Join(", ", texts), out input, out fault);
    }

    private static bool TryRange(string key, string text, int points) =>
        text.IndexOf("..", StringComparison.Ordinal) is int dots and > 0 && TryRange(key, text[..dots], text[(dots + 2)..], points, out _, out _);

    private static bool TryRange(string key, string from, string to, int points, out SweepInput? input, out SweepFault? fault)
    {
        input = null;
        (double? first, string firstUnit) = Split(from);
        (double? last, string lastUnit) = Split(to);
        if (first is null || last is null || first == last)
        {
            fault = new SweepFault(SweepFaultKind.Range, $"{from.Trim()}..{to.Trim()}");
            return false;
        }

        string unit = lastUnit.Length > 0 ? lastUnit : firstUnit;
        if (firstUnit.Length > 0 && firstUnit != unit)
        {
            fault = new SweepFault(SweepFaultKind.Units, $"{from.Trim()}..{to.Trim()}");
            return false;
        }

        double[] numbers = [.. Enumerable.Range(0, points).Select(i => Round(first.Value + ((last.Value - first.Value) * i / (points - 1)), last.Value - first.Value))];
        input = new SweepInput(key, [.. numbers.Select(n => Write(n, unit))], numbers, unit);
        fault = null;
        return true;
    }

    private static bool TryList(string key, string values, out SweepInput? input, out SweepFault? fault)
    {
        input = null;
        return TryItems(values, out string[] texts, out fault) && TryTexts(key, texts, values, out input, out fault);
    }

    // A list, in brackets or not, whose items may stand in quotes.
    private static bool TryItems(string values, out string[] items, out SweepFault? fault)
    {
        items = [];
        bool isOpen = values[0] == '[';
        if (isOpen && values[^1] != ']')
        {
            fault = new SweepFault(SweepFaultKind.Bracket, values);
            return false;
        }

        string text = isOpen ? values[1..^1] : values;
        List<string> found = [];
        for (int at = 0; at <= text.Length; at++)
        {
            while (at < text.Length && text[at] == ' ')
            {
                at++;
            }

            char quote = at < text.Length && s_quotes.Contains(text[at]) ? text[at] : '\0';
            int close = quote == '\0' ? at : text.IndexOf(quote, at + 1);
            int comma = close < 0 ? -1 : text.IndexOf(',', close);
            int end = comma < 0 ? text.Length : comma;
            if (close < 0 || (quote != '\0' && text[(close + 1)..end].Trim().Length > 0))
            {
                fault = new SweepFault(SweepFaultKind.Quote, values);
                return false;
            }

            found.Add(quote == '\0' ? text[at..end].Trim() : text[(at + 1)..close].Trim());
            at = end;
        }

        items = [.. found];
        fault = null;
        return true;
    }

    private static bool TryTexts(string key, string[] texts, string values, out SweepInput? input, out SweepFault? fault)
    {
        input = null;
        fault = texts.Any(t => t.Length == 0) ? new SweepFault(SweepFaultKind.EmptyPlace, values) : texts.Length > MostPoints ? new SweepFault(SweepFaultKind.TooMany, key) : null;
        if (fault is not null)
        {
            return false;
        }

        if (texts is [string only] && s_dashed.Match(only) is { Success: true } dashed
            && (dashed.Groups["unit"].Length == 0
                || dashed.Groups["last"].Length > 0))
        {
            string from = dashed.Groups["from"].Value.Trim();
            string to = dashed.Groups["to"].Value;
            fault = new SweepFault(SweepFaultKind.Dash, $"{key}={from}..{to}");
            return false;
        }

        (double? Number, string Unit)[] split = [.. texts.Select(Split)];
        string unit = split[^1].Unit;
        bool isNumeric = split.All(s => s.Number is not null && (s.Unit.Length == 0 || s.Unit == unit));
        double[] rising = isNumeric ? [.. split.Select(s => s.Number!.Value).Order()] : [];
        input = isNumeric
            ? new SweepInput(key, [.. rising.Select(n => Write(n, unit))], rising, unit)
            : new SweepInput(key, texts, null, "");
        return true;
    }

    // 0.30000000000000004 is of no use to a reader
    private static double Round(double value, double span)
    {
        int digits = Math.Clamp(5 - (int)Math.Floor(Math.Log10(Math.Abs(span))), 0, 15);
        return Math.Round(value, digits);
    }

    private static string Write(double number, string unit)
    {
        string text = number.ToString("R", CultureInfo.InvariantCulture);
        return unit.Length == 0 ? text : $"{text} {unit}";
    }

    // The longest number at the start, and what follows it.
    private static (double? Number, string Unit) Split(string text)
    {
        string t = text.Trim();
        for (int end = t.Length; end > 0; end--)
        {
            if (char.IsAsciiDigit(t[end - 1]) | t[end - 1] == '.' && double.TryParse(t[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number))
            {
                return (number, t[end..].Trim());
            }
        }

        return (null, t);
    }
}
