using PushSim.Scenarios.Keys;

namespace PushSim.Scenarios.Reading;

/// <summary>Holds a number against its key's ranges: outside the allowed one is a mistake, outside the usual one a warning.</summary>
internal static class AllowedRange
{
    /// <summary>Complains where the number is outside.</summary>
    /// <param name="context">Gathers the complaint.</param>
    /// <param name="d">The key.</param>
    /// <param name="value">The number, in the SI unit of the key.</param>
    /// <param name="place">Where it stands.</param>
    /// <param name="isPercent">Whether a percent sign stands behind it.</param>
    /// <returns>Whether it is allowed.</returns>
    public static bool Check(ReadContext context, KeyDefinition d, double value, Place place, bool isPercent = false)
    {
        // a bound written in other units may round by a last digit
        double slack = 1e-12 * Math.Abs(value);
        if (value >= d.Min - slack && value <= d.Max + slack)
        {
            if (value < d.UsualMin - slack || value > d.UsualMax + slack)
            {
                (string shown, string least, string most) = KeyText.InMessage(d, value, d.UsualMin, d.UsualMax);
                context.Warning(place, $"\"{d.Name}\" is {shown}, which is unusual for a small robot", $"usual: {least} to {most}");
            }

            return true;
        }

        (string text, string min, string max) = KeyText.InMessage(d, value, d.Min, d.Max);
        context.Error(place, $"\"{d.Name}\" is {text}, outside the allowed range", !isPercent && d.Dimension == Units.Dimension.Ratio && d.Max == 1.0 && value is > 1.0 and <= 100.0 ? FormattableString.Invariant($"a share is written \"{value:G6} %\" or {value / 100.0:G6}; allowed: {min} to {max}") : $"allowed: {min} to {max}");
        return false;
    }
}
