using PushSim.Scenarios.Notebook;
using Spectre.Console;

namespace PushSim.Cli.Garage;

/// <summary>A garage as text for a person.</summary>
internal static class GarageText
{
    // Lines for things without --details [1].
    private const int MostLines = 17;
    private const int MostOfName = 18;

    /// <summary>What is there, in a sentence.</summary>
    public static string Verdict(GarageContents g)
    {
        string things = Phrases(Count(g.Robots.Count, "robot"), Count(g.Tyres.Count, "tyre"), Count(g.Rivals.Count, "opponent"), Count(g.Floors.Count, "floor"));
        int wrong = g.All.Count(i => i.Item.IsUnusable);
        return $"{PlainText.Of(g.Name)} has {things}, {Readings(g)}; {(wrong == 0 ? "all can be used" : $"{wrong} cannot be used as {(wrong == 1 ? "it is" : "they are")}")}.";
    }

    /// <param name="output">Where to.</param>
    /// <param name="g">The garage.</param>
    /// <param name="named">Its folder as the command line names it; null: it was found.</param>
    /// <param name="isDetailed">Whether everything is told.</param>
    public static void Write(TextWriter output, GarageContents g, string? named, bool isDetailed)
    {
        IAnsiConsole console = TextReport.Console(output);
        TextReport.Wrapped(console, Verdict(g), Decoration.Bold);
        if (isDetailed)
        {
            TextReport.Write(console, Table(g));
        }
        else
        {
            (string Kind, GarageItem Item)[] all = [.. g.All];
            int kind = all.Select(i => i.Kind.Length).DefaultIfEmpty(0).Max();
            int name = Math.Min(MostOfName, all.Select(i => i.Item.Name.Length).DefaultIfEmpty(0).Max());

            // what lacks something is told first to be seen
            foreach ((string word, GarageItem item) in all.Take(all.Length > MostLines ? MostLines - 1 : MostLines))
            {
                string what = item.Lacks.Count > 0 ? $"{(item.IsUnusable ? "!" : "lacks")} {string.Join("; ", item.Lacks)}" : item.About;
                string line = $"  {word.PadRight(kind)}  {Cut(item.Name, name).PadRight(name)}  {PlainText.Of(item.Lacks.Count > 0 && item.Lacks[0].StartsWith("guessed", StringComparison.Ordinal) ? string.Join("; ", item.Lacks.Prepend(item.About)) : what)}";
                TextReport.Line(console, Cut(line, WrappedText.Width));
            }

            if (all.Length > MostLines)
            {
                TextReport.Line(console, $"  and {all.Length - MostLines + 1} more: --details");
            }
        }

        TextReport.Wrapped(console, "Next: " + Next(g));
        foreach (Suggestion s in Suggestions(g, named))
        {
            output.WriteLine(TextReport.Of(s));
        }

        if (!isDetailed)
        {
            TextReport.Line(console, "What each is and lacks in full: --details", Decoration.Dim);
        }
    }

    /// <summary>Everything in a table.</summary>
    public static AnswerTable Table(GarageContents g)
    {
        AnswerTable table = new AnswerTable("Garage").AddColumn("kind").AddColumn("name").AddColumn("what it is").AddNumberColumn("pulls").AddColumn("lacks");
        foreach ((string kind, GarageItem item) in g.All)
        {
            table.AddRow(kind, item.Name, item.About, item.Pulls?.ToString(CultureInfo.InvariantCulture) ?? "", string.Join("; ", item.Lacks));
        }

        return table;
    }

    /// <summary>What to do next.</summary>
    public static string Next(GarageContents g)
    {
        if (g.All.FirstOrDefault(i => i.Item.IsUnusable) is { Item: not null } broken)
        {
            return $"mend {broken.Kind} {broken.Item.Name}: {broken.Item.Lacks.FirstOrDefault() ?? broken.Item.About}.";
        }

        if (g.Tyres.FirstOrDefault(t => t.Pulls == 0) is { } tyre)
        {
            return $"pull tyre {tyre.Name} six times and write the readings into {NotebookReader.FileName}.";
        }

        return g.Robots.Count == 0 ? $"put a robot's file into {GarageFolder.RobotFolder}/ (pushsim new writes one)." : Opponent(g) is null ? $"write an opponent into {GarageFolder.FileName}: mass, wheels, motors." : "let two of them meet.";
    }

    /// <summary>Commands that make something of what is there.</summary>
    /// <param name="g">The garage.</param>
    /// <param name="named">Its folder as the command line names it; null: it was found.</param>
    public static IReadOnlyList<Suggestion> Suggestions(GarageContents g, string? named)
    {
        string[] meet = Opponent(g) is { } opponent && g.Robots.FirstOrDefault(r => !r.IsUnusable) is { } robot ? [robot.Name, opponent] : [];
        return meet.Length == 0 ? [] : [new AskedFiles(meet[0]) { Opponent = meet[1], Garage = named }.Odds("Who wins")];
    }

    private static string? Opponent(GarageContents g) => g.Rivals.Where(r => !r.IsUnusable).Concat(g.Robots.Where(r => !r.IsUnusable).Skip(1)).FirstOrDefault()?.Name;

    private static string Readings(GarageContents g)
    {
        if (g.Notebook is not { } notebook)
        {
            return "no readings yet";
        }

        int counted = notebook.Rows.Count(r => r.IsCounted);
        int days = notebook.Rows.Where(r => r.When is not null).Select(r => r.When!.Value.Date).Distinct().Count();
        return !notebook.IsRead ? $"a {NotebookReader.FileName} with mistakes" : counted == 0 ? "no readings yet" : $"{Count(counted, "reading")}{(days > 0 ? $" of {Count(days, "day")}" : "")}";
    }

    private static string Count(int n, string one) => n == 0 ? $"no {one}s" : $"{n} {one}{(n == 1 ? "" : "s")}";

    private static string Phrases(params string[] all) => string.Join(", ", all);

    private static string Cut(string text, int most) => text.Length <= most ? text : text[..(most - 1)] + "…";
}
