namespace PushSim.Tests.Accuracy;

/// <summary>One outside value and what PushSim makes of it.</summary>
/// <param name="What">What is compared, in a few words; names the row.</param>
/// <param name="Unit">Unit of all values, "1" for a ratio.</param>
/// <param name="Outside">The outside value.</param>
/// <param name="Bound">Largest difference that passes, in the unit; no wider than in the test of the same quantity.</param>
/// <param name="Source">Author, title, year, place; or "computed here", "from memory", "read second-hand".</param>
/// <param name="Measure">Computes PushSim's value.</param>
internal sealed record AccuracyRow(string What, string Unit, double Outside, double Bound, string Source, Func<double> Measure)
{
    private readonly Lazy<double> _measured = new(Measure);

    /// <summary>PushSim's value, computed once.</summary>
    public double Measured => _measured.Value;

    /// <summary>Differences below this share of the outside value are printed as less than it: what the last bit of a machine's own exponential may change.</summary>
    public double Floor { get; init; } = 1e-9;

    /// <summary>Text in place of the outside value, for words that are no quantity.</summary>
    public string? OutsideText { get; init; }

    /// <summary>Text in place of PushSim's value.</summary>
    public Func<string>? MeasuredText { get; init; }
}
