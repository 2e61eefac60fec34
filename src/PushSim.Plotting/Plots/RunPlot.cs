using PushSim.Plotting.Drawing;
using PushSim.Simulation;
using PushSim.Words.Designs;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of a run: panels under each other, chosen by the manoeuvre. It knows the panels, they do not know it.</summary>
public static class RunPlot
{
    /// <summary>The picture.</summary>
    /// <param name="result">A result with at least two samples.</param>
    public static PlotSheet Of(RunResult result) => Of(result, []);

    /// <summary>The picture, first the curve that matters most over that of the other designs.</summary>
    /// <param name="result">A result with at least two samples.</param>
    /// <param name="designs">The designs that are compared, it among them; empty or it alone: none.</param>
    public static PlotSheet Of(RunResult result, IReadOnlyList<ComparedDesign> designs) => new(() =>
    {
        // the curve over the others' takes the place of the same curve alone
        IReadOnlyList<Panel> compared = DesignPanels.OfRuns(designs);
        return [.. compared, .. Panels(result).Where(p => compared.All(c => c.Title != p.Title + DesignPanels.SideBySide))];
    });

    private static IReadOnlyList<Panel> Panels(RunResult result) => result.Scenario.Manoeuvre.Traits.Family switch
    {
        ManoeuvreFamily.Pull => PullPanels.Of(result),
        ManoeuvreFamily.Turn => TurnPanels.Of(result),
        ManoeuvreFamily.Hold => HoldPanels.Of(result),
        ManoeuvreFamily.Push when result.Opponent is not null => ShovePanels.Shove(result),
        ManoeuvreFamily.Push when result.Scenario.Manoeuvre.Traits.NeedsWall => ShovePanels.WallPush(result),
        _ => DrivePanels.Of(result),
    };
}
