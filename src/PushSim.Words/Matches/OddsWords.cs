using PushSim.Analysis.Chance;

namespace PushSim.Words.Matches;

/// <summary>What drawn matches of two robots say.</summary>
public static class OddsWords
{
    /// <summary>What stands beside the inputs that are told, so that nobody takes them for the whole.</summary>
    public const string Rest = "together with others, or not told";

    /// <summary>Who wins how often, and what held the loser back.</summary>
    /// <param name="robot">Name of the robot.</param>
    /// <param name="opponent">Name of its opponent.</param>
    /// <param name="t">The matches.</param>
    /// <param name="pairs">Plausible pairs; null for none.</param>
    public static string Verdict(string robot, string opponent, Tally t, PairOdds? pairs = null)
    {
        if (t.Matches == 0)
        {
            return "No match was finished.";
        }

        Bounds win = t.WinInterval;
        string close = t.LeadInterval.Holds(0.0) ? " Neither is shown to be the better." : "";
        return Text($"{robot} wins {100.0 * t.Share(t.Wins):0.#} % of {t.Matches} matches (counting error: {100.0 * win.Low:0.#} to {100.0 * win.High:0.#} %), {opponent} {100.0 * t.Share(t.Losses):0.#} %, {100.0 * t.Share(t.Stalemates):0.#} % end in a stalemate.{close}") + (pairs is null ? "" : " " + PairWords.Verdict(pairs)) + Reason(robot, t);
    }

    /// <summary>How two robots do on the same draws.</summary>
    /// <param name="own">Name of the one.</param>
    /// <param name="other">Name of the other.</param>
    /// <param name="c">How often only one of them wins.</param>
    public static string Verdict(string own, string other, Comparison c)
    {
        Bounds i = c.Bounds;
        string sure = i.Holds(0.0) ? "which may be chance" : "which is more than chance";
        if (c.Difference == 0.0)
        {
            return Text($"On the same draws {own} wins as often as {other} (counting error: {100.0 * i.Low:+0.#;-0.#;0} to {100.0 * i.High:+0.#;-0.#;0} of 100).");
        }

        return Text($"On the same draws {own} wins {100.0 * Math.Abs(c.Difference):0.#} percentage points {(c.Difference < 0.0 ? "less" : "more")} than {other} (counting error: {100.0 * i.Low:+0.#;-0.#;0} to {100.0 * i.High:+0.#;-0.#;0}), {sure}.");
    }

    /// <summary>What to know before believing them.</summary>
    public static IReadOnlyList<string> Warnings(Tally tally) => tally.Failed == 0 ? [] :
        [$"{tally.Failed} {(tally.Failed == 1 ? "match failed and is" : "matches failed and are")} left out of the shares; the first is number {tally.FirstFailed[0].Number}, shown by --match"];

    /// <summary>That --within was not reached; null where it was, or was not asked.</summary>
    /// <param name="tally">The matches.</param>
    /// <param name="within">Half-width that was asked; 0 for none [1].</param>
    public static string? Cap(Tally tally, double within) => within > 0.0 && tally.Matches > 0 && tally.WinInterval.HalfWidth is var half && half > within
        ? Text($"--within {100.0 * within:0.##} % is not reached: {tally.All} matches, all that were asked, tell the share of wins within {100.0 * half:0.##} %; more --matches tell it closer")
        : null;

    /// <summary>Why no input is told to matter most.</summary>
    public static string TooFew(Tally t) => $"{t.Matches} matches are too few, or no single input matters enough, to tell which matters most.";

    /// <summary>Seed, speed and methods.</summary>
    /// <param name="seed">The seed.</param>
    /// <param name="contest">Label of the draws.</param>
    /// <param name="rate">Matches per second [1/s]; null where the text is to be the same each time.</param>
    /// <param name="hasEffects">Whether inputs were drawn anew one by one.</param>
    /// <param name="matches">Matches that did not fail [1].</param>
    public static string Computation(ulong seed, string contest, double? rate, bool hasEffects, long matches)
    {
        string oneByOne = MatchBatch.BestLanes(Precision.Single) == 1 ? ", one at a time since the processor lacks AVX2 (the same matches, slower)" : "";
        return $"seed {seed}, contest {contest}{(rate is double r ? $"; {PlainNumber.Of(r, 3)} matches a second" : "")}{oneByOne}; counting error: 95 %, Wilson and Tango score over Latin blocks of {LatinBlock.Size} draws; shares of variance: first order, from {(matches > InputShares.Most ? Text($"the first {InputShares.Most} matches") : "the same matches")}{(hasEffects ? ", with others: total, one input drawn anew (Jansen 1999)" : "")}";
    }

    /// <summary>What most often held the first robot back where it lost, in a sentence; empty where it never did.</summary>
    internal static string Reason(string robot, Tally t)
    {
        var held = t.Decisions.Where(d => d.Decision is { Winner: 1, Limit: not null }).GroupBy(d => d.Decision.Limit!.Value)
            .Select(g => (Limit: g.Key, Count: g.Sum(d => d.Count))).OrderByDescending(h => h.Count).ThenBy(h => h.Limit).ToList();
        return held.Count == 0 ? "" : Text($" In {(held[0].Count == t.Losses ? "all" : Phrase.Text($"{100.0 * held[0].Count / t.Losses:0.#} %"))} of {robot}'s losses its {BindingTable.Words(held[0].Limit)} held it back.");
    }
}
