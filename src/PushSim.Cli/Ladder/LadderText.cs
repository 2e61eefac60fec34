using PushSim.Analysis.Ladder;
using PushSim.Cli.Shared;
using PushSim.Numerics;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using Spectre.Console;

namespace PushSim.Cli.Ladder;

/// <summary>A ladder as text for a person.</summary>
internal static class LadderText
{
    public const string Method = "Davidson 1970 (Bradley and Terry's model with stalemates), greatest likelihood, 95 % Wald intervals; 400 points are odds of ten to one";

    private const int MostFailed = 20;

    public static void Write(TextWriter output, LadderResult r, IReadOnlyList<string> files)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + Escape(r.Verdict) + "[/]");
        console.WriteLine();
        foreach (AnswerTable table in Tables(r))
        {
            TextReport.Write(console, table);
        }

        foreach (string warning in Warnings(r))
        {
            console.MarkupLine("warning: " + Escape(warning));
        }

        console.MarkupLine("[dim]" + Escape(Computation(r)) + "[/]");
        console.MarkupLine("[dim]" + Markup.Escape(Cautions.OfPredictions) + "[/]");
        TextReport.WriteFiles(output, files);
    }

    /// <summary>The tables, for screen and page: the square and the ranking, with the cycles and what all matches share under it.</summary>
    public static IReadOnlyList<AnswerTable> Tables(LadderResult r)
    {
        int[] order = Order(r);
        AnswerTable square = new AnswerTable("Wins against").AddColumn("Robot");
        foreach (int column in order)
        {
            square.AddNumberColumn(r.Robots[column]);
        }

        foreach (int row in order)
        {
            square.AddRow([r.Robots[row], .. order.Select(c => r.Table.WinShares[row][c] is double s ? Text($"{100.0 * s:0} %") : "")]);
        }

        AnswerTable ranking = new AnswerTable("Rank").AddColumn("Rank").AddColumn("Robot").AddNumberColumn("Score").AddColumn("95 % interval");
        foreach (((int robot, double score, double low, double high), int i) in r.Table.Ranking.Select((x, i) => (x, i)))
        {
            ranking.AddRow(Text($"{i + 1}"), r.Robots[robot], Text($"{score:0}"), Text($"{low:0} to {high:0}"));
        }

        foreach (Cycle c in r.Table.Cycles)
        {
            ranking.AddRemark($"{(c.IsSure ? "cycle" : "perhaps a cycle (a lead may be chance)")}: {r.Robots[c.First]} beats {r.Robots[c.Second]} beats {r.Robots[c.Third]} beats {r.Robots[c.First]}");
        }

        return [square, ranking.AddRemark(r.Setting)];
    }

    /// <summary>Matches, seed, speed and method.</summary>
    public static string Computation(LadderResult r) => Text($"{r.Matches} matches, seed {r.Seed}, {PlainNumber.Of(r.MatchesPerSecond, 3)} a second; score: {Method}");

    public static List<string> Warnings(LadderResult r)
    {
        List<string> warnings = [];
        if (r.Table.HasPrior)
        {
            warnings.Add("some robots never lose to the rest, or hardly anything but stalemates links them, which fits any score however large; half a win each way was added to every pair");
        }

        warnings.AddRange(r.Failed.Take(MostFailed).Select(f => $"match {f.Match} of {f.Pair} failed and is left out: {f.Cause}"));
        return warnings;
    }

    public static int[] Order(LadderResult r) => r.Table.Ranking.Count > 0 ? [.. r.Table.Ranking.Select(x => x.Robot)] : [.. Enumerable.Range(0, r.Robots.Count)];

    private static string Escape(string text) => Markup.Escape(PlainText.Of(text));

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
