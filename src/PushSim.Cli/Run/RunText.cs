using PushSim.Words.Turns;
using Spectre.Console;

namespace PushSim.Cli.Run;

/// <summary>A run as text for a person: verdict first, then numbers, energy, warnings, cautions, files.</summary>
internal static class RunText
{
    public static void Write(TextWriter output, RunResult result, double milliseconds, ReadResult read, string file, IReadOnlyList<string> files, TyreAnswers? tyres = null, string? map = null)
    {
        IAnsiConsole console = TextReport.Console(output);
        if (result.Scenario.Question.Length > 0)
        {
            console.MarkupLine("[dim]" + PlainText.Marked(result.Scenario.Question) + "[/]");
        }

        console.MarkupLine("[bold]" + PlainText.Marked(RunWords.Verdict(result)) + "[/]");
        console.WriteLine();
        foreach (AnswerTable table in RunTables.Of(result).Concat(TurnTables.Of(result)))
        {
            TextReport.Write(console, table);
        }

        if (map is not null)
        {
            console.MarkupLine(PlainText.Marked(map));
        }

        if (tyres is not null)
        {
            foreach (AnswerTable table in TyreText.Tables(tyres))
            {
                TextReport.Write(console, table);
            }
        }

        foreach (string warning in RunWords.Warnings(result))
        {
            console.MarkupLine("warning: " + PlainText.Marked(warning));
        }

        foreach (string line in EstimateText.Lines(read, file).Append(RunTables.Computation(result, milliseconds)).Append(Cautions.OfPredictions))
        {
            console.MarkupLine("[dim]" + PlainText.Marked(line) + "[/]");
        }

        TextReport.WriteFiles(output, files);
    }
}
