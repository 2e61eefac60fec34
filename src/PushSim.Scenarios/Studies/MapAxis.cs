using PushSim.Analysis.Sweep;

namespace PushSim.Scenarios.Studies;

/// <summary>One axis of a stability map as text gives it: KEY=FROM..TO with a unit behind TO or behind both.</summary>
/// <param name="Key">Path of the value, "tyre.soft.body_damping" or "manoeuvre.turn".</param>
/// <param name="From">First value [the unit named].</param>
/// <param name="To">Last value [the unit named].</param>
/// <param name="Unit">Unit as typed; empty for none.</param>
public sealed record MapAxis(string Key, double From, double To, string Unit)
{
    /// <summary>Key with its unit, for scripts.</summary>
    public string Title => Unit.Length == 0 ? Key : $"{Key} [{Unit}]";

    /// <summary>The axis from end to end of a range as a sweep reads it; null of one that is no range.</summary>
    /// <param name="input">The range; any number of points.</param>
    public static MapAxis? Of(SweepInput input) => input.Numbers is { Count: > 1 } numbers ? new MapAxis(input.Key, numbers[0], numbers[^1], input.Unit) : null;

    /// <summary>A value as a file would have it.</summary>
    /// <param name="value">The value [the unit named].</param>
    public string TextOf(double value) => Unit.Length == 0 ? value.ToString("R", CultureInfo.InvariantCulture) : string.Create(CultureInfo.InvariantCulture, $"{value:R} {Unit}");
}
