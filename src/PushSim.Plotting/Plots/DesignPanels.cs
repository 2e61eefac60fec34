using PushSim.Analysis.Limits;
using PushSim.Plotting.Drawing;
using PushSim.Simulation;
using PushSim.Words.Designs;

namespace PushSim.Plotting.Plots;

/// <summary>The curve that matters most of each of several designs, over each other.</summary>
internal static class DesignPanels
{
    // Force curves of a design: of more designs than this only what the motors give and the tyres hold at their peak would still be told apart [1].
    private const int MostCurves = 8;

    /// <summary>What is added to the title of a curve that stands over those of other designs.</summary>
    public const string SideBySide = ", side by side";

    /// <summary>Runs; only those of the first one's kind are drawn. None of one alone.</summary>
    public static IReadOnlyList<Panel> OfRuns(IReadOnlyList<ComparedDesign> designs)
    {
        RunResult[] runs = [.. designs.Select(d => d.Run!)];
        ManoeuvreFamily family = designs.Count < 2 ? default : runs[0].Scenario.Manoeuvre.Traits.Family;
        ComparedDesign[] shown = [.. designs.Where(d => d.Run!.Scenario.Manoeuvre.Traits.Family == family && d.Run.Time.Length >= 2)];
        if (shown.Length < 2)
        {
            return [];
        }

        (string title, string axis, Func<RunResult, Series?> series) = Main(runs[0]);
        Panel panel = Panel.OverTime(title + SideBySide, axis);
        foreach (ComparedDesign d in shown)
        {
            if (series(d.Run!) is Series values)
            {
                panel.Add(d.Run!.Time, values, d.Label);
            }
        }

        return panel.Curves.Count < 2 ? [] : [panel];
    }

    /// <summary>Forces against speed. None of one alone.</summary>
    public static IReadOnlyList<Panel> OfLimits(IReadOnlyList<ComparedDesign> designs)
    {
        if (designs.Count < 2)
        {
            return [];
        }

        var panel = new Panel("Motors against tyres" + SideBySide, "Speed [m/s]", "Force [N]");
        foreach (ComparedDesign d in designs.Take(MostCurves / 2))
        {
            ForceCurve curve = d.Limits!.Total;
            panel.Add(curve.Speed, curve.Motor, d.Label + ": motors can give").Add(curve.Speed, curve.Peak, d.Label + ": tyres hold, peak");
        }

        return [panel];
    }

    private static (string Title, string Axis, Func<RunResult, Series?> Series) Main(RunResult run) => run.Scenario.Manoeuvre.Traits switch
    {
        { Family: ManoeuvreFamily.Pull } => ("Pull on the tether", "Force [N]", r => r.Trace.Tether?.Force),
        { Family: ManoeuvreFamily.Turn } => ("Yaw rate", "Yaw rate [rad/s]", r => r.Trace.Body.YawRate),
        { Family: ManoeuvreFamily.Push, NeedsWall: true } => ("Push at the contact", "Force [N]", r => r.Trace.Contact?.Push),
        { Family: ManoeuvreFamily.Push, NeedsOpponent: true } or { Family: ManoeuvreFamily.Hold } => ("Place of the robot along the floor", "Place [m]", r => r.Trace.Body.X),
        _ => ("Speed of the robot", "Speed [m/s]", r => r.Trace.Body.Speed),
    };
}
