using System.Globalization;
using PushSim.Analysis.Plan;
using PushSim.Cli.Shared;
using Spectre.Console;

namespace PushSim.Cli.Plan;

/// <summary>A plan as text for a person.</summary>
internal static class PlanText
{
    public static string Verdict(PullPlan plan)
    {
        string total = $"{plan.PullsEach} pulls of each of {plan.Tyres.Count} tyres ({plan.Pulls.Count} in all)";
        return plan.Needed <= plan.PullsEach
            ? FormattableString.Invariant($"{total} tell two tyres apart that differ by {100.0 * plan.Difference:0.#} %, in {100.0 * plan.Power:0} of 100 tests.")
            : FormattableString.Invariant($"{total} find {100.0 * plan.Finds:0.#} %, not the {100.0 * plan.Difference:0.#} % wanted, which would take {(plan.Needed < int.MaxValue ? plan.Needed.ToString(CultureInfo.InvariantCulture) : "far too many")} of each: test fewer tyres, or make the pulls scatter less.");
    }

    public static string Scatter(PullPlan plan, string source) => FormattableString.Invariant($"Scatter from pull to pull: {100.0 * plan.Spread:0.0} % ({source})")
        + (source == "assumed" ? "; give --from with earlier readings, or --spread." : ".");

    public static void Write(TextWriter output, PullPlan plan, string source, bool hasLoad, string file)
    {
        IAnsiConsole console = TextReport.Console(output);
        console.MarkupLine("[bold]" + PlainText.Marked(Verdict(plan)) + "[/]");
        console.MarkupLine(Markup.Escape(Scatter(plan, source)));
        console.WriteLine();
        foreach (IGrouping<int, PlannedPull> block in plan.Pulls.GroupBy(p => p.Block))
        {
            console.MarkupLine(PlainText.Marked($"block {block.Key}: {string.Join(", ", block.Select(p => p.Tyre))}"));
        }

        console.WriteLine();
        foreach (string check in PlanSheet.Checks)
        {
            console.MarkupLine(Markup.Escape("- " + check));
        }

        console.MarkupLine("[dim]" + Markup.Escape(string.Join(' ', PlanSheet.Cautions)) + "[/]");
        output.WriteLine("wrote " + file);
        output.WriteLine($"then: pushsim fit {(file.Contains(' ', StringComparison.Ordinal) ? $"\"{file}\"" : file)}" + (hasLoad ? "" : " --load \"... gf\" (what a scale shows under the tested tyres)"));
    }
}
