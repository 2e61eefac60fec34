using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Editing;

/// <summary>One value that a person may change: its key, words, text, range and where it comes from.</summary>
/// <param name="Owner">Whose it is: "robot", "opponent" or, of the scenario itself, nothing.</param>
/// <param name="Path">Its path in its file, for example "tyre.soft.static_friction".</param>
/// <param name="Definition">Its row of the key table.</param>
/// <param name="Text">The value as the file has it, without quotes; of a default as it would be written.</param>
public sealed record EditRow(string Owner, string Path, KeyDefinition Definition, string Text)
{
    /// <summary>Unit of <see cref="Value"/> and of the range: that of the text; empty for a pure number.</summary>
    public string Unit { get; init; } = "";

    /// <summary>Middle value [<see cref="Unit"/>]; null for a word or a switch.</summary>
    public double? Value { get; init; }

    /// <summary>Half-width of the tolerance [<see cref="Unit"/>]; 0 for none.</summary>
    public double Tolerance { get; init; }

    /// <summary>Lower end of what a slider shows [<see cref="Unit"/>].</summary>
    public double? Low { get; init; }

    /// <summary>Upper end of what a slider shows [<see cref="Unit"/>].</summary>
    public double? High { get; init; }

    /// <summary>
    /// The slider's track from <see cref="Low"/> to <see cref="High"/>: a wide middle near the value and, where the usual values reach further, a short way to each end. Empty without a range.
    /// </summary>
    public IReadOnlyList<TrackPart> Track { get; init; } = [];

    /// <summary>Words that it may be; empty unless it is a choice or a switch.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>Where the value comes from.</summary>
    public EditSource Source { get; init; }

    /// <summary>The file as messages name it; empty where no file gives it.</summary>
    public string File { get; init; } = "";

    /// <summary>Line of the value, from 1; 0 where no file gives it.</summary>
    public int Line { get; init; }

    /// <summary>Column of the value, from 1; 0 where no file gives it.</summary>
    public int Column { get; init; }

    /// <summary>The rows of several parts that this one changes together, its path having a star for their names; empty for a single value.</summary>
    public IReadOnlyList<EditRow> Members { get; init; } = [];

    /// <summary>The first table that it stands in, which says which part of a robot it belongs to.</summary>
    public string Section => Definition.Section.Split('.')[0];

    /// <summary>Path as draws and commands name it: of the opponent's after "opponent.".</summary>
    public string DrawnKey => Owner == "opponent" ? "opponent." + Path : Path;

    // SI = factor * value + offset
    internal double UnitFactor { get; init; } = 1.0;

    internal double UnitOffset { get; init; }

    /// <summary>A value of this row in SI; temperatures in degree Celsius.</summary>
    /// <param name="value">The value [<see cref="Unit"/>].</param>
    public double Si(double value) => (value * UnitFactor) + UnitOffset;

    /// <summary>Width of the range near the value [<see cref="Unit"/>]; 0 without a range.</summary>
    public double NearWidth => Track.Select(p => (p.To - p.From, p.High - p.Low)).DefaultIfEmpty().Max().Item2;

    /// <summary>Value at a share of the way between two places of the track [<see cref="Unit"/>].</summary>
    /// <param name="a">The lower place [<see cref="Unit"/>].</param>
    /// <param name="b">The upper place [<see cref="Unit"/>].</param>
    /// <param name="way">Share of the way [1].</param>
    public double Between(double a, double b, double way) => (Track.FirstOrDefault(p => a < p.High) ?? Track[^1]).Between(a, b, way);

    /// <summary>Places evenly over the track, ends among them; of a count every whole number, as far as they are not too many.</summary>
    /// <param name="count">How many [1].</param>
    /// <returns>Rising values [<see cref="Unit"/>]; none without a range.</returns>
    public IReadOnlyList<double> Places(int count)
    {
        if (Track.Count == 0)
        {
            return [];
        }

        double[] places = [.. Enumerable.Range(0, count).Select(i => (double)i / (count - 1)).Select(s => Track.First(p => s <= p.To).At(s))];
        return Definition.Kind == KeyKind.Whole ? [.. places.Select(p => Math.Round(p)).Distinct()] : places;
    }

    /// <summary>The text cut at its tolerance: "0.85", "±", "0.05"; mark and tolerance are empty where it has none.</summary>
    public (string Value, string Mark, string Tolerance) Parts => Tolerance > 0.0 ? Quantity.Cut(Text) : (Text, "", "");

    /// <summary>The tolerance where the text gives it as a factor [1]; else 0.</summary>
    public double Factor => Parts is { Mark: Quantity.FactorMark } cut && double.TryParse(cut.Tolerance, NumberStyles.Float, CultureInfo.InvariantCulture, out double factor) ? factor : 0.0;

    /// <summary>A value in this row's unit as it would be written, its tolerance kept as it is.</summary>
    /// <param name="value">The value [<see cref="Unit"/>].</param>
    /// <param name="digits">Significant digits [1].</param>
    public string Written(double value, int digits = 4)
    {
        string number = Definition.Kind == KeyKind.Whole ? Math.Round(value).ToString("0", CultureInfo.InvariantCulture) : PlainNumber.Of(value, digits);
        (string _, string mark, string tolerance) = Parts;
        return $"{number} {Unit}".TrimEnd() + (mark.Length > 0 ? $" {mark} {tolerance}" : "");
    }
}
