using PushSim.Analysis.Fit;
using PushSim.Plotting.Drawing;
using PushSim.Simulation;
using PushSim.Words.Runs;

namespace PushSim.Plotting.Plots;

/// <summary>The picture of a run: panels under each other, chosen by the manoeuvre.</summary>
public static class RunPlot
{
    // A picture of no current is left out [A].
    private const double LeastCurrent = 1e-3;

    /// <summary>The picture.</summary>
    /// <param name="result">A result with at least two samples.</param>
    public static PlotSheet Of(RunResult result) => new(Panels(result));

    /// <summary>The same for a page.</summary>
    /// <inheritdoc cref="Of"/>
    public static IReadOnlyList<ReportFigure> Figures(RunResult result) => ReportFigure.Of(() => Panels(result));

    /// <summary>New panels of a result with at least two samples; each is built once.</summary>
    internal static IReadOnlyList<Panel> Panels(RunResult result) => result.Scenario.Manoeuvre.Traits.Family switch
    {
        ManoeuvreFamily.Pull => Pull(result),
        ManoeuvreFamily.Turn => TurnPanels.Of(result),
        ManoeuvreFamily.Hold => Hold(result),
        ManoeuvreFamily.Push when result.Opponent is not null => ShovePanels.Shove(result),
        ManoeuvreFamily.Push when result.Scenario.Manoeuvre.Traits.NeedsWall => ShovePanels.WallPush(result),
        _ => Drive(result),
    };

    private static IReadOnlyList<Panel> Drive(RunResult r)
    {
        Panel speed = Panel.OverTime("Speed of robot and wheel surfaces", "Speed [m/s]").Add(r.Time, r.Trace.Body.Speed, "robot");
        Panel acceleration = Panel.OverTime("Acceleration", "Acceleration [m/s²]").Add(r.Time, r.Trace.Body.Acceleration, "forward");
        Panel slip = Panel.OverTime("Slip of each tread over the floor", "Slip [m/s]");
        AddWheels(r.Trace, speed, w => w.SurfaceSpeed);
        AddWheels(r.Trace, slip, w => w.SlipSpeed);
        foreach (Mark mark in r.Marks)
        {
            speed.MarkTime(mark.Time, RecordWords.Mark(mark.Kind));
        }

        List<Panel> panels = [speed, acceleration, slip];
        AddBindings(r, speed, panels);
        AddCurrents(r, panels);
        if (r.Trace.Battery is { } battery && r.Trace.Controllers.Count > 0)
        {
            panels.Add(Panel.OverTime("Battery voltage under load", "Voltage [V]").Add(r.Time, battery.Voltage, "battery"));
        }

        return panels;
    }

    private static IReadOnlyList<Panel> Pull(RunResult r)
    {
        Panel force = Panel.OverTime("Pull on the tether", "Force [N]");
        if (r.CellReadings.Count > 0 && r.Scenario.Measured is null)
        {
            force.AddPoints(r.CellReadings, "load cell reads");
        }

        if (MeasuredOverlay.Of(r) is { } measured)
        {
            force.AddPoints(measured.Time.Zip(measured.Force), "measured");
        }

        force.Add(r.Time, r.Trace.Tether!.Force, r.Scenario.Measured is null ? "tether" : "simulated");
        Mark[] plateau = [.. r.Marks.Where(m => m.Kind is MarkKind.PlateauStart or MarkKind.PlateauEnd)];
        if (plateau.Length == 2)
        {
            force.MarkLevel(plateau[0].Time, plateau[1].Time, plateau[0].Value, FormattableString.Invariant($"plateau {plateau[0].Value:0.00} N"));
        }

        foreach (Mark mark in r.Marks.Where(m => m.Kind == MarkKind.Breakaway))
        {
            force.MarkTime(mark.Time, FormattableString.Invariant($"breakaway {mark.Value:0.00} N"));
        }

        Panel slip = Panel.OverTime("Slip of each tread over the floor", "Slip [m/s]");
        Panel load = Panel.OverTime("Load on each wheel", "Load [N]");
        AddWheels(r.Trace, slip, w => w.SlipSpeed);
        AddWheels(r.Trace, load, w => w.Load);
        List<Panel> panels = [force, slip, load];
        AddBindings(r, force, panels);
        AddCurrents(r, panels);
        return panels;
    }

    private static IReadOnlyList<Panel> Hold(RunResult r)
    {
        Panel creep = Panel.OverTime("Movement of the centre of mass", "Movement [mm]").Add(r.Time, r.Trace.Body.X, "along the floor", 1e3).Add(r.Time, r.Trace.Body.Y, "across", 1e3);
        Panel force = Panel.OverTime("Force of each tyre along the robot", "Force [N]");
        Panel load = Panel.OverTime("Load on each wheel", "Load [N]");
        AddWheels(r.Trace, force, w => w.LongitudinalForce);
        AddWheels(r.Trace, load, w => w.Load);
        return [creep, force, load];
    }

    internal static void AddWheels(Trace trace, Panel panel, Func<WheelTrace, Series> what)
    {
        foreach (WheelTrace wheel in trace.Wheels)
        {
            panel.Add(trace.Time, what(wheel), wheel.Name);
        }
    }

    // What binds when: the main panel shaded, and a band a wheel.
    private static void AddBindings(RunResult r, Panel main, List<Panel> panels)
    {
        // a robot that is dragged is commanded nothing: nothing of its drive binds
        if (r.Scenario.Robot.Controllers.Count > 0 && !r.Scenario.Manoeuvre.Traits.IsDragged)
        {
            BindingPanels.Shade(main, r);
            panels.Add(BindingPanels.Bands(r));
        }
    }

    internal static void AddCurrents(RunResult r, List<Panel> panels)
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
