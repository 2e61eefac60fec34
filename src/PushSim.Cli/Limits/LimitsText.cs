using PushSim.Analysis.Limits;
using PushSim.Cli.Shared;
using PushSim.Runs;
using PushSim.Scenarios.Scenes;
using PushSim.Words.Limits;
using PushSim.Words.Tables;
using PushSim.Words.Terms;
using Spectre.Console;

namespace PushSim.Cli.Limits;

/// <summary>The limits as text for a person: verdict, forces, states, wheels, gains, ratio, wiring, match, what bound each wheel over the run.</summary>
internal static class LimitsText
{
    public static void Write(TextWriter output, LimitReport r, RunResult? run, ReadResult read, string file, IReadOnlyList<string> files)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + PlainText.Marked(LimitVerdict.Of(r)) + "[/]");
        console.WriteLine();
        foreach (AnswerTable table in LimitTables.Of(r, run))
        {
            TextReport.Write(console, table);
        }

        foreach (string warning in LimitWarnings.Of(r))
        {
            console.MarkupLine("warning: " + PlainText.Marked(warning));
        }

        EstimateText.Write(console, read, file);
        console.MarkupLine("[dim]" + Markup.Escape(Cautions.OfPredictions) + "[/]");
        TextReport.WriteFiles(output, files);
    }
}
