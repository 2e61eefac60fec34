using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

/// <summary>What kind of value a key takes.</summary>
public enum KeyKind
{
    /// <summary>A number with unit, or a pure number.</summary>
    Quantity,

    /// <summary>A whole number.</summary>
    Whole,

    /// <summary>Free text.</summary>
    Text,

    /// <summary>true or false.</summary>
    Flag,

    /// <summary>One of a few words.</summary>
    Choice,

    /// <summary>A list of texts.</summary>
    Texts,

    /// <summary>A list of quantities of one dimension.</summary>
    Quantities,

    /// <summary>A list of pairs of quantities.</summary>
    Curve,

    /// <summary>A table, single brackets or braces.</summary>
    Table,

    /// <summary>A list of tables, double brackets.</summary>
    Tables,

    /// <summary>A table whose keys are paths of values in a robot file.</summary>
    Overrides,
}

/// <summary>One key that a file may have: the single place that knows its name, unit, range, default and meaning.</summary>
/// <param name="Section">The table it stands in, for example "tyre"; "robot" and "scenario" are the files' top levels.</param>
/// <param name="Name">The key.</param>
/// <param name="Kind">What it takes.</param>
/// <param name="Meaning">What it means, one sentence.</param>
public sealed record KeyDefinition(string Section, string Name, KeyKind Kind, string Meaning)
{
    /// <summary>What a quantity measures; of a curve, its first column.</summary>
    public Dimension Dimension { get; init; }

    /// <summary>What the second column of a curve measures.</summary>
    public Dimension SecondDimension { get; init; }

    /// <summary>Least value allowed, in the SI unit of <see cref="Dimension"/>.</summary>
    public double Min { get; init; } = double.NegativeInfinity;

    /// <summary>Largest value allowed, in the SI unit of <see cref="Dimension"/>.</summary>
    public double Max { get; init; } = double.PositiveInfinity;

    /// <summary>True if the table is wrong without it.</summary>
    public bool IsRequired { get; init; }

    /// <summary>What holds when it is left out, in words; empty for nothing.</summary>
    public string Default { get; init; } = "";

    /// <summary>An example of its value, as written in a file.</summary>
    public string Example { get; init; } = "";

    /// <summary>The words of a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];
}
