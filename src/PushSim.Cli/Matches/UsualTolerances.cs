using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Matches;

/// <summary>Which tolerances were taken because no file states one, in one line for every command with drawn matches.</summary>
internal static class UsualTolerances
{
    /// <summary>The line; empty where every drawn value has a tolerance of its own.</summary>
    /// <param name="values">What is drawn, of one contest or of several.</param>
    public static string Of(IEnumerable<TolerancedValue> values)
    {
        string[] taken = [.. values.Where(v => v.IsOfClass).Select(Text).Distinct()];
        return taken.Length == 0 ? "" : $"usual tolerances, where no file states one: {string.Join(", ", taken)}.";
    }

    /// <summary>Unit in which a person reads a drawn value, and what the value in its own unit is multiplied by.</summary>
    public static (double Scale, string Unit) Read(TolerancedValue v) => v.Unit switch
    {
        "rad" => (180.0 / Math.PI, "deg"),
        "m" => (1e3, "mm"),
        "m3" => (1e9, "mm3"),
        "N/m2" => (1e-6, "N/mm2"),
        "kg m2" => (1e7, "g cm2"),
        _ => (1.0, v.Unit),
    };

    // A key's name without the part that it is of, so that like parts are told once
    private static string Text(TolerancedValue v)
    {
        string name = v.Key[(v.Key.LastIndexOf('.') + 1)..].Replace('_', ' ');
        (double scale, string unit) = Read(v);
        return v.IsShare ? $"{name} ± {PlainNumber.Of(100.0 * v.Tolerance / Math.Abs(v.Middle), 2)} %" : $"{name} {PlainNumber.Of(scale * v.Middle, 3)} {ToleranceText.Of(scale * v.Middle, scale * v.Tolerance, v.Spread, 2)} {unit}".TrimEnd();
    }
}
