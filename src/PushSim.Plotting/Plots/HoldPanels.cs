using PushSim.Plotting.Drawing;
using PushSim.Simulation;
using PushSim.Words.Runs;

namespace PushSim.Plotting.Plots;

/// <summary>Panels of a robot that holds its place.</summary>
internal static class HoldPanels
{
    public static IReadOnlyList<Panel> Of(RunResult r)
    {
        Panel grip = Panel.OverTime("Grip that each wheel uses: the rest is the margin", "Grip used [%]").MarkLine(100.0, "slides");
        foreach (WheelTrace wheel in r.Trace.Wheels)
        {
            double[] share = [.. Enumerable.Range(0, r.Time.Length).Select(i => 100.0 * GripShare.At(wheel, i))];
            int[] told = [.. Enumerable.Range(0, share.Length).Where(i => double.IsFinite(share[i]))];
            if (told.Length > 1)
            {
                grip.Add([.. told.Select(i => r.Time[i])], [.. told.Select(i => share[i])], wheel.Name);
            }
        }

        Panel creep = Panel.OverTime("Movement of the centre of mass", "Movement [mm]").Add(r.Time, r.Trace.Body.X, "along the floor", 1e3).Add(r.Time, r.Trace.Body.Y, "across", 1e3);
        Panel force = RunPanels.OfWheels(r.Trace, "Force of each tyre along the robot", "Force [N]", w => w.LongitudinalForce);
        Panel load = RunPanels.Load(r.Trace);
        return grip.Curves.Count == 0 ? [creep, force, load] : [grip.WithRange(0.0, 110.0), creep, force, load];
    }
}
