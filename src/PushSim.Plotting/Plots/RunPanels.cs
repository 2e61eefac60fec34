using PushSim.Plotting.Drawing;
using PushSim.Simulation;

namespace PushSim.Plotting.Plots;

/// <summary>Panels that runs of several kinds share: a curve of each wheel, and the currents.</summary>
internal static class RunPanels
{
    // A picture of no current is left out [A].
    private const double LeastCurrent = 1e-3;

    public static Panel Slip(Trace trace, string title = "Slip of each tread over the floor") => OfWheels(trace, title, "Slip [m/s]", w => w.SlipSpeed);

    public static Panel Load(Trace trace, string title = "Load on each wheel") => OfWheels(trace, title, "Load [N]", w => w.Load);

    public static Panel OfWheels(Trace trace, string title, string axis, Func<WheelTrace, Series> what) => AddWheels(trace, Panel.OverTime(title, axis), what);

    public static Panel AddWheels(Trace trace, Panel panel, Func<WheelTrace, Series> what)
    {
        foreach (WheelTrace wheel in trace.Wheels)
        {
            panel.Add(trace.Time, what(wheel), wheel.Name);
        }

        return panel;
    }

    /// <summary>Currents of battery and controllers, where any flows.</summary>
    public static void AddCurrents(RunResult r, List<Panel> panels)
    {
        if (r.Trace.Battery?.Current is not { } current || r.Trace.Controllers.Count == 0 || current.Max(Math.Abs) < LeastCurrent)
        {
            return;
        }

        Panel panel = Panel.OverTime("Currents", "Current [A]").Add(r.Time, current, "battery");
        foreach (ControllerTrace controller in r.Trace.Controllers)
        {
            panel.Add(r.Time, controller.Current, "controller " + controller.Name);
        }

        panels.Add(panel);
    }
}
