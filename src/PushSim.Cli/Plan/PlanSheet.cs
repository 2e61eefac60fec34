using PushSim.Analysis.Plan;
using PushSim.Words.Plans;

namespace PushSim.Cli.Plan;

/// <summary>A plan as a table to fill in, which `fit` reads as it is.</summary>
internal static class PlanSheet
{
    // A gram-force, by the standard gravity [N].
    private const double GramForce = 9.80665e-3;

    public static string Csv(PullPlan plan, double? load)
    {
        var text = new StringBuilder();
        text.Append("# Plan of pull tests: fill in the force of each pull (steady reading) and the peak if the cell shows one.\n");
        foreach (string line in PlanWords.Checks.Concat(PlanWords.Cautions))
        {
            text.Append("# ").Append(line).Append('\n');
        }

        text.Append("pull,block,tyre,").Append(load is null ? "" : "load [gf],").Append("force [gf],peak [gf],battery [V],temperature [degC],cleaned,remarks\n");
        foreach (PlannedPull p in plan.Pulls)
        {
            text.Append(CultureInfo.InvariantCulture, $"{p.Number},{p.Block},{p.Tyre},");
            text.Append(load is double n ? FormattableString.Invariant($"{n / GramForce:0.###},") : "").Append(",,,,,\n");
        }

        return text.ToString();
    }

    /// <summary>What is wrong with a name of a tyre in a table; empty if nothing.</summary>
    public static string Complaint(string name) =>
        string.IsNullOrWhiteSpace(name) || name != name.Trim() ? "a tyre needs a name, without blanks around it"
        : name.Any(c => char.IsControl(c) || c is ',' or ';' or '|' or '"') ? $"the name {name} has a character that separates cells of a table (, ; | \" or a control character)"
        : name[0] is '=' or '+' or '-' or '@' or '#' or '%' ? $"the name {name} starts with a character that a table takes for a formula or a remark"
        : "";
}
