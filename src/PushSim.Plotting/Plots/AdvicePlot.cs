using PushSim.Analysis.Statistics;
using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Picture of what changes to a robot bring.</summary>
public static class AdvicePlot
{
    // Changes that a picture has room for [1].
    private const int Most = 8;
    private const int LongestName = 22;

    /// <summary>Points of win share that each change adds, with its interval, the first ones in the order given.</summary>
    /// <param name="changes">Name and gain in win share of each [1].</param>
    public static PlotSheet Of(IReadOnlyList<(string Name, Interval Gain)> changes) => new(() => changes.Count == 0 ? [] : [PanelOf([.. changes.Take(Most)])]);

    private static Panel PanelOf(IReadOnlyList<(string Name, Interval Gain)> changes) =>
        new Panel("Points of win share that each change adds, first advised first; bars: 95 % for all together", "Change", "Points of 100 matches")
            .AddBars([.. changes.Select(c => (100.0 * c.Gain.Value, 100.0 * c.Gain.Low, 100.0 * c.Gain.High))], "on the same draws", 0.0, 0)
            .WithNames([.. changes.Select((c, i) => string.Create(CultureInfo.InvariantCulture, $"{i + 1}. {Cut(c.Name)}"))]);

    private static string Cut(string name) => name.Length <= LongestName ? name : name[..(LongestName - 1)] + "…";
}
