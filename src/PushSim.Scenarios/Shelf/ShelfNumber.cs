namespace PushSim.Scenarios.Shelf;

/// <summary>One value of a part of the shelf.</summary>
/// <param name="Key">The key of a robot file that it stands for.</param>
/// <param name="Text">The value as a file writes it, with unit and tolerance.</param>
/// <param name="Source">Where it comes from: a source, "common practice, no source" or "estimate", with a remark.</param>
public sealed record ShelfNumber(string Key, string Text, string Source)
{
    /// <summary>How far it can be traced.</summary>
    public ShelfOrigin Origin => Source.Contains("common practice, no source", StringComparison.Ordinal) ? ShelfOrigin.CommonPractice
        : Source.Contains("estimate", StringComparison.Ordinal) ? ShelfOrigin.Estimate : ShelfOrigin.Source;

    /// <summary>Middle value in SI; null for a word [the unit of its key].</summary>
    public double? Value { get; init; }

    /// <summary>Half-width of its tolerance in SI; 0 if none is stated [the unit of its key].</summary>
    public double Tolerance { get; init; }

    /// <summary>SI unit of value and tolerance; empty for a pure number.</summary>
    public string Unit { get; init; } = "";

    // How far off it may be, in words.
    internal string Error => Text.IndexOf("×/", StringComparison.Ordinal) is >= 0 and int at ? Text[at..] : Tolerance > 0.0 ? "± " + Text.Split('±')[^1].Trim() : Value is null ? "none, a choice" : "not stated by its source";
}
