using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Logs;

/// <summary>What the text of one cell says, in the format of its file.</summary>
internal sealed class LogCells(LogFormat format)
{
    // Larger than any reading or clock, and small enough that neither a unit nor a sum of many makes it infinite [1].
    private const double Most = 1e30;

    private const NumberStyles Styles = NumberStyles.AllowLeadingSign | NumberStyles.AllowDecimalPoint | NumberStyles.AllowExponent;

    /// <summary>True for a number, a clock, or a force with its unit.</summary>
    public bool IsNumber(string cell) => TryTime(cell, out _) || Quantity.TryParse(cell, Dimension.Force, out _, out _, out _);

    /// <summary>A number without a unit, below 1e30 either way.</summary>
    public bool TryNumber(string cell, out double value)
    {
        ReadOnlySpan<char> t = cell.AsSpan().Trim();
        if (format.HasDecimalComma && t.Length < 64 && t.Contains(','))
        {
            Span<char> pointed = stackalloc char[t.Length];
            t.Replace(pointed, ',', '.');
            return double.TryParse(pointed, Styles, CultureInfo.InvariantCulture, out value) && Math.Abs(value) < Most;
        }

        return double.TryParse(t, Styles, CultureInfo.InvariantCulture, out value) && Math.Abs(value) < Most;
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
