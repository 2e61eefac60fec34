using System.Globalization;
using CsvHelper;
using PushSim.Analysis.Limits;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>Tables of the limits command as CSV.</summary>
internal static class LimitsCsv
{
    public static void WriteCurves(LimitReport report, Stream stream)
    {
        (string Key, ForceCurve Curve)[] curves = [("", report.Total), .. report.Axles.Select(a => (Slug.Of(a.Name) + "_", a.Curve))];
        Write(
            stream,
            ["speed_m_per_s", .. curves.SelectMany(c => new[] { c.Key + "motor_force_n", c.Key + "traction_peak_force_n", c.Key + "traction_sliding_force_n" }), "binding"],
            Enumerable.Range(0, report.Total.Speed.Length).Select(i => (string[])[
                Text(report.Total.Speed[i]), .. curves.SelectMany(c => new[] { Text(c.Curve.Motor[i]), Text(c.Curve.Peak[i]), Text(c.Curve.Sliding[i]) }), report.Total.Binding[i]]));
    }

    public static void WriteGains(LimitReport report, Stream stream) => Write(
        stream,
        ["input", "output", "base", "changed", "change_percent", "slope_per_unit_factor", "slope_percent"],
        report.Gains.Select(g => (string[])[
            LimitWords.Key(g.Input), LimitWords.Key(g.Output), Text(g.Base), Text(g.Changed), Text(g.ChangePercent), Text(g.Slope), Text(g.SlopePercent)]));

    public static void WriteRatio(RatioCurve curve, Stream stream) => Write(
        stream,
        ["ratio_factor", "pull_n", "launch_time_s", "top_speed_m_per_s"],
        curve.Points.Select(p => (string[])[Text(p.Factor), Text(p.Pull), Text(p.DashTime), Text(p.TopSpeed)]));

    public static void WriteBindings(RunResult run, IReadOnlyList<WheelBindings> wheels, Stream stream, CancellationToken cancel) => Write(
        stream,
        ["time_s", .. wheels.Select(w => $"wheel_{Slug.Of(w.Wheel)}_binding")],
        Enumerable.Range(0, run.Time.Length).Select(i =>
        {
            cancel.ThrowIfCancellationRequested();
            return (string[])[Text(run.Time[i]), .. wheels.Select(w => RunBinding.Key(w.Moments[i]))];
        }));

    private static void Write(Stream stream, string[] head, IEnumerable<string[]> rows)
    {
        using var text = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvWriter(text, CultureInfo.InvariantCulture);
        foreach (string[] row in rows.Prepend(head))
        {
            foreach (string cell in row)
            {
                csv.WriteField(cell);
            }

            csv.NextRecord();
        }
    }

    // nothing where there is no number
    private static string Text(double value) => double.IsFinite(value) ? value.ToString("G8", CultureInfo.InvariantCulture) : "";
}
