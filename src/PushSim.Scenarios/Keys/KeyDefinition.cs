using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

/// <summary>One key that a file may have: the single place that knows its name, unit, range, default and meaning.</summary>
/// <param name="Section">The table it stands in, for example "tyre"; "robot" and "scenario" are the files' top levels.</param>
/// <param name="Name">The key.</param>
/// <param name="Kind">What it takes.</param>
/// <param name="Meaning">What it means, one sentence.</param>
public sealed record KeyDefinition(string Section, string Name, KeyKind Kind, string Meaning)
{
    /// <summary>What pictures, tables and pages call it, in two to five words.</summary>
    public string Label => KeyLabels.Of(Section, Name);

    /// <summary>What a quantity measures; of a curve, its first column.</summary>
    internal Dimension Dimension { get; init; }

    /// <summary>What the second column of a curve measures.</summary>
    internal Dimension SecondDimension { get; init; }

    /// <summary>Least value allowed, in the SI unit of <see cref="Dimension"/>.</summary>
    public double Min { get; init; } = double.NegativeInfinity;

    /// <summary>Largest value allowed, in the SI unit of <see cref="Dimension"/>.</summary>
    public double Max { get; init; } = double.PositiveInfinity;

    /// <summary>Least value that is usual for robots of a few hundred grams to a few kilograms, in the SI unit of <see cref="Dimension"/>; less draws a warning.</summary>
    public double UsualMin { get; init; } = double.NegativeInfinity;

    /// <summary>Largest value that is usual for such robots, in the SI unit of <see cref="Dimension"/>; more draws a warning.</summary>
    public double UsualMax { get; init; } = double.PositiveInfinity;

    /// <summary>Key of the same table below whose value this one may not lie; empty for none.</summary>
    public string NotBelow { get; init; } = "";

    /// <summary>Key of the same table above whose value this one may not lie; empty for none.</summary>
    public string NotAbove { get; init; } = "";

    /// <summary>Words that may follow a whole number in a text ("3 cells", "3S"); none if it must be bare.</summary>
    public IReadOnlyList<string> CountWords { get; init; } = [];

    /// <summary>The unit in which values are written: that of the example unless said; empty for a pure number.</summary>
    public string UnitName
    {
        get => field ?? (Kind != KeyKind.Quantity ? "" : Dimension == Dimension.Ratio ? (Example.Contains('%', StringComparison.Ordinal) ? "%" : "") : Example.Trim('"').Split(' ', 2)[1]);
        init;
    }

    /// <summary>True if a fit of a tyre's friction gives the value, or its frictions stand in its place.</summary>
    public bool IsFitted { get; private init; }

    /// <summary>True if the table is wrong without it.</summary>
    public bool IsRequired { get; init; }

    /// <summary>What holds when it is left out, in words; empty for nothing.</summary>
    public string Default
    {
        get => field.Contains(KeyTable.Own, StringComparison.Ordinal) && OwnDefaults.FirstOrDefault(d => d is double value && double.IsFinite(value)) is double own
            ? field.Replace(KeyTable.Own, KeyLine.Value(this, own, 6), StringComparison.Ordinal)
            : field;
        init;
    } = "";

    /// <summary>An example of its value, as written in a file.</summary>
    public string Example { get; init; } = "";

    /// <summary>The words of a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    // The default of its record, in SI; null where it has none.
    internal double? OwnDefault => OwnDefaults.LastOrDefault();

    internal Unit Unit => UnitTable.TryFind(Dimension, UnitName, out Unit unit) ? unit : throw new InvalidOperationException($"no unit {UnitName} for {Name}");

    // A KeyRow of each record that has its value, and what each blank record has: asked for late, since a program that starts needs the defaults of few keys or none.
    private (object Row, Func<double?> Own)[] Rows { get; init; } = [];

    private IEnumerable<double?> OwnDefaults => Rows.Select(r => r.Own());

    /// <summary>How a record gives and takes its value; null if it is none of that record.</summary>
    public KeyRow<T>? Row<T>() => Rows.Select(r => r.Row).OfType<KeyRow<T>>().FirstOrDefault();

    /// <summary>The same row with a usual range, in the SI unit of <see cref="Dimension"/>.</summary>
    public KeyDefinition Usual(double least, double most) => this with { UsualMin = least, UsualMax = most };

    /// <summary>The same row, its whole number also readable as a text with one of these words.</summary>
    public KeyDefinition Counted(params string[] words) => this with { CountWords = words };

    /// <summary>The same row, as one that a fit of friction replaces.</summary>
    internal KeyDefinition Fitted() => this with { IsFitted = true };

    /// <summary>The same row, its values written in this unit.</summary>
    internal KeyDefinition In(string unit) => this with { UnitName = unit };

    /// <summary>The same row as one value of a record, whose default may stand in the words of the default.</summary>
    internal KeyDefinition Of<T>(T blank, Func<T, double?> get, Func<T, double, T> put) => With(blank, new KeyRow<T>(get, put, IsReadApart: false));

    /// <summary>The same for a flag.</summary>
    internal KeyDefinition OfFlag<T>(T blank, Func<T, bool> get, Func<T, bool, T> put) => Of(blank, t => get(t) ? 1.0 : 0.0, (t, v) => put(t, v != 0.0));

    /// <summary>The same for a value that a reader finds in a way of its own.</summary>
    internal KeyDefinition Apart<T>(T blank, Func<T, double?> get, Func<T, double, T> put) => With(blank, new KeyRow<T>(get, put, IsReadApart: true));

    private KeyDefinition With<T>(T blank, KeyRow<T> row) => this with { Rows = [.. Rows, (row, () => row.Get(blank))] };
}
