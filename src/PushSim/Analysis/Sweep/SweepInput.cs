namespace PushSim.Analysis.Sweep;

/// <summary>One input of a sweep: the texts it takes, as a file would give them, and their numbers if they have any.</summary>
/// <param name="Key">Its path, for example "drive.*.gear_ratio".</param>
/// <param name="Texts">The texts in their order.</param>
/// <param name="Numbers">The numbers of the texts in the unit written; null for names.</param>
/// <param name="Unit">That unit; empty for a pure number or names.</param>
public sealed record SweepInput(string Key, IReadOnlyList<string> Texts, IReadOnlyList<double>? Numbers, string Unit)
{
    /// <summary>Values that a list has at most [1].</summary>
    public const int MostPoints = 1000;

    /// <summary>Reads "KEY=FROM..TO" or "KEY=A,B,C".</summary>
    /// <param name="text">The text.</param>
    /// <param name="points">Points of a range, at least 2 [1].</param>
    /// <param name="input">The input.</param>
    /// <param name="fault">What is wrong with the text; null if nothing.</param>
    public static bool TryParse(string text, int points, out SweepInput? input, out SweepFault? fault)
    {
        input = null;
        fault = null;
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        string key = equals < 0 ? "" : text[..equals].Trim();
        string values = equals < 0 ? "" : text[(equals + 1)..].Trim();
        if (key.Length == 0 || values.Length == 0)
        {
            fault = new SweepFault(SweepFaultKind.Form, text);
            return false;
        }

        int dots = values.IndexOf("..", StringComparison.Ordinal);
        return dots >= 0 ? TryRange(key, values[..dots], values[(dots + 2)..], points, out input, out fault) : TryList(key, values, out input, out fault);
    }

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
        string[] texts = [.. values.Split(',').Select(t => t.Trim())];
        input = null;
        fault = texts.Any(t => t.Length == 0) ? new SweepFault(SweepFaultKind.EmptyPlace, values) : texts.Length > MostPoints ? new SweepFault(SweepFaultKind.TooMany, key) : null;
        if (fault is not null)
        {
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
