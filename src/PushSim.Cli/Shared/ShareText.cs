namespace PushSim.Cli.Shared;

/// <summary>A share as people write it: "5%", "5 %" or 0.05.</summary>
internal static class ShareText
{
    /// <summary>The share [1]; null where there is no text or it is no finite number.</summary>
    public static double? Read(string? text)
    {
        string t = (text ?? "").Trim();
        bool isPercent = t.EndsWith('%');
        return double.TryParse(isPercent ? t[..^1] : t, NumberStyles.Float, CultureInfo.InvariantCulture, out double value) && double.IsFinite(value) ? (isPercent ? value / 100.0 : value) : null;
    }
}
