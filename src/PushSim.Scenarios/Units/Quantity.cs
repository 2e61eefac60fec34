using PushSim.Analysis.Chance;

namespace PushSim.Scenarios.Units;

/// <summary>A number with unit, and its tolerance, in SI.</summary>
/// <param name="Value">Middle value.</param>
/// <param name="Tolerance">Half-width of the tolerance, never negative; 0 if none was given.</param>
/// <param name="Spread">How values lie within it.</param>
internal readonly record struct Quantity(double Value, double Tolerance, DrawShape Spread = DrawShape.Normal)
{
    /// <summary>Characters of a text [1]; longer ones are no quantities.</summary>
    public const int LongestText = 100;

    /// <summary>Mark of a tolerance that is a factor.</summary>
    public const string FactorMark = "x/";

    // Behind a value that nobody need doubt: no tolerance, not even the usual one.
    private const string Exact = " exact";

    private static readonly string[] PlusMinus = ["±", "+/-", "+-"];
    private static readonly string[] TimesOver = ["×/", FactorMark];

    private static readonly (string Word, DrawShape Spread)[] Spreads = [("normal", DrawShape.Normal), ("uniform", DrawShape.Uniform), ("triangular", DrawShape.Triangular)];

    /// <summary>Whether the text says that the value is exact.</summary>
    public bool IsExact { get; init; }

    /// <summary>The unit that was written; the default where none was.</summary>
    public Unit Unit { get; init; }

    /// <summary>One unit of the last digit written, in SI: 0.1 A of "3.8 A", 1 rpm of "600 rpm".</summary>
    public double LastDigit { get; init; }

    /// <summary>
    /// Reads "48 mm", "0.85 ± 0.05", "350 g ± 2 %". Numbers are read the same way in every country: a point for the
    /// decimals, no thousands separators. A percentage behind a plus-minus sign is a share of the value, unless the value is itself a
    /// percentage: then it is percentage points. A word behind a tolerance names how values lie within it. "0.005 ×/ 5" is between a fifth and five times the value. "1360 g exact" has none, not even a usual one.
    /// </summary>
    public static bool TryParse(string text, Dimension dimension, out Quantity quantity, out string message, out string help)
    {
        quantity = default;
        if (text.Length > LongestText)
        {
            (message, help) = ("this text is too long for a number with unit", Example(dimension));
            return false;
        }

        string bare = text.TrimEnd();
        bool isExact = bare.EndsWith(Exact, StringComparison.Ordinal);
        string told = isExact ? bare[..^Exact.Length] : text;
        if (Split(told, TimesOver) is ({ } middle, { } factor))
        {
            return TryFactor(middle, factor, dimension, out quantity, out message, out help);
        }

        (string left, string? right) = Split(told, PlusMinus);
        if (isExact && right is not null)
        {
            (message, help) = ("a value with a tolerance is not exact", "keep one of the two");
            return false;
        }

        if (!TryNumber(left, out double number, out string unitText, out message, out help, dimension))
        {
            return false;
        }

        if (right is null)
        {
            bool isRead = TryUnit(dimension, unitText, out Unit only, out message, out help)
                && TryFinish(number, only, 0.0, out quantity, out message);
            quantity = quantity with { IsExact = isExact, Unit = only, LastDigit = isRead ? LastDigitOf(left) * Math.Abs(only.Factor) : 0.0 };
            return isRead;
        }

        (right, DrawShape spread) = SplitSpread(right);
        if (!TryNumber(right, out double tolerance, out string toleranceUnit, out message, out help, dimension))
        {
            return false;
        }

        bool isShare = toleranceUnit == "%" && unitText != "%";
        if (!isShare && unitText.Length == 0)
        {
            unitText = toleranceUnit;
        }

        if (!TryUnit(dimension, unitText, out Unit unit, out message, out help))
        {
            return false;
        }

        Unit other = unit;
        if (!isShare && toleranceUnit.Length > 0 && !TryUnit(dimension, toleranceUnit, out other, out message, out help))
        {
            return false;
        }

        if (tolerance < 0.0)
        {
            (message, help) = ("a tolerance cannot be negative", "write \"0.85 ± 0.05\"");
            return false;
        }

        double half = isShare ? Math.Abs(number * unit.Factor) * tolerance * 0.01 : tolerance * other.Factor;
        bool isDone = TryFinish(number, unit, half, out quantity, out message);
        quantity = quantity with { Spread = spread, Unit = unit, LastDigit = LastDigitOf(left) * Math.Abs(unit.Factor) };
        return isDone;
    }

    private static bool TryFinish(double number, Unit unit, double half, out Quantity quantity, out string message)
    {
        quantity = new Quantity((number * unit.Factor) + unit.Offset, half);
        bool isFinite = double.IsFinite(quantity.Value) && double.IsFinite(half);
        message = isFinite ? "" : "this number is not finite";
        return isFinite;
    }

    // A tolerance by a factor up and down.
    private static bool TryFactor(string left, string right, Dimension dimension, out Quantity quantity, out string message, out string help)
    {
        quantity = default;
        if (!TryParse(left, dimension, out Quantity middle, out message, out help))
        {
            return false;
        }

        bool isFactor = double.TryParse(right.Trim(), NumberStyles.Float, CultureInfo.InvariantCulture, out double factor) && factor is >= 1.0 and <= 1000.0;
        if (!isFactor || middle.Value <= 0.0)
        {
            (message, help) = ("a tolerance by a factor needs a value above zero and a factor from 1 to 1000", "write \"0.005 ×/ 5\" for a fifth to five times 0.005");
            return false;
        }

        quantity = middle with { Tolerance = (factor - 1.0) * middle.Value, Spread = DrawShape.Factor };
        return true;
    }

    /// <summary>A text of a file cut at its tolerance: "0.85 ± 0.05" is "0.85", "±", "0.05"; "0.005 x/ 5" is "0.005", "x/", "5". Mark and tolerance are empty where it has none.</summary>
    public static (string Value, string Mark, string Tolerance) Cut(string text)
    {
        ArgumentNullException.ThrowIfNull(text);
        foreach (string[] signs in new[] { TimesOver, PlusMinus })
        {
            if (Split(text, signs) is (var value, { } tolerance))
            {
                return (value.TrimEnd(), signs == TimesOver ? FactorMark : PlusMinus[0], tolerance.Trim());
            }
        }

        return (text, "", "");
    }

    private static (string Left, string? Right) Split(string text, string[] signs)
    {
        foreach (string sign in signs)
        {
            int at = text.IndexOf(sign, StringComparison.Ordinal);
            if (at >= 0)
            {
                return (text[..at], text[(at + sign.Length)..]);
            }
        }

        return (text, null);
    }

    // The word behind a tolerance, with a blank before it.
    private static (string Tolerance, DrawShape Spread) SplitSpread(string text)
    {
        string trimmed = text.TrimEnd();
        foreach ((string word, DrawShape spread) in Spreads)
        {
            if (trimmed.EndsWith(" " + word, StringComparison.Ordinal))
            {
                return (trimmed[..^word.Length], spread);
            }
        }

        return (text, DrawShape.Normal);
    }

    private static bool TryNumber(string text, out double number, out string unit, out string message, out string help, Dimension dimension)
    {
        string t = text.Trim().Replace('\u2212', '-');
        int end = NumberLength(t);
        unit = t[end..].Trim();
        number = 0.0;
        (message, help) = ("", "");
        if (end == 0)
        {
            (message, help) = ($"\"{t}\" does not start with a number", Example(dimension));
            return false;
        }

        if (unit.StartsWith(',') && unit.Length > 1 && char.IsAsciiDigit(unit[1]))
        {
            (message, help) = ("a comma in a number", "use a point for the decimals and no thousands separator, for example \"1.5 mm\"");
            return false;
        }

        bool isRead = double.TryParse(t.AsSpan(0, end), NumberStyles.Float, CultureInfo.InvariantCulture, out number);
        if (!isRead || !double.IsFinite(number))
        {
            message = "this number is not finite";
            return false;
        }

        return true;
    }

    // One unit of the last digit of the number at the start of a text that was read.
    private static double LastDigitOf(string text)
    {
        string t = text.Trim().Replace('\u2212', '-');
        string[] parts = t[..NumberLength(t)].Split('e', 'E');
        int point = parts[0].IndexOf('.', StringComparison.Ordinal);
        int decimals = point < 0 ? 0 : parts[0].Length - point - 1;
        return Math.Pow(10.0, (parts.Length > 1 ? double.Parse(parts[1], CultureInfo.InvariantCulture) : 0.0) - decimals);
    }

    // Length of the number at the start of a text: sign, digits, point, digits, exponent only if digits follow.
    private static int NumberLength(string t)
    {
        int i = t.Length > 0 && t[0] is '+' or '-' ? 1 : 0;
        int digits = 0;
        bool hasPoint = false;
        for (; i < t.Length && (char.IsAsciiDigit(t[i]) || (t[i] == '.' && !hasPoint)); i++)
        {
            hasPoint |= t[i] == '.';
            digits += t[i] == '.' ? 0 : 1;
        }

        if (digits == 0)
        {
            return 0;
        }

        if (i < t.Length && t[i] is 'e' or 'E')
        {
            int j = i + 1 < t.Length && t[i + 1] is '+' or '-' ? i + 2 : i + 1;
            int first = j;
            for (; j < t.Length && char.IsAsciiDigit(t[j]); j++)
            {
            }

            i = j > first ? j : i;
        }

        return i;
    }

    private static bool TryUnit(Dimension dimension, string text, out Unit unit, out string message, out string help)
    {
        (message, help) = ("", "");
        if (UnitTable.TryFind(dimension, text, out unit))
        {
            return true;
        }

        IReadOnlyList<string> names = UnitTable.Names(dimension);
        string right = "right units here: " + string.Join(", ", names);
        if (text.Length == 0)
        {
            (message, help) = ("the unit is missing", right);
            return false;
        }

        Dimension? other = UnitTable.DimensionOf(text);
        message = other is null
            ? $"\"{text}\" is no unit known here"
            : $"\"{text}\" measures {UnitTable.BareWords(other.Value)}, but this is {UnitTable.Words(dimension)}";
        string? near = NearestWord.Find(text, UnitTable.Spellings(dimension));
        help = near is null || other is not null ? right : $"did you mean \"{near}\"? {right}";
        return false;
    }

    private static string Example(Dimension dimension)
    {
        string unit = UnitTable.Names(dimension)[dimension == Dimension.Ratio ? 0 : Math.Min(1, UnitTable.Names(dimension).Count - 1)];
        return dimension == Dimension.Ratio ? "write a number such as 0.85, or \"85 %\"" : $"write a number and a unit, for example \"12 {unit}\"";
    }
}
