using System.Globalization;
using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Sweep;
using PushSim.Plotting;
using Spectre.Console;

namespace PushSim.Cli;

/// <summary>A sweep as text, JSON, CSV and picture.</summary>
internal static class SweepReport
{
    private const int MostRows = 60;

    public static void Write(TextWriter output, SweepRequest request, SweepResult r, IReadOnlyList<string> files)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + Escape(r.Verdict) + "[/]");
        console.WriteLine();
        Table table = new Table().Border(TableBorder.Minimal);
        foreach (SweepInput input in request.Inputs)
        {
            table.AddColumn(new TableColumn(Escape(input.Key)).RightAligned());
        }

        foreach (SweepColumn column in r.Columns)
        {
            table.AddColumn(new TableColumn(column.Key).RightAligned());
        }

        if (request.Odds > 0)
        {
            table.AddColumn("95 % interval");
        }

        foreach (SweepPoint point in r.Points.Take(MostRows))
        {
            List<string> cells = [.. request.Inputs.Select((input, i) => Escape(input.Texts[point.Place[i]]))];
            cells.AddRange(r.Columns.Select((c, k) => r.Value(point, k) is double v ? Text($"{v:G5}") : "-"));
            if (request.Odds > 0)
            {
                Interval? i = point.Odds?.WinInterval;
                cells.Add(Text($"{i?.Low:0.000} to {i?.High:0.000}"));
            }

            table.AddRow([.. cells]);
        }

        console.Write(table);
        if (r.Points.Count > MostRows)
        {
            console.MarkupLine($"and {r.Points.Count - MostRows} more points, all in sweep.csv");
        }

        foreach (string warning in r.Warnings)
        {
            console.MarkupLine("warning: " + Escape(warning));
        }

        string seed = request.Odds > 0 ? Text($", {request.Odds} drawn matches at each, seed {request.Seed}") : "";
        console.MarkupLine("[dim]" + Escape(Text($"{r.Points.Count} points{seed}, {r.Seconds:0.0} s")) + "[/]");
        console.MarkupLine("[dim]" + Markup.Escape(TextReport.Cautions) + "[/]");
        foreach (string file in files)
        {
            output.WriteLine("wrote " + file);
        }
    }

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
        w.WriteNumber("seed", request.Seed);
        w.WriteBoolean("interrupted", r.IsInterrupted);
    });

    public static List<string> WriteFiles(OutputFolder folder, SweepRequest request, SweepResult r)
    {
        List<string> files = [folder.Write("sweep.csv", stream => WriteCsv(stream, request, r))];
        if (!request.NoPlots && r.Points.Count > 1)
        {
            PlotSheet picture = request.Inputs.Count == 1 ? Curves(request, r) : Maps(request, r);
            files.Add(folder.Write("plot.svg", picture.WriteSvg));
            files.Add(folder.Write("plot.png", picture.WritePng));
        }

        return files;
    }

    private static PlotSheet Curves(SweepRequest request, SweepResult r)
    {
        SweepInput input = request.Inputs[0];
        SweepInput shown = input with { Texts = [.. r.Points.Select(p => input.Texts[p.Place[0]])], Numbers = input.Numbers is null ? null : [.. r.Points.Select(p => input.Numbers[p.Place[0]])] };
        return SweepPlot.OfOne(shown, [.. r.Columns.Select((c, k) => (
            c.Key,
            (IReadOnlyList<double?>)[.. r.Points.Select(p => r.Value(p, k))],
            c.Key == SweepResult.WinShare ? (IReadOnlyList<(double, double)?>)[.. r.Points.Select(p => p.Odds is Tally t ? ((double, double)?)(t.WinInterval.Low, t.WinInterval.High) : null)] : null,
            c.Flatness))]);
    }

    private static PlotSheet Maps(SweepRequest request, SweepResult r)
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
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvHelper.CsvWriter(writer, CultureInfo.InvariantCulture);
        string[] odds = request.Odds > 0 ? ["win_share_low", "win_share_high", "matches"] : [];
        foreach (string column in request.Inputs.Select(i => i.Key).Concat(r.Columns.Select(c => c.Key)).Concat(odds))
        {
            csv.WriteField(SafeCell.Of(column));
        }

        csv.NextRecord();
        foreach (SweepPoint p in r.Points)
        {
            for (int i = 0; i < p.Place.Length; i++)
            {
                // a negative number is no formula
                string text = request.Inputs[i].Texts[p.Place[i]];
                csv.WriteField(request.Inputs[i].Numbers is null ? SafeCell.Of(text) : text);
            }

            for (int k = 0; k < r.Columns.Count; k++)
            {
                csv.WriteField(r.Value(p, k)?.ToString("G8", CultureInfo.InvariantCulture) ?? "");
            }

            if (request.Odds > 0)
            {
                csv.WriteField(p.Odds?.WinInterval.Low.ToString("G8", CultureInfo.InvariantCulture) ?? "");
                csv.WriteField(p.Odds?.WinInterval.High.ToString("G8", CultureInfo.InvariantCulture) ?? "");
                csv.WriteField(p.Odds?.Matches.ToString(CultureInfo.InvariantCulture) ?? "");
            }

            csv.NextRecord();
        }
    }

    private static string Escape(string text) => Markup.Escape(PlainText.Of(text));

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
