using PushSim.Analysis.Plan;

namespace PushSim.Cli.Plan;

/// <summary>A plan as a table to fill in, which `fit` reads as it is, and its rules in words.</summary>
internal static class PlanSheet
{
    // A gram-force, by the standard gravity [N].
    private const double GramForce = 9.80665e-3;

    /// <summary>What to do before, between and after the pulls (common practice, no source).</summary>
    public static readonly string[] Checks =
    [
        "Before each block: wipe the floor and every tyre with the same cloth and cleaner, and let both dry.",
        "Before each pull: zero the cell on a slack tether; same spot and direction on the floor, tether level.",
        "Write the battery voltage at rest before each pull; recharge when it has fallen by 3 %, between blocks.",
        "Write the temperature of the floor or tyre; wait when it has moved by more than 3 degrees.",
        "Pull two seconds or less, then let motors and tyres cool for a minute.",
        "Keep to the order of the rows; write down what went wrong instead of repeating a pull you do not like.",
    ];

    public static readonly string[] Cautions =
    [
        "A taut tether stores energy: stand aside, wear glasses, wheels off the floor until ready.",
        "Stalled motors and lithium batteries burn: short pulls, stop at smoke or smell, never leave a battery charging alone.",
        "Weapons removed or locked.",
    ];

    public static string Csv(PullPlan plan, double? load)
    {
        var text = new StringBuilder();
        text.Append("# Plan of pull tests: fill in the force of each pull (steady reading) and the peak if the cell shows one.\n");
        foreach (string line in Checks.Concat(Cautions))
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
