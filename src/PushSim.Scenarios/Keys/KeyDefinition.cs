using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Keys;

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

    /// <summary>Least value that is usual for robots of a few hundred grams to a few kilograms, in the SI unit of <see cref="Dimension"/>; less draws a warning.</summary>
    public double UsualMin { get; init; } = double.NegativeInfinity;

    /// <summary>Largest value that is usual for such robots, in the SI unit of <see cref="Dimension"/>; more draws a warning.</summary>
    public double UsualMax { get; init; } = double.PositiveInfinity;

    /// <summary>Words that may follow a whole number in a text ("3 cells", "3S"); none if it must be bare.</summary>
    public IReadOnlyList<string> CountWords { get; init; } = [];

    /// <summary>True if the table is wrong without it.</summary>
    public bool IsRequired { get; init; }

    /// <summary>What holds when it is left out, in words; empty for nothing.</summary>
    public string Default { get; init; } = "";

    /// <summary>An example of its value, as written in a file.</summary>
    public string Example { get; init; } = "";

    /// <summary>The words of a choice.</summary>
    public IReadOnlyList<string> Choices { get; init; } = [];

    /// <summary>The same row with a usual range, in the SI unit of <see cref="Dimension"/>.</summary>
    public KeyDefinition Usual(double least, double most) => this with { UsualMin = least, UsualMax = most };

    /// <summary>The same row, its whole number also readable as a text with one of these words.</summary>
    public KeyDefinition Counted(params string[] words) => this with { CountWords = words };
}
