using PushSim.Analysis.Chance;
using PushSim.Analysis.Sweep;
using PushSim.Cli.Shared;
using PushSim.Numerics;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using Spectre.Console;

namespace PushSim.Cli.Sweep;

/// <summary>A sweep as text for a person.</summary>
internal static class SweepText
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
        console.MarkupLine("[dim]" + Markup.Escape(Cautions.OfPredictions) + "[/]");
        TextReport.WriteFiles(output, files);
    }

    /// <summary>The points, for screen and page.</summary>
    public static AnswerTable Table(SweepRequest request, SweepResult r, int mostRows)
    {
        AnswerTable table = new(request.Inputs[0].Key);
        foreach (SweepInput input in request.Inputs)
        {
            _ = input.Numbers is null ? table.AddColumn(input.Key) : table.AddNumberColumn(input.Key);
        }

        foreach (SweepColumn column in r.Table.Columns)
        {
            table.AddNumberColumn(column.Key);
        }

        if (request.Odds > 0)
        {
            table.AddColumn("95 % interval");
        }

        foreach (SweepPoint point in r.Table.Points.Take(mostRows))
        {
            Bounds? odds = point.Odds?.WinInterval;
            table.AddRow([
                .. request.Inputs.Select((input, i) => input.Texts[point.Place[i]]),
                .. r.Table.Columns.Select((c, k) => r.Table.Value(point, k) is double v ? PlainNumber.Of(v, 5) : "-"),
                .. request.Odds > 0 ? [Text($"{odds?.Low:0.000} to {odds?.High:0.000}")] : Array.Empty<string>()]);
        }

        return r.Table.Points.Count > mostRows ? table.AddRemark($"and {r.Table.Points.Count - mostRows} more points, all in sweep.csv") : table;
    }

    /// <summary>Points, matches, seed and time.</summary>
    public static string Computation(SweepRequest request, SweepResult r) =>
        Text($"{r.Table.Points.Count} points{(request.Odds > 0 ? Text($", {request.Odds} drawn matches at each, seed {request.Plan.Seed}") : "")}, {r.Seconds:0.0} s");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
