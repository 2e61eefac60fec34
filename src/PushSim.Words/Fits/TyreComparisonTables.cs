using PushSim.Analysis.Fit;
using PushSim.Words.Tables;

namespace PushSim.Words.Fits;

/// <summary>Several tyres compared, as a table.</summary>
public static class TyreComparisonTables
{
    // More pairs than this fill the screen; the rest stand in the JSON document [1].
    private const int MostPairs = 15;

    /// <summary>The pairs, for screen and page, with what to know under them; null if there is nothing to say.</summary>
    /// <param name="c">The comparison.</param>
    /// <param name="tyres">How many tyres were fitted [1].</param>
    public static AnswerTable? Table(TyreComparison c, int tyres)
    {
        AnswerTable table = new AnswerTable("Compared").AddColumn("Tyres").AddNumberColumn("Difference").AddNumberColumn("95 %, all at once").AddNumberColumn("p, corrected").AddColumn("Told apart").AddNumberColumn("Pulls to see it");
        foreach (TyrePair p in c.Pairs.OrderBy(p => p.Adjusted).Take(MostPairs))
        {
            table.AddRow(
                $"{p.First} - {p.Second}",
                p.Test.Difference.Value.ToString("0.000", CultureInfo.InvariantCulture),
                IntervalWords.Of(p.Together),
                p.Adjusted < 0.0005 ? "< 0.001" : p.Adjusted.ToString("0.000", CultureInfo.InvariantCulture),
                p.IsToldApart ? "yes" : "no",
                Pulls(p.PullsToSee));
        }

        if (c.Pairs.Count > MostPairs)
        {
            table.AddRemark($"{c.Pairs.Count - MostPairs} more pairs: --json", isAside: true);
        }

        table.AddRemarks(Sentences(c, tyres));

        return table.IsEmpty ? null : table;
    }

    // What a builder must know before believing the table
    private static IEnumerable<string> Sentences(TyreComparison c, int tyres)
    {
        foreach ((string tyre, NotCompared reason) in tyres > 1 ? c.LeftOut : [])
        {
            yield return $"{tyre} is not compared: {PullWords.Of(reason)}.";
        }

        if (c.IsInBlocks)
        {
            yield return "the pulls stand in blocks, each with every tyre once: tyres are compared within blocks, so what a block shares does not count.";
        }

        if (c.Pairs.Any(p => p.IsHighOpen || p.IsLowOpen))
        {
            yield return "that the tyres set these pulls is not known of all: one robot at one throttle and charge pulls less only where the tyre slides, so of two tyres told apart the weaker slid, and the stronger may grip better still.";
        }

        foreach (OddPull o in c.Odd)
        {
            yield return Text($"odd pull: number {o.Pull} of {o.Tyre} reads {o.Friction:0.000}, {o.Test.G:0.0} standard deviations from its mean (limit {o.Test.Critical:0.0}). It is kept: leave it out only if you know what went wrong.");
        }

        foreach (PullTrend t in c.Trends.Where(t => t.IsSeen))
        {
            string whose = t.Tyre.Length > 0 ? t.Tyre : "all tyres together";
            if (t.StepAfter is int after)
            {
                yield return Text($"step: friction of {whose} {(t.Test.Slope < 0.0 ? "falls" : "rises")} at once after {(t.Tyre.Length > 0 ? "its pull" : "pull")} {after} (p = {t.Adjusted:0.000}), rather than a little with each pull: what changed there? Cleaning, battery, cell, another floor?");
                continue;
            }

            string why = t.Tyre.Length > 0 ? "wear, warmth or dust on it" : "the floor, the battery or the cell changes";
            yield return Text($"trend: friction of {whose} {(t.Test.Slope < 0.0 ? "falls" : "rises")} by {Math.Abs(100.0 * t.Test.Slope):0.0} % a pull (p = {t.Adjusted:0.000}): {why}. Clean between pulls and mix the order (pushsim plan).");
        }

        if (c.Trends.Count > 0 && !c.Trends.Any(t => t.IsSeen))
        {
            yield return "no trend over the number of the pull is seen.";
        }

        if (c.IsInTurn == true)
        {
            yield return "each tyre was pulled in one go, so a floor that gathers dust looks like a difference of tyres: mix the order (pushsim plan).";
        }

        if (c.PullsForDifference > 0)
        {
            yield return Text($"to tell two tyres apart by {c.Difference:0.000} with this scatter ({100.0 * c.RelativeSpread:0.0} % from pull to pull): {Pulls(c.PullsForDifference)} pulls each (found in {100.0 * TyreComparison.Power:0} of 100 tests).");
        }
    }

    private static string Pulls(int n) => n > 1000 ? "over 1000" : n.ToString(CultureInfo.InvariantCulture);
}
