using System.Globalization;
using System.Text;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Ladder;
using PushSim.Plotting;
using Spectre.Console;

namespace PushSim.Cli;

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
        int[] order = Order(r);
        Table square = new Table().Border(TableBorder.Minimal).AddColumn("Wins against");
        foreach (int column in order)
        {
            square.AddColumn(new TableColumn(Escape(r.Robots[column])).RightAligned());
        }

        foreach (int row in order)
        {
            square.AddRow([Escape(r.Robots[row]), .. order.Select(c => r.WinShares[row][c] is double s ? Text($"{100.0 * s:0} %") : "")]);
        }

        console.Write(square);
        Table ranking = new Table().Border(TableBorder.Minimal).AddColumn("Rank").AddColumn("Robot").AddColumn(new TableColumn("Score").RightAligned()).AddColumn("95 % interval");
        foreach (((int robot, double score, double low, double high), int i) in r.Ranking.Select((x, i) => (x, i)))
        {
            ranking.AddRow(Text($"{i + 1}"), Escape(r.Robots[robot]), Text($"{score:0}"), Text($"{low:0} to {high:0}"));
        }

        console.Write(ranking);
        foreach (Cycle c in r.Cycles)
        {
            console.MarkupLine(Escape($"{(c.IsSure ? "cycle" : "perhaps a cycle (a lead may be chance)")}: {r.Robots[c.First]} beats {r.Robots[c.Second]} beats {r.Robots[c.Third]} beats {r.Robots[c.First]}"));
        }

        foreach (string warning in Warnings(r))
        {
            console.MarkupLine("warning: " + Escape(warning));
        }

        console.MarkupLine("[dim]" + Escape(Text($"{r.Matches} matches, seed {r.Seed}, {r.MatchesPerSecond:0.#} a second; score: {Method}")) + "[/]");
        console.MarkupLine("[dim]" + Markup.Escape(TextReport.Cautions) + "[/]");
        foreach (string file in files)
        {
            output.WriteLine("wrote " + file);
        }
    }

    public static string Json(LadderResult r) => JsonReport.Write(w =>
    {
        JsonReport.WriteHead(w, "ladder", r.Verdict, Warnings(r));
        w.WriteStartArray("ranking");
        foreach ((int robot, double score, double low, double high) in r.Ranking)
        {
            w.WriteStartObject();
            w.WriteString("robot", r.Robots[robot]);
            w.WriteNumber("score", score);
            w.WriteNumber("score_low", low);
            w.WriteNumber("score_high", high);
            w.WriteEndObject();
        }

        w.WriteEndArray();
        w.WriteString("score_method", Method);
        w.WriteStartArray("robots");
        foreach (string robot in r.Robots)
        {
            w.WriteStringValue(robot);
        }

        w.WriteEndArray();
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
        w.WriteStartArray("pairs");
        foreach (PairRecord p in r.Pairs)
        {
            Interval i = ShareInterval.Wilson((long)p.Wins, (long)p.Matches);
            w.WriteStartObject();
            w.WriteString("robot", r.Robots[p.First]);
            w.WriteString("opponent", r.Robots[p.Second]);
            w.WriteNumber("wins", p.Wins);
            w.WriteNumber("losses", p.Losses);
            w.WriteNumber("stalemates", p.Stalemates);
            w.WriteNumber("win_share_low", i.Low);
            w.WriteNumber("win_share_high", i.High);
            w.WriteEndObject();
        }

        w.WriteEndArray();
        w.WriteStartArray("cycles");
        foreach (Cycle c in r.Cycles)
        {
            w.WriteStartObject();
            w.WriteStartArray("robots");
            w.WriteStringValue(r.Robots[c.First]);
            w.WriteStringValue(r.Robots[c.Second]);
            w.WriteStringValue(r.Robots[c.Third]);
            w.WriteEndArray();
            w.WriteBoolean("sure", c.IsSure);
            w.WriteEndObject();
        }

        w.WriteEndArray();
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
            int[] order = Order(r);
            PlotSheet picture = LadderPlot.Of(
                [.. order.Select(i => r.Robots[i])], [.. order.Select(i => (IReadOnlyList<double?>)[.. order.Select(j => r.WinShares[i][j])])], [.. r.Ranking.Select(x => (x.Score, x.Low, x.High))]);
            files.Add(folder.Write("plot.svg", picture.WriteSvg));
            files.Add(folder.Write("plot.png", picture.WritePng));
        }

        return files;
    }

    private static void WriteCsv(Stream stream, LadderResult r)
    {
        using var writer = new StreamWriter(stream, new UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvHelper.CsvWriter(writer, CultureInfo.InvariantCulture);
        foreach (string column in new[] { "robot", "opponent", "wins", "losses", "stalemates" })
        {
            csv.WriteField(column);
        }

        csv.NextRecord();
        foreach (PairRecord p in r.Pairs)
        {
            csv.WriteField(SafeCell.Of(r.Robots[p.First]));
            csv.WriteField(SafeCell.Of(r.Robots[p.Second]));
            csv.WriteField(p.Wins);
            csv.WriteField(p.Losses);
            csv.WriteField(p.Stalemates);
            csv.NextRecord();
        }
    }

    private static List<string> Warnings(LadderResult r)
    {
        List<string> warnings = [];
        if (r.HasPrior)
        {
            warnings.Add("some robots never lose to the rest, which fits any score however large; half a win each way was added to every pair");
        }

        warnings.AddRange(r.Failed.Take(MostFailed).Select(f => $"match {f.Match} of {f.Pair} failed and is left out: {f.Cause}"));
        return warnings;
    }

    private static int[] Order(LadderResult r) => r.Ranking.Count > 0 ? [.. r.Ranking.Select(x => x.Robot)] : [.. Enumerable.Range(0, r.Robots.Count)];

    private static string Escape(string text) => Markup.Escape(PlainText.Of(text));

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
