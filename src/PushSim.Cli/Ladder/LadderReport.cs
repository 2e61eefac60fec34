using System.Text.Json;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Ladder;
using PushSim.Cli.Run;
using PushSim.Cli.Shared;
using PushSim.Numerics;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Report;
using Spectre.Console;

namespace PushSim.Cli.Ladder;

/// <summary>A ladder as text, JSON, CSV and picture.</summary>
internal static class LadderReport
{
    private const string Method = "Davidson 1970 (Bradley and Terry's model with stalemates), greatest likelihood, 95 % Wald intervals; 400 points are odds of ten to one";

    private const int MostFailed = 20;

    public static void Write(TextWriter output, LadderResult r, IReadOnlyList<string> files)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + Escape(r.Verdict) + "[/]");
        console.WriteLine();
        foreach (ReportTable table in Tables(r))
        {
            TextReport.Write(console, table);
        }

        foreach (string warning in Warnings(r))
        {
            console.MarkupLine("warning: " + Escape(warning));
        }

        console.MarkupLine("[dim]" + Escape(Computation(r)) + "[/]");
        console.MarkupLine("[dim]" + Markup.Escape(TextReport.Cautions) + "[/]");
        TextReport.WriteFiles(output, files);
    }

    /// <summary>The tables, for screen and page: the square and the ranking, with the cycles and what all matches share under it.</summary>
    public static IReadOnlyList<ReportTable> Tables(LadderResult r)
    {
        int[] order = Order(r);
        ReportTable square = new ReportTable("Wins against").AddColumn("Robot");
        foreach (int column in order)
        {
            square.AddNumberColumn(r.Robots[column]);
        }

        foreach (int row in order)
        {
            square.AddRow([r.Robots[row], .. order.Select(c => r.WinShares[row][c] is double s ? Text($"{100.0 * s:0} %") : "")]);
        }

        ReportTable ranking = new ReportTable("Rank").AddColumn("Rank").AddColumn("Robot").AddNumberColumn("Score").AddColumn("95 % interval");
        foreach (((int robot, double score, double low, double high), int i) in r.Ranking.Select((x, i) => (x, i)))
        {
            ranking.AddRow(Text($"{i + 1}"), r.Robots[robot], Text($"{score:0}"), Text($"{low:0} to {high:0}"));
        }

        foreach (Cycle c in r.Cycles)
        {
            ranking.AddRemark($"{(c.IsSure ? "cycle" : "perhaps a cycle (a lead may be chance)")}: {r.Robots[c.First]} beats {r.Robots[c.Second]} beats {r.Robots[c.Third]} beats {r.Robots[c.First]}");
        }

        return [square, ranking.AddRemark(r.Setting)];
    }

    /// <summary>Matches, seed, speed and method.</summary>
    public static string Computation(LadderResult r) => Text($"{r.Matches} matches, seed {r.Seed}, {PlainNumber.Of(r.MatchesPerSecond, 3)} a second; score: {Method}");

    /// <summary>Square and scores for a page; empty without a ranking.</summary>
    public static IReadOnlyList<ReportFigure> Figures(LadderResult r) => r.Ranking.Count == 0 ? [] : LadderPlot.Figures(Names(r), Shares(r), Scores(r));

    private static string[] Names(LadderResult r) => [.. Order(r).Select(i => r.Robots[i])];

    private static IReadOnlyList<double?>[] Shares(LadderResult r) => [.. Order(r).Select(i => (IReadOnlyList<double?>)[.. Order(r).Select(j => r.WinShares[i][j])])];

    private static (double Score, double Low, double High)[] Scores(LadderResult r) => [.. r.Ranking.Select(x => (x.Score, x.Low, x.High))];

    public static string Json(LadderResult r) => JsonReport.Write(w =>
    {
        JsonReport.WriteHead(w, "ladder", r.Verdict, Warnings(r));
        JsonReport.WriteRows(w, "ranking", r.Ranking, x =>
        {
            w.WriteString("robot", r.Robots[x.Robot]);
            w.WriteNumber("score", x.Score);
            w.WriteNumber("score_low", x.Low);
            w.WriteNumber("score_high", x.High);
        });
        w.WriteString("score_method", Method);
        w.WriteString("setting", r.Setting);
        WriteNames(w, "robots", r.Robots);
        WriteWinShares(w, r);
        WritePairs(w, r);
        JsonReport.WriteRows(w, "cycles", r.Cycles, c =>
        {
            WriteNames(w, "robots", [r.Robots[c.First], r.Robots[c.Second], r.Robots[c.Third]]);
            w.WriteBoolean("sure", c.IsSure);
        });
        w.WriteNumber("matches", r.Matches);
        w.WriteNumber("failed_matches", r.Failed.Count);
        w.WriteNumber("seed", r.Seed);
        JsonReport.WriteNumber(w, "matches_per_second", r.MatchesPerSecond);
        w.WriteBoolean("interrupted", r.IsInterrupted);
    });

    public static List<string> WriteFiles(OutputFolder folder, LadderResult r, bool noPlots)
    {
        List<string> files = [folder.Write("pairs.csv", stream => WriteCsv(stream, r))];
        if (!noPlots && r.Ranking.Count > 0)
        {
            PlotSheet picture = LadderPlot.Of(Names(r), Shares(r), Scores(r));
            files.AddRange(folder.WritePicture("plot", picture));
        }

        return files;
    }

    private static void WriteNames(Utf8JsonWriter w, string key, IEnumerable<string> names)
    {
        w.WriteStartArray(key);
        foreach (string name in names)
        {
            w.WriteStringValue(name);
        }

        w.WriteEndArray();
    }

    private static void WriteWinShares(Utf8JsonWriter w, LadderResult r)
    {
        w.WriteStartArray("win_shares");
        foreach (double?[] row in r.WinShares)
        {
            w.WriteStartArray();
            foreach (double? share in row)
            {
                if (share is double s)
                {
                    w.WriteNumberValue(s);
                }
                else
                {
                    w.WriteNullValue();
                }
            }

            w.WriteEndArray();
        }

        w.WriteEndArray();
    }

    private static void WritePairs(Utf8JsonWriter w, LadderResult r) => JsonReport.WriteRows(w, "pairs", r.Pairs, p =>
    {
        Bounds i = ShareInterval.Wilson((long)p.Wins, (long)p.Matches);
        w.WriteString("robot", r.Robots[p.First]);
        w.WriteString("opponent", r.Robots[p.Second]);
        w.WriteNumber("wins", p.Wins);
        w.WriteNumber("losses", p.Losses);
        w.WriteNumber("stalemates", p.Stalemates);
        w.WriteNumber("win_share_low", i.Low);
        w.WriteNumber("win_share_high", i.High);
    });

    private static void WriteCsv(Stream stream, LadderResult r) => CsvTable.Write(
        stream,
        ["robot", "opponent", "wins", "losses", "stalemates"],
        r.Pairs.Select(p => (string[])[SafeCell.Of(r.Robots[p.First]), SafeCell.Of(r.Robots[p.Second]), CsvTable.Number(p.Wins), CsvTable.Number(p.Losses), CsvTable.Number(p.Stalemates)]));

    public static List<string> Warnings(LadderResult r)
    {
        List<string> warnings = [];
        if (r.HasPrior)
        {
            warnings.Add("some robots never lose to the rest, or hardly anything but stalemates links them, which fits any score however large; half a win each way was added to every pair");
        }

        warnings.AddRange(r.Failed.Take(MostFailed).Select(f => $"match {f.Match} of {f.Pair} failed and is left out: {f.Cause}"));
        return warnings;
    }

    private static int[] Order(LadderResult r) => r.Ranking.Count > 0 ? [.. r.Ranking.Select(x => x.Robot)] : [.. Enumerable.Range(0, r.Robots.Count)];

    private static string Escape(string text) => Markup.Escape(PlainText.Of(text));

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
