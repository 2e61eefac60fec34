using PushSim.Analysis.Chance;

namespace PushSim.Scenarios.Reading;

/// <summary>One value that a file gave, as the file wrote it and as the engine uses it.</summary>
/// <param name="File">The file it stands in.</param>
/// <param name="Line">Its line, from 1.</param>
/// <param name="Column">Its column, from 1.</param>
/// <param name="Key">Where it belongs, for example "tyre.soft.static_friction".</param>
/// <param name="Text">The text in the file.</param>
/// <param name="Value">Middle value in the unit of <paramref name="Unit"/> (SI; temperatures in degree Celsius); null for a text or a switch.</param>
/// <param name="Unit">The unit of value and tolerance; empty for a pure number.</param>
/// <param name="Tolerance">Half-width of the tolerance in the same unit; 0 when none was given.</param>
public sealed record InputRow(string File, int Line, int Column, string Key, string Text, double? Value, string Unit, double Tolerance)
{
    /// <summary>How values lie within the tolerance.</summary>
    public DrawShape Spread { get; init; }

    /// <summary>Whose value it is: "robot", "opponent" or, of the scenario itself, nothing.</summary>
    public string Owner { get; init; } = "";
}
