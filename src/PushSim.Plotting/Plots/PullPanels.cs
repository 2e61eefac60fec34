using PushSim.Analysis.Fit;
using PushSim.Plotting.Drawing;
using PushSim.Words.Runs;

namespace PushSim.Plotting.Plots;

/// <summary>Panels of a pull on the tether, with what was measured where there is a log.</summary>
internal static class PullPanels
{
    public static IReadOnlyList<Panel> Of(RunResult r)
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

        force.AddEnvelope(r.Time, r.Trace.Tether!.Force, r.Scenario.Measured is null ? "tether" : "simulated");
        Mark[] plateau = [.. r.Marks.Where(m => m.Kind is MarkKind.PlateauStart or MarkKind.PlateauEnd)];
        if (plateau.Length == 2)
        {
            force.MarkLevel(plateau[0].Time, plateau[1].Time, plateau[0].Value, FormattableString.Invariant($"plateau {plateau[0].Value:0.00} N"));
        }

        foreach (Mark mark in r.Marks.Where(m => m.Kind is MarkKind.Breakaway or MarkKind.Jerk))
        {
            force.MarkTime(mark.Time, FormattableString.Invariant($"{RecordWords.Mark(mark.Kind)} {mark.Value:0.00} N"));
        }

        Panel slip = RunPanels.Slip(r.Trace);
        Panel load = RunPanels.Load(r.Trace);
        List<Panel> panels = [force, slip, load];
        BindingPanels.AddTo(r, force, panels);
        RunPanels.AddCurrents(r, panels);
        return panels;
    }
}
