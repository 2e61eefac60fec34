using PushSim.Analysis.Plan;
using PushSim.Words.Plans;

namespace PushSim.Cli.Plan;

/// <summary>A plan as a JSON document.</summary>
internal static class PlanJson
{
    public static string Of(PullPlan plan, SpreadSource source) => CommandJson.Write(w =>
    {
        CommandJson.WriteHead(w, "plan", PlanWords.Verdict(plan), source == SpreadSource.Assumed ? [PlanWords.Scatter(plan, source)] : []);
        w.WriteNumber("pulls_each", plan.PullsEach);
        w.WriteNumber("pulls", plan.Pulls.Count);
        CommandJson.WriteNumber(w, "pulls_needed_each", plan.Needed < int.MaxValue ? plan.Needed : null);
        w.WriteNumber("difference_ratio", plan.Difference);
        w.WriteNumber("difference_found_ratio", plan.Finds);
        w.WriteNumber("spread_ratio", plan.Spread);
        w.WriteString("spread_source", PlanWords.Of(source));
        w.WriteNumber("power_ratio", plan.Power);
        CommandJson.WriteRows(w, "order", plan.Pulls, p =>
        {
            w.WriteNumber("pull", p.Number);
            w.WriteNumber("block", p.Block);
            w.WriteString("tyre", p.Tyre);
        });
        CommandJson.WriteTexts(w, "checks", PlanWords.Checks.Concat(PlanWords.Cautions));
    });
}
