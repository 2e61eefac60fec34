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
