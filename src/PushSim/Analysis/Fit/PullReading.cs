namespace PushSim.Analysis.Fit;

/// <summary>One reading off a display.</summary>
/// <param name="Force">Steady reading [N]; null if there is none.</param>
/// <param name="Peak">Peak reading [N]; null if there is none, which needs a steady one.</param>
/// <param name="Load">Its own load on the tyres under test [N]; null if that is told elsewhere.</param>
public sealed record PullReading(double? Force, double? Peak = null, double? Load = null)
{
    /// <summary>Tyre that it names; null if it names none.</summary>
    public string? Tyre { get; init; }

    /// <summary>Line of its file; 0 without one [1].</summary>
    public int Line { get; init; }

    /// <summary>Number of the pull that it names [1]; null if it names none.</summary>
    public double? Pull { get; init; }
}
