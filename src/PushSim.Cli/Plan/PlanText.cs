using PushSim.Analysis.Plan;
using PushSim.Words.Plans;
using Spectre.Console;

namespace PushSim.Cli.Plan;

/// <summary>A plan as text for a person.</summary>
internal static class PlanText
{
    public static void Write(TextWriter output, PullPlan plan, SpreadSource source, bool hasLoad, string file)
    {
        IAnsiConsole console = TextReport.Console(output);
        TextReport.Line(console, PlanWords.Verdict(plan), Decoration.Bold);
        TextReport.Line(console, PlanWords.Scatter(plan, source));
        console.WriteLine();
        foreach (IGrouping<int, PlannedPull> block in plan.Pulls.GroupBy(p => p.Block))
        {
            TextReport.Line(console, $"block {block.Key}: {string.Join(", ", block.Select(p => p.Tyre))}");
        }

        console.WriteLine();
        foreach (string check in PlanWords.Checks)
        {
            TextReport.Line(console, "- " + check);
        }

        TextReport.Line(console, string.Join(' ', PlanWords.Cautions), Decoration.Dim);
        output.WriteLine("wrote " + file);
        output.WriteLine($"then: pushsim fit {(file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file)}" + (hasLoad ? "" : " --load \"... gf\" (what a scale shows under the tested tyres)"));
    }
}
