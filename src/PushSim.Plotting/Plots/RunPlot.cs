using PushSim.Analysis.Fit;
using PushSim.Plotting.Drawing;
using PushSim.Runs;
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
    internal static IReadOnlyList<Panel> Panels(RunResult result) => result.Scenario.Manoeuvre.Kind switch
    {
        ManoeuvreKind.PullTest or ManoeuvreKind.DragTest => Pull(result),
        ManoeuvreKind.Spot or ManoeuvreKind.Arc => TurnPanels.Of(result),
        ManoeuvreKind.Hold => Hold(result),
        ManoeuvreKind.Shove when result.Opponent is not null => ShovePanels.Shove(result),
        ManoeuvreKind.WallPush => ShovePanels.WallPush(result),
        _ => Drive(result),
    };

    private static IReadOnlyList<Panel> Drive(RunResult r)
    {
        Panel speed = Panel.OverTime("Speed of robot and wheel surfaces", "Speed [m/s]").Add(r, r["speed_m_per_s"], "robot");
        Panel acceleration = Panel.OverTime("Acceleration", "Acceleration [m/s²]").Add(r, r["acceleration_m_per_s2"], "forward");
        Panel slip = Panel.OverTime("Slip of each tread over the floor", "Slip [m/s]");
        AddWheels(r, speed, "surface_speed_m_per_s");
        AddWheels(r, slip, "tread_slip_speed_m_per_s");
        foreach (Mark mark in r.Marks)
        {
            speed.MarkTime(mark.Time, RecordWords.Mark(mark.Kind));
        }

        List<Panel> panels = [speed, acceleration, slip];
        AddBindings(r, speed, panels);
        AddCurrents(r, panels);
        if (r.Scenario.Robot.Controllers.Count > 0)
        {
            panels.Add(Panel.OverTime("Battery voltage under load", "Voltage [V]").Add(r, r["battery_voltage_v"], "battery"));
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

        force.Add(r, r["tether_force_n"], r.Scenario.Measured is null ? "tether" : "simulated");
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
        AddWheels(r, slip, "tread_slip_speed_m_per_s");
        AddWheels(r, load, "load_n");
        List<Panel> panels = [force, slip, load];
        AddBindings(r, force, panels);
        AddCurrents(r, panels);
        return panels;
    }

    private static IReadOnlyList<Panel> Hold(RunResult r)
    {
        Panel creep = Panel.OverTime("Movement of the centre of mass", "Movement [mm]").Add(r, r["x_m"], "along the floor", 1e3).Add(r, r["y_m"], "across", 1e3);
        Panel force = Panel.OverTime("Force of each tyre along the robot", "Force [N]");
        Panel load = Panel.OverTime("Load on each wheel", "Load [N]");
        AddWheels(r, force, "longitudinal_force_n");
        AddWheels(r, load, "load_n");
        return [creep, force, load];
    }

    internal static void AddWheels(RunResult r, Panel panel, string what)
    {
        foreach (Tyres.WheelSettings wheel in r.Scenario.Robot.Wheels)
        {
            panel.Add(r, r[$"wheel_{Slug.Of(wheel.Name)}_{what}"], wheel.Name);
        }
    }

    // What binds when: the main panel shaded, and a band a wheel.
    private static void AddBindings(RunResult r, Panel main, List<Panel> panels)
    {
        // a robot that is dragged is commanded nothing: nothing of its drive binds
        if (r.Scenario.Robot.Controllers.Count > 0 && r.Scenario.Manoeuvre.Kind != ManoeuvreKind.DragTest)
        {
            BindingPanels.Shade(main, r);
            panels.Add(BindingPanels.Bands(r));
        }
    }

    internal static void AddCurrents(RunResult r, List<Panel> panels)
    {
        if (r.Scenario.Robot.Controllers.Count == 0 || r["battery_current_a"].Values.Max(Math.Abs) < LeastCurrent)
        {
            return;
        }

        Panel panel = Panel.OverTime("Currents", "Current [A]").Add(r, r["battery_current_a"], "battery");
        foreach (Powertrain.ControllerSettings controller in r.Scenario.Robot.Controllers)
        {
            panel.Add(r, r[$"controller_{Slug.Of(controller.Name)}_current_a"], "controller " + controller.Name);
        }

        panels.Add(panel);
    }
}
