using PushSim.Analysis.Plan;

namespace PushSim.Words.Plans;

/// <summary>What a plan of pulls says.</summary>
public static class PlanWords
{
    /// <summary>What to do before, between and after the pulls (common practice, no source).</summary>
    public static IReadOnlyList<string> Checks { get; } =
    [
        "Before each block: wipe the floor and every tyre with the same cloth and cleaner, and let both dry.",
        "Before each pull: zero the cell on a slack tether; same spot and direction on the floor, tether level.",
        "Write the battery voltage at rest before each pull; recharge when it has fallen by 3 %, between blocks.",
        "Write the temperature of the floor or tyre; wait when it has moved by more than 3 degrees.",
        "Pull two seconds or less, then let motors and tyres cool for a minute.",
        "Keep to the order of the rows; write down what went wrong instead of repeating a pull you do not like.",
    ];

    /// <summary>What to mind so that nobody is hurt (common practice, no source).</summary>
    public static IReadOnlyList<string> Cautions { get; } =
    [
        "A taut tether stores energy: stand aside, wear glasses, wheels off the floor until ready.",
        "Stalled motors and lithium batteries burn: short pulls, stop at smoke or smell, never leave a battery charging alone.",
        "Weapons removed or locked.",
    ];

    /// <summary>The answer as one sentence.</summary>
    public static string Verdict(PullPlan plan)
    {
        string total = $"{plan.PullsEach} pulls of each of {plan.Tyres.Count} tyres ({plan.Pulls.Count} in all)";
        return plan.Needed <= plan.PullsEach
            ? Text($"{total} tell two tyres apart that differ by {100.0 * plan.Difference:0.#} %, in {100.0 * plan.Power:0} of 100 tests.")
            : Text($"{total} find {100.0 * plan.Finds:0.#} %, not the {100.0 * plan.Difference:0.#} % wanted, which would take {(plan.Needed < int.MaxValue ? plan.Needed.ToString(CultureInfo.InvariantCulture) : "far too many")} of each: test fewer tyres, or make the pulls scatter less.");
    }

    /// <summary>What scatter it reckons with.</summary>
    public static string Scatter(PullPlan plan, SpreadSource source) => Text($"Scatter from pull to pull: {100.0 * plan.Spread:0.0} % ({Of(source)})")
        + (double.IsFinite(plan.Pilot) ? Text($"; {plan.Pilot:0} degrees of freedom tell it no closer, so the plan has the pulls that keep its promise in the mean over what it may be.")
        : source == SpreadSource.Assumed ? "; give --from with earlier readings, or --spread." : ".");

    /// <summary>Where scatter comes from; its key for scripts as well.</summary>
    public static string Of(SpreadSource source) => source switch { SpreadSource.Given => "given", SpreadSource.Measured => "measured", _ => "assumed" };
}
