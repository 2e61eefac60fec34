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
            TextReport.Line(console, result.Scenario.Question, Decoration.Dim);
        }

        TextReport.Line(console, RunWords.Verdict(result), Decoration.Bold);
        console.WriteLine();
        foreach (AnswerTable table in RunTables.Of(result).Concat(TurnTables.Of(result)))
        {
            TextReport.Write(console, table);
        }

        if (map is not null)
        {
            TextReport.Line(console, map);
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
            TextReport.Line(console, "warning: " + warning);
        }

        foreach (string line in EstimateText.Lines(read, file).Append(RunTables.Computation(result, milliseconds)).Append(Cautions.OfPredictions))
        {
            TextReport.Line(console, line, Decoration.Dim);
        }

        TextReport.WriteFiles(output, files);
    }
}
