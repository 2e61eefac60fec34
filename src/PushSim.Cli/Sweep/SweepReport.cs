using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Sweep;
using PushSim.Cli.Run;
using PushSim.Cli.Shared;
using PushSim.Numerics;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Report;
using Spectre.Console;

namespace PushSim.Cli.Sweep;

/// <summary>A sweep as text, JSON, CSV and picture.</summary>
internal static class SweepReport
{
    private const int MostRows = 60;

    public static void Write(TextWriter output, SweepRequest request, SweepResult r, IReadOnlyList<string> files)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + PlainText.Marked(r.Verdict) + "[/]");
        console.WriteLine();
        TextReport.Write(console, Table(request, r, MostRows));
        foreach (string warning in r.Warnings)
        {
            console.MarkupLine("warning: " + PlainText.Marked(warning));
        }

        console.MarkupLine("[dim]" + PlainText.Marked(Computation(request, r)) + "[/]");
        console.MarkupLine("[dim]" + Markup.Escape(TextReport.Cautions) + "[/]");
        TextReport.WriteFiles(output, files);
    }

    /// <summary>The points, for screen and page.</summary>
    public static ReportTable Table(SweepRequest request, SweepResult r, int mostRows)
    {
        ReportTable table = new(request.Inputs[0].Key);
        foreach (SweepInput input in request.Inputs)
        {
            _ = input.Numbers is null ? table.AddColumn(input.Key) : table.AddNumberColumn(input.Key);
        }

        foreach (SweepColumn column in r.Columns)
        {
            table.AddNumberColumn(column.Key);
        }

        if (request.Odds > 0)
        {
            table.AddColumn("95 % interval");
        }

        foreach (SweepPoint point in r.Points.Take(mostRows))
        {
            Bounds? odds = point.Odds?.WinInterval;
            table.AddRow([
                .. request.Inputs.Select((input, i) => input.Texts[point.Place[i]]),
                .. r.Columns.Select((c, k) => r.Value(point, k) is double v ? PlainNumber.Of(v, 5) : "-"),
                .. request.Odds > 0 ? [Text($"{odds?.Low:0.000} to {odds?.High:0.000}")] : Array.Empty<string>()]);
        }

        return r.Points.Count > mostRows ? table.AddRemark($"and {r.Points.Count - mostRows} more points, all in sweep.csv") : table;
    }

    /// <summary>Points, matches, seed and time.</summary>
    public static string Computation(SweepRequest request, SweepResult r) =>
        Text($"{r.Points.Count} points{(request.Odds > 0 ? Text($", {request.Odds} drawn matches at each, seed {request.Plan.Seed}") : "")}, {r.Seconds:0.0} s");

    public static string Json(SweepRequest request, SweepResult r) => JsonReport.Write(w =>
    {
        JsonReport.WriteHead(w, "sweep", r.Verdict, r.Warnings);
        w.WriteStartArray("inputs");
        foreach (SweepInput input in request.Inputs)
        {
            w.WriteStartObject();
            w.WriteString("key", input.Key);
            w.WriteString("unit", input.Unit);
            w.WriteStartArray("values");
            foreach (string text in input.Texts)
            {
                w.WriteStringValue(text);
            }

            w.WriteEndArray();
            w.WriteEndObject();
        }

        w.WriteEndArray();
        w.WriteStartArray("points");
        foreach (SweepPoint point in r.Points)
        {
            w.WriteStartObject();
            w.WriteStartArray("at");
            for (int i = 0; i < point.Place.Length; i++)
            {
                w.WriteStringValue(request.Inputs[i].Texts[point.Place[i]]);
            }

            w.WriteEndArray();
            for (int k = 0; k < r.Columns.Count; k++)
            {
                JsonReport.WriteNumber(w, r.Columns[k].Key, r.Value(point, k));
            }

            if (point.Odds is Tally t)
            {
                w.WriteNumber("win_share_low", t.WinInterval.Low);
                w.WriteNumber("win_share_high", t.WinInterval.High);
                w.WriteNumber("matches", t.Matches);
                w.WriteNumber("failed_matches", t.Failed);
            }

            w.WriteEndObject();
        }

        w.WriteEndArray();
        w.WriteStartArray("optima");
        foreach ((SweepColumn c, int k) in r.Columns.Select((c, k) => (c, k)).Where(c => c.c.Best is not null))
        {
            w.WriteStartObject();
            w.WriteString("quantity", c.Key);
            w.WriteString("best", c.IsHighestBest ? "highest" : "lowest");
            JsonReport.WriteNumber(w, "value", r.Value(r.Points[c.Best!.Value], k));
            w.WriteString("at", SweepResult.At(request, r.Points[c.Best.Value]));
            JsonReport.WriteNumber(w, "within_5_percent_from", c.Flatness?.Low);
            JsonReport.WriteNumber(w, "within_5_percent_to", c.Flatness?.High);
            w.WriteNumber("points_within_5_percent", c.GoodPoints.Count);
            w.WriteEndObject();
        }

        w.WriteEndArray();
        w.WriteNumber("seed", request.Plan.Seed);
        w.WriteBoolean("interrupted", r.IsInterrupted);
    });

    public static List<string> WriteFiles(OutputFolder folder, SweepRequest request, SweepResult r)
    {
        List<string> files = [folder.Write("sweep.csv", stream => WriteCsv(stream, request, r))];
        if (!request.Output.NoPlots && r.Points.Count > 1)
        {
            PlotSheet picture = Plot(request, r).Sheet();
            files.AddRange(folder.WritePicture("plot", picture));
        }

        return files;
    }

    /// <summary>The picture of two points or more.</summary>
    public static SweepPlot Plot(SweepRequest request, SweepResult r) => request.Inputs.Count == 1 ? Curves(request, r) : Maps(request, r);

    private static SweepPlot Curves(SweepRequest request, SweepResult r)
    {
        SweepInput input = request.Inputs[0];
        SweepInput shown = input with { Texts = [.. r.Points.Select(p => input.Texts[p.Place[0]])], Numbers = input.Numbers is null ? null : [.. r.Points.Select(p => input.Numbers[p.Place[0]])] };
        return SweepPlot.OfOne(shown, [.. r.Columns.Select((c, k) => (
            c.Key,
            (IReadOnlyList<double?>)[.. r.Points.Select(p => r.Value(p, k))],
            c.Key == SweepResult.WinShare ? (IReadOnlyList<(double, double)?>)[.. r.Points.Select(p => p.Odds is Tally t ? ((double, double)?)(t.WinInterval.Low, t.WinInterval.High) : null)] : null,
            c.Flatness))]);
    }

    private static SweepPlot Maps(SweepRequest request, SweepResult r)
    {
        (SweepInput across, SweepInput up) = (request.Inputs[0], request.Inputs[1]);
        return SweepPlot.OfTwo(across, up, [.. r.Columns.Select((c, k) =>
        {
            double?[,] values = new double?[across.Texts.Count, up.Texts.Count];
            foreach (SweepPoint p in r.Points)
            {
                values[p.Place[0], p.Place[1]] = r.Value(p, k);
            }

            return (c.Key, values, c.Best is int b ? ((int, int)?)(r.Points[b].Place[0], r.Points[b].Place[1]) : null);
        })]);
    }

    private static void WriteCsv(Stream stream, SweepRequest request, SweepResult r)
    {
        string[] odds = request.Odds > 0 ? ["win_share_low", "win_share_high", "matches"] : [];
        CsvTable.Write(
            stream,
            [.. request.Inputs.Select(i => i.Key).Concat(r.Columns.Select(c => c.Key)).Select(SafeCell.Of), .. odds],
            r.Points.Select(p => (string[])[

                // a negative number is no formula
                .. request.Inputs.Select((input, i) => input.Numbers is null ? SafeCell.Of(input.Texts[p.Place[i]]) : input.Texts[p.Place[i]]),
                .. r.Columns.Select((_, k) => CsvTable.Number(r.Value(p, k))),
                .. request.Odds > 0 ? [CsvTable.Number(p.Odds?.WinInterval.Low), CsvTable.Number(p.Odds?.WinInterval.High), p.Odds?.Matches.ToString(CultureInfo.InvariantCulture) ?? ""] : Array.Empty<string>()]));
    }

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
