using PushSim.Analysis.Plan;
using PushSim.Words.Plans;
using Spectre.Console;

namespace PushSim.Cli.Plan;

/// <summary>A plan as text for a person.</summary>
internal static class PlanText
{
    // Blocks and checks that are shown without --details [1].
    private const int MostBlocks = 6;

    public static void Write(TextWriter output, PullPlan plan, SpreadSource source, bool hasLoad, string file, bool isDetailed)
    {
        IAnsiConsole console = TextReport.Console(output);
        TextReport.Wrapped(console, PlanWords.Verdict(plan), Decoration.Bold);
        TextReport.Wrapped(console, PlanWords.Scatter(plan, source));
        console.WriteLine();
        IGrouping<int, PlannedPull>[] blocks = [.. plan.Pulls.GroupBy(p => p.Block)];
        foreach (IGrouping<int, PlannedPull> block in blocks.Take(isDetailed ? int.MaxValue : MostBlocks))
        {
            string line = $"block {block.Key}: {string.Join(", ", block.Select(p => p.Tyre))}";
            TextReport.Line(console, isDetailed || line.Length <= WrappedText.Width ? line : line[..(WrappedText.Width - 1)] + "…");
        }

        if (!isDetailed)
        {
            TextReport.Wrapped(console, (blocks.Length > MostBlocks ? $"and {blocks.Length - MostBlocks} more {(blocks.Length - MostBlocks == 1 ? "block" : "blocks")}. " : "") + "All rows stand in the table; what to do before each pull: --details");
            TextReport.Line(console, Cautions.Short, Decoration.Dim);
        }
        else
        {
            console.WriteLine();
            foreach (string check in PlanWords.Checks)
            {
                TextReport.Line(console, "- " + check);
            }

            TextReport.Line(console, string.Join(' ', PlanWords.Cautions), Decoration.Dim);
        }

        output.WriteLine("wrote " + file);
        if (hasLoad)
        {
            output.WriteLine("then: " + PlainText.Of(CommandLine.Of("fit", [CommandLine.File(file)])));
        }
        else
        {
            output.WriteLine("then: fit it with --load, which is what a scale shows under the tested tyres");
        }
    }
}
