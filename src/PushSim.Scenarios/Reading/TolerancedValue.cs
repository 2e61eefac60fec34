using PushSim.Analysis.Chance;

namespace PushSim.Scenarios.Reading;

/// <summary>A value that is drawn: where it belongs, its middle and how far it may be off.</summary>
public sealed record TolerancedValue
{
    /// <summary>Whose it is: "robot", "opponent" or, of the scenario itself, nothing.</summary>
    public required string Owner { get; init; }

    /// <summary>Its path, for example "tyre.soft.static_friction" or "opponent.chassis.mass".</summary>
    public required string Key { get; init; }

    /// <summary>The wheel or drive whose part it is, where parts have errors of their own; else empty.</summary>
    public string Part { get; init; } = "";

    /// <summary>Share of its variance that the part has for itself, 0..1 [1].</summary>
    public double OwnShare { get; init; }

    /// <summary>The part of the shelf that its table takes; empty for none.</summary>
    public string Shelf { get; init; } = "";

    /// <summary>Middle value in the unit of <see cref="Unit"/>.</summary>
    public required double Middle { get; init; }

    /// <summary>Half-width of the tolerance in the same unit, above 0; of a normal spread two standard deviations.</summary>
    public required double Tolerance { get; init; }

    /// <summary>How values lie within it.</summary>
    public required DrawShape Spread { get; init; }

    /// <summary>SI unit; temperatures in degree Celsius; empty for a pure number.</summary>
    public required string Unit { get; init; }

    /// <summary>Least value that the key allows, in the same unit; draws stop there.</summary>
    public required double Least { get; init; }

    /// <summary>Largest value that the key allows, in the same unit; draws stop there.</summary>
    public required double Most { get; init; }

    /// <summary>True if no file states the tolerance: it is usual for the class of thing.</summary>
    public bool IsOfClass { get; init; }

    /// <summary>True if the usual tolerance is a share of the value.</summary>
    public bool IsShare { get; init; }

    /// <summary>True if value and tolerance are those of a part of the shelf.</summary>
    public bool IsOfShelf { get; init; }
}
