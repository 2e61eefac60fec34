using PushSim.Plotting.Drawing;

namespace PushSim.Plotting.Plots;

/// <summary>Panels of a robot that holds its place.</summary>
internal static class HoldPanels
{
    public static IReadOnlyList<Panel> Of(RunResult r)
    {
        Panel creep = Panel.OverTime("Movement of the centre of mass", "Movement [mm]").Add(r.Time, r.Trace.Body.X, "along the floor", 1e3).Add(r.Time, r.Trace.Body.Y, "across", 1e3);
        Panel force = RunPanels.OfWheels(r.Trace, "Force of each tyre along the robot", "Force [N]", w => w.LongitudinalForce);
        Panel load = RunPanels.Load(r.Trace);
        return [creep, force, load];
    }
}
