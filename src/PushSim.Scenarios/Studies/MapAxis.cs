namespace PushSim.Scenarios.Studies;

/// <summary>One axis of a stability map as text gives it: KEY=FROM..TO with a unit behind TO or behind both.</summary>
/// <param name="Key">Path of the value, "tyre.soft.body_damping" or "manoeuvre.turn".</param>
/// <param name="From">First value [the unit named].</param>
/// <param name="To">Last value [the unit named].</param>
/// <param name="Unit">Unit as typed; empty for none.</param>
public sealed record MapAxis(string Key, double From, double To, string Unit)
{
    /// <summary>Key with its unit, for axes.</summary>
    public string Title => Unit.Length == 0 ? Key : $"{Key} [{Unit}]";

    /// <summary>Reads one; null, with what is wrong, if it cannot be read.</summary>
    /// <param name="text">The text.</param>
    /// <param name="problem">What is wrong with it; empty if nothing.</param>
    public static MapAxis? Parse(string text, out string problem)
    {
        const string Form = "write it as KEY=FROM..TO, for example \"tyre.soft.body_damping=0.1..3 N s/m\"";
        problem = "";
        int equals = text.IndexOf('=', StringComparison.Ordinal);
        int dots = text.IndexOf("..", Math.Max(0, equals), StringComparison.Ordinal);
        if (equals < 1 || dots < 0)
        {
            problem = $"\"{text}\" is no range; {Form}";
            return null;
        }

        (double? from, string fromUnit) = Split(text[(equals + 1)..dots]);
        (double? to, string toUnit) = Split(text[(dots + 2)..]);
        if (from is null || to is null)
        {
            problem = $"\"{text}\" has no two numbers; {Form}";
            return null;
        }

        if (fromUnit.Length > 0 && fromUnit != toUnit)
        {
            problem = $"\"{text}\" has two units; give one, behind the last number";
            return null;
        }

        if (from == to)
        {
            problem = $"\"{text}\" begins where it ends";
            return null;
        }

        return new MapAxis(text[..equals].Trim(), from.Value, to.Value, toUnit);
    }

    /// <summary>A value as a file would have it.</summary>
    /// <param name="value">The value [the unit named].</param>
    public string TextOf(double value) => Unit.Length == 0 ? value.ToString("R", CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{value:R} {Unit}");

    private static (double? Number, string Unit) Split(string text)
    {
        text = text.Trim();
        int end = 0;
        while (end < text.Length && (char.IsAsciiDigit(text[end]) || "+-.".Contains(text[end], StringComparison.Ordinal) || IsExponent(text, end)))
        {
            end++;
        }

        bool isNumber = double.TryParse(text[..end], NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number);
        return (isNumber ? number : null, text[end..].Trim());
    }

    // "e" belongs to the number only between digits: 1e-3
    private static bool IsExponent(string text, int i) =>
        text[i] is 'e' or 'E' && i > 0 && char.IsAsciiDigit(text[i - 1]) && i + 1 < text.Length && (char.IsAsciiDigit(text[i + 1]) || text[i + 1] is '-' or '+');
}
