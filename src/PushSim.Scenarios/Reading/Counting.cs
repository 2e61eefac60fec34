using PushSim.Scenarios.Keys;

namespace PushSim.Scenarios.Reading;

/// <summary>Whole numbers that people write with a word behind: "3 cells", "3S".</summary>
internal static class Counting
{
    private const int MostDigits = 9;

    /// <summary>The number of such a text; null if the key has no words, or the text is none of these.</summary>
    public static double? Read(KeyDefinition d, string text)
    {
        string t = text.Trim();
        int digits = t.TakeWhile(char.IsAsciiDigit).Count();
        return digits is > 0 and <= MostDigits && d.CountWords.Contains(t[digits..].Trim(), StringComparer.Ordinal)
            ? int.Parse(t.AsSpan(0, digits), NumberStyles.None, CultureInfo.InvariantCulture)
            : null;
    }
}
