using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Binding;
using PushSim.Cli.Shared;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Scenarios.Reading;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using Spectre.Console;

namespace PushSim.Cli.Odds;

/// <summary>Odds as text for a person.</summary>
internal static class OddsText
{
    public const int MostFailed = 20;

    public static void Write(TextWriter output, OddsResult r, IReadOnlyList<string> files)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + PlainText.Marked(r.Verdict) + "[/]");
        console.WriteLine();
        foreach (AnswerTable table in Tables(r))
        {
            TextReport.Write(console, table);
        }

        foreach (string warning in r.Warnings)
        {
            console.MarkupLine("warning: " + PlainText.Marked(warning));
        }

        if (r.Inputs.Count == 0 && r.Tally.Matches > 0)
        {
            console.MarkupLine(PlainText.Marked(Text($"{r.Tally.Matches} matches are too few, or no single input matters enough, to tell which matters most.")));
        }

        console.MarkupLine("[dim]" + PlainText.Marked(Computation(r)) + "[/]");
        console.MarkupLine("[dim]" + Markup.Escape(Cautions.OfPredictions) + "[/]");
        TextReport.WriteFiles(output, files);
    }

    /// <summary>The tables, for screen and page.</summary>
    public static IReadOnlyList<AnswerTable> Tables(OddsResult r) =>
        [Shares(r), Decisions(r), .. r.Inputs.Count > 0 ? [Mattering(r)] : Array.Empty<AnswerTable>(), .. r.Effects.Count > 0 ? [Together(r)] : Array.Empty<AnswerTable>(), Drawn(r.Values)];

    /// <summary>Seed, speed and methods.</summary>
    public static string Computation(OddsResult r) =>
        Text($"seed {r.Seed}; {PlainNumber.Of(r.MatchesPerSecond, 3)} matches a second{OneByOne}; intervals: Wilson score, of differences Tango score; shares of variance: first order, from the same matches{(r.Effects.Count > 0 ? ", with others: total, one input drawn anew (Jansen 1999)" : "")}");

    private static string OneByOne => MatchBatch.BestLanes == 1 ? ", one at a time since the processor lacks AVX2 (the same matches, slower)" : "";

    private static AnswerTable Drawn(IReadOnlyList<TolerancedValue> values)
    {
        AnswerTable table = new AnswerTable("Drawn").AddColumn("Value").AddNumberColumn("Middle").AddNumberColumn("Tolerance").AddColumn("Unit").AddColumn("Spread").AddColumn("From");
        foreach (TolerancedValue v in values)
        {
            string part = v.Part.Length == 0 ? "" : ", " + v.Part;
            (double scale, string unit) = v.Unit switch
            {
                "rad" => (180.0 / Math.PI, "deg"),
                "m3" => (1e9, "mm3"),
                "N/m2" => (1e-6, "N/mm2"),
                "kg m2" => (1e7, "g cm2"),
                _ => (1.0, v.Unit),
            };
            table.AddRow(v.Key + part, PlainNumber.Of(scale * v.Middle, 4), "± " + PlainNumber.Of(scale * v.Tolerance, 3), unit, v.Spread.ToString().ToLowerInvariant(), v.IsOfClass ? "class" : v.IsOfShelf ? "shelf" : "file");
        }

        return values.Any(v => v.IsOfClass) ? table.AddRemark("class: usual for its kind, taken because the file states no tolerance", isAside: true) : table;
    }

    private static AnswerTable Mattering(OddsResult r)
    {
        AnswerTable table = new AnswerTable("What matters most by itself").AddColumn("Input").AddNumberColumn("Share of the ground's variance");
        foreach ((string name, double share) in r.Inputs)
        {
            table.AddRow(name, Percent(share));
        }

        return table.AddRemark(
            "by itself: how much less the ground gained would vary if this one input were known" + (r.Effects.Count > 0 ? "" : "; what an input does only together with others, --effects tells"), isAside: true);
    }

    private static AnswerTable Together(OddsResult r)
    {
        AnswerTable table = new AnswerTable("What matters together with others").AddColumn("Input").AddNumberColumn("Share that it has a hand in").AddColumn("95 % interval");
        foreach (InputEffect e in r.Effects)
        {
            table.AddRow(e.Key, Percent(e.Share), Text($"{100.0 * e.Bounds.Low:0.0} to {100.0 * e.Bounds.High:0.0} %"));
        }

        return table.AddRemark(
            "has a hand in: how much the ground gained would still vary if all inputs but this one were known. Little by itself and much here: what it does depends on the others, as when it takes two small errors to tip a robot. Shared effects count for each input that has a hand in them, so these shares may add up to more than 100 %",
            isAside: true);
    }

    private static AnswerTable Shares(OddsResult r)
    {
        Tally t = r.Tally;
        AnswerTable table = new AnswerTable("Outcome").AddColumn("Who").AddNumberColumn("Matches").AddNumberColumn("Share").AddColumn("95 % interval");
        Row($"{r.Robot} wins", t.Wins);
        Row($"{r.Opponent} wins", t.Losses);
        Row("stalemate", t.Stalemates);
        Bounds lead = t.LeadInterval;
        table.AddRow("wins less losses", "", Text($"{100.0 * (t.Share(t.Wins) - t.Share(t.Losses)):+0.0;-0.0;0.0} %"), Text($"{100.0 * lead.Low:+0.0;-0.0;0.0} to {100.0 * lead.High:+0.0;-0.0;0.0} %"));
        return table;

        void Row(string name, long count)
        {
            Bounds i = ShareInterval.Wilson(count, t.Matches);
            table.AddRow(name, count.ToString(CultureInfo.InvariantCulture), Percent(t.Share(count)), Text($"{100.0 * i.Low:0.0} to {100.0 * i.High:0.0} %"));
        }
    }

    private static AnswerTable Decisions(OddsResult r)
    {
        AnswerTable table = new AnswerTable("What decided").AddColumn("Ending").AddColumn("Held back").AddNumberColumn("Matches").AddNumberColumn("Share");
        foreach ((Decision d, long count) in r.Tally.Decisions)
        {
            (string won, string lost) = d.Winner == 1 ? (r.Opponent, r.Robot) : (r.Robot, r.Opponent);
            string words = d.Ending switch
            {
                ShoveEnding.Line => $"{won} pushes {lost} over the line",
                ShoveEnding.Ground => $"{won} has gained ground when time is up",
                ShoveEnding.Tips => d.Winner < 0 ? "both tip past 20 deg or lose the floor" : $"{lost} tips past 20 deg or loses the floor",
                _ => "nobody gains ground",
            };
            table.AddRow(words, Held(r, d), count.ToString(CultureInfo.InvariantCulture), Percent(r.Tally.Share(count)));
        }

        return r.Tally.Decisions.Any(d => d.Decision.Ending == ShoveEnding.Tips)
            ? table.AddRemark("tilted or lifted: decides whatever ground was gained, so the loser may have gained some", isAside: true)
            : table;
    }

    private static string Held(OddsResult r, Decision d) => string.Join("; ", new[] { Held(r.Robot, d.Limit), Held(r.Opponent, d.OpponentLimit) }.OfType<string>());

    private static string? Held(string robot, BindingKind? limit) => limit is BindingKind l ? $"{robot} by its {BindingTable.Words(l)}" : null;

    private static string Percent(double share) => Text($"{100.0 * share:0.0} %");

    private static string Text(FormattableString text) => FormattableString.Invariant(text);
}
