using PushSim.Plotting.Drawing;
using PushSim.Words.Runs;

namespace PushSim.Plotting.Plots;

/// <summary>Panels of a drive: speeds, acceleration, slip, what binds, currents, voltage.</summary>
internal static class DrivePanels
{
    public static IReadOnlyList<Panel> Of(RunResult r)
    {
        Panel speed = RunPanels.AddWheels(r.Trace, Panel.OverTime("Speed of robot and wheel surfaces", "Speed [m/s]").Add(r.Time, r.Trace.Body.Speed, "robot"), w => w.SurfaceSpeed);
        Panel acceleration = Panel.OverTime("Acceleration", "Acceleration [m/s²]").Add(r.Time, r.Trace.Body.Acceleration, "forward");
        Panel slip = RunPanels.Slip(r.Trace);
        foreach (Mark mark in r.Marks)
        {
            speed.MarkTime(mark.Time, RecordWords.Mark(mark.Kind));
        }

        List<Panel> panels = [speed, acceleration, slip];
        BindingPanels.AddTo(r, speed, panels);
        RunPanels.AddCurrents(r, panels);
        if (r.Trace.Battery is { } battery && r.Trace.Controllers.Count > 0)
        {
            panels.Add(Panel.OverTime("Battery voltage under load", "Voltage [V]").Add(r.Time, battery.Voltage, "battery"));
        }

        return panels;
    }
}
