namespace PushSim.Numerics;

/// <summary>Numbers as people write them: a few digits that count, no power of ten where a plain number can be read.</summary>
public static class PlainNumber
{
    private const double Smallest = 1e-6;
    private const double Largest = 1e9;

    /// <summary>The number in invariant writing, rounded to so many significant digits; a power of ten only below a millionth and from a thousand million on.</summary>
    /// <param name="value">Any number, in any unit.</param>
    /// <param name="digits">Significant digits, 1 to 15.</param>
    public static string Of(double value, int digits)
    {
        string rounded = value.ToString("G" + digits.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
        return Math.Abs(value) is >= Smallest and < Largest ? double.Parse(rounded, CultureInfo.InvariantCulture).ToString("0.####################", CultureInfo.InvariantCulture) : rounded;
    }

    /// <summary>The number with all its digits, as it reads back to the bit; no power of ten where <see cref="Of"/> writes none.</summary>
    /// <param name="value">Any number, in any unit.</param>
    public static string Exact(double value)
    {
        string all = value.ToString("R", CultureInfo.InvariantCulture);
        return Math.Abs(value) is >= Smallest and < Largest ? decimal.Parse(all, NumberStyles.Float, CultureInfo.InvariantCulture).ToString(CultureInfo.InvariantCulture) : all;
    }

    /// <summary>A written number without the sign of a zero, "0.0" for "-0.0"; any other text as it is.</summary>
    public static string UnsignedZero(string text) => text.StartsWith("-0", StringComparison.Ordinal) && text.AsSpan(1).IndexOfAnyExcept('0', '.') < 0 ? text[1..] : text;

    /// <summary>A number with one decimal, or with as many more, up to six, as tell it from the other one that it is set against; two numbers in one unit.</summary>
    public static string Apart(double value, double other)
    {
        int decimals = 1;
        while (decimals < 6 && Fixed(value) == Fixed(other))
        {
            decimals++;
        }

        return Fixed(value);

        string Fixed(double number) => number.ToString("F" + decimals.ToString(CultureInfo.InvariantCulture), CultureInfo.InvariantCulture);
    }
}
