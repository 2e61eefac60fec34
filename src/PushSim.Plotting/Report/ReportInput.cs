using PushSim.Analysis.Chance;

namespace PushSim.Plotting.Report;

/// <summary>One value that a file gave, for the page's table of inputs; a neutral copy, so that the page knows nothing of file formats.</summary>
/// <param name="Key">Where it belongs, for example "tyre.soft.static_friction".</param>
/// <param name="Text">What the file says.</param>
/// <param name="Value">Middle value in <paramref name="Unit"/>; null for a text or a switch.</param>
/// <param name="Unit">Unit that the engine uses; empty for a pure number.</param>
/// <param name="Tolerance">Half-width of the tolerance in the same unit; 0 when none was given.</param>
/// <param name="File">The file it stands in.</param>
/// <param name="Line">Its line, from 1 [1]; 0: it was given with the command.</param>
public sealed record ReportInput(string Key, string Text, double? Value, string Unit, double Tolerance, string File, int Line)
{
    /// <summary>How values lie within the tolerance.</summary>
    public DrawShape Spread { get; init; }

    /// <summary>What holds where no file gives it; empty where something must.</summary>
    public string Usual { get; init; } = "";

    /// <summary>Whether the value is the file's own and not what would hold anyway.</summary>
    public bool IsOwn { get; init; } = true;
}
