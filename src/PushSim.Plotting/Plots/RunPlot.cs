using PushSim.Plotting.Drawing;
using PushSim.Simulation;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of a run: panels under each other, chosen by the manoeuvre. It knows the panels, they do not know it.</summary>
public static class RunPlot
{
    /// <summary>The picture.</summary>
    /// <param name="result">A result with at least two samples.</param>
    public static PlotSheet Of(RunResult result) => new(() => Panels(result));

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
