using PushSim.Analysis.Limits;
using PushSim.Words.Limits;

namespace PushSim.Cli.Limits;

/// <summary>Tables of the limits command as CSV.</summary>
internal static class LimitsCsv
{
    public static void WriteCurves(LimitResult report, Stream stream)
    {
        (string Key, ForceCurve Curve)[] curves = [("", report.Total), .. report.Axles.Select(a => (Slug.Of(LimitWords.Of(a)) + "_", a.Curve))];
        CsvTable.Write(
            stream,
            ["speed_m_per_s", .. curves.SelectMany(c => new[] { c.Key + "motor_force_n", c.Key + "traction_peak_force_n", c.Key + "traction_sliding_force_n" }), "binding"],
            Enumerable.Range(0, report.Total.Speed.Length).Select(i => (string[])[
                CsvTable.Number(report.Total.Speed[i]), .. curves.SelectMany(c => new[] { CsvTable.Number(c.Curve.Motor[i]), CsvTable.Number(c.Curve.Peak[i]), CsvTable.Number(c.Curve.Sliding[i]) }), BindingTable.PartKey(report.Total.Binding[i]) ?? ""]));
    }

    public static void WriteGains(LimitResult report, Stream stream) => CsvTable.Write(
        stream,
        ["input", "output", "base", "changed", "change_percent", "slope_per_unit_factor", "slope_percent"],
        report.Gains.Select(g => (string[])[
            LimitWords.Key(g.Input), LimitWords.Key(g.Output), CsvTable.Number(g.Base), CsvTable.Number(g.Changed), CsvTable.Number(g.ChangePercent), CsvTable.Number(g.Slope), CsvTable.Number(g.SlopePercent)]));

    public static void WriteRatio(RatioCurve curve, Stream stream) => CsvTable.Write(
        stream,
        ["ratio_factor", "pull_n", "launch_time_s", "top_speed_m_per_s"],
        curve.Points.Select(p => (string[])[CsvTable.Number(p.Factor), CsvTable.Number(p.Pull), CsvTable.Number(p.DashTime), CsvTable.Number(p.TopSpeed)]));

    public static void WriteBindings(RunResult run, Stream stream, CancellationToken cancel) => CsvTable.Write(
        stream,
        ["time_s", .. run.Bindings.Select(w => $"wheel_{Slug.Of(run.Scenario.Robot.Wheels[w.Wheel].Name)}_binding")],
        Enumerable.Range(0, run.Time.Length).Select(i =>
        {
            cancel.ThrowIfCancellationRequested();
            return (string[])[CsvTable.Number(run.Time[i]), .. run.Bindings.Select(w => BindingTable.WheelKey(w.Kinds[i]))];
        }));
}
