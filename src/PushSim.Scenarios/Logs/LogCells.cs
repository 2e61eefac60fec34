using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>What the text of one cell says, in the format of its file.</summary>
internal sealed class LogCells(LogFormat format)
{
    // Larger than any reading or clock, and small enough that neither a unit nor a sum of many makes it infinite [1].
    private const double Most = 1e30;

    // Apostrophes and blanks that do not break a line keep groups of digits apart, whatever the file; a minus sign may be a typographer's.
    private const string Odd = "'\u2019\u00A0\u202F\u2009\u2212";

    private const NumberStyles Styles = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>True for a number, a clock, or a force with its unit.</summary>
    public bool IsNumber(string cell) => TryTime(cell, out _) || (TryWithUnit(cell, out _, out string unit) && LogColumn.IsUnit(unit)) || Quantity.TryParse(cell, Dimension.Force, out _, out _, out _);

    /// <summary>A number without a unit, below 1e30 either way.</summary>
    public bool TryNumber(string cell, out double value) => TryNumber(cell.AsSpan(), out value);

    /// <summary>A number with something behind it: "15.75 g", "1.234,5gf".</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="value">The number.</param>
    /// <param name="unit">What stands behind it; empty without anything.</param>
    public bool TryWithUnit(string cell, out double value, out string unit)
    {
        ReadOnlySpan<char> t = cell.AsSpan().Trim();
        int end = t.Length;
        while (end > 0 && !char.IsAsciiDigit(t[end - 1]))
        {
            end--;
        }

        unit = t[end..].Trim().ToString();
        return TryNumber(t[..end], out value) && (unit.Length == 0 || char.IsLetter(unit[0]) || unit[0] == '%');
    }

    private bool TryNumber(ReadOnlySpan<char> cell, out double value)
    {
        ReadOnlySpan<char> t = cell.Trim();
        char decimals = format.HasDecimalComma ? ',' : '.';
        bool isPlain = t.IndexOfAny(Odd) < 0 && (format.Group == '\0' || !t.Contains(format.Group)) && (decimals == '.' || !t.Contains(decimals));
        if (isPlain || t.Length >= 64)
        {
            return double.TryParse(t, Styles, CultureInfo.InvariantCulture, out value) && Math.Abs(value) < Most;
        }

        Span<char> pointed = stackalloc char[t.Length];
        int n = 0;
        for (int i = 0; i < t.Length; i++)
        {
            char c = t[i] == '\u2212' ? '-' : t[i];
            if (c == format.Group || (Odd.Contains(c) && c != '\u2212'))
            {
                // between a digit and three more, else it is no group
                bool isGroup = n > 0 && char.IsAsciiDigit(pointed[n - 1]) && i + 3 < t.Length && char.IsAsciiDigit(t[i + 1]) && char.IsAsciiDigit(t[i + 2]) && char.IsAsciiDigit(t[i + 3]) && (i + 4 == t.Length || !char.IsAsciiDigit(t[i + 4]));
                if (!isGroup)
                {
                    value = 0.0;
                    return false;
                }

                continue;
            }

            pointed[n++] = c == decimals ? '.' : c;
        }

        return double.TryParse(pointed[..n], Styles, CultureInfo.InvariantCulture, out value) && Math.Abs(value) < Most;
    }

    /// <summary>A number, or a clock: 12:34:56.789, with a date before it or not [s, if a clock].</summary>
    public bool TryTime(string cell, out double value)
    {
        if (TryNumber(cell, out value))
        {
            return true;
        }

        string t = cell.Trim().Replace(',', '.');
        if (t.Contains(':') && TimeSpan.TryParse(t, CultureInfo.InvariantCulture, out TimeSpan span))
        {
            value = span.TotalSeconds;
            return true;
        }

        if (t.Length >= 16 && t.Contains(':') && DateTime.TryParse(t, CultureInfo.InvariantCulture, DateTimeStyles.RoundtripKind, out DateTime moment))
        {
            value = (moment - DateTime.UnixEpoch).TotalSeconds;
            return true;
        }

        return false;
    }

    /// <summary>A time with or without its own unit: "123 ms" [the column's unit].</summary>
    /// <param name="cell">The cell.</param>
    /// <param name="factor">SI per unit of the column.</param>
    /// <param name="value">The time.</param>
    public bool TryTime(string cell, double factor, out double value)
    {
        if (TryTime(cell, out value))
        {
            return true;
        }

        if (TryWithUnit(cell, out double number, out string unit) && LogColumn.TimeFactor(unit) is double own && double.IsFinite(own))
        {
            value = number * own / factor;
            return true;
        }

        return false;
    }

    /// <summary>Where a cell stands in its line [1], counting separators outside quotation marks; -1 if nowhere.</summary>
    public int Start(string raw, int index, string text)
    {
        bool isQuoted = false;
        int from = 0;
        for (int i = 0, k = 0; i < raw.Length && k < index && format.Separator != ' '; i++)
        {
            isQuoted ^= raw[i] == '"';
            if (raw[i] == format.Separator && !isQuoted)
            {
                k++;
                from = i + 1;
            }
        }

        return raw.IndexOf(text, from, StringComparison.Ordinal);
    }
}
