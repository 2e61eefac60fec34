namespace PushSim.Scenarios.Studies;

/// <summary>A value of the files that was found from a log.</summary>
/// <param name="Key">Its key, with * for every name.</param>
/// <param name="Unit">Its unit; empty for a pure number.</param>
/// <param name="Before">What the search began with [its unit].</param>
/// <param name="After">What it found [its unit].</param>
/// <param name="IsAtBound">Whether it stands at the end of the range that was searched, a factor of ten either way.</param>
public sealed record IdentifiedValue(string Key, string Unit, double Before, double After, bool IsAtBound)
{
    /// <summary>The value as a file has it.</summary>
    public string Text => FormattableString.Invariant($"{After:G5} {Unit}").TrimEnd();
}
