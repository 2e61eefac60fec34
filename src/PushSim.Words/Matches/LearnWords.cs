using PushSim.Analysis.Chance;
using PushSim.Words.Tables;

namespace PushSim.Words.Matches;

/// <summary>What a record of real matches changes, in words.</summary>
public static class LearnWords
{
    // Standard deviations that a score may be off before it is told [1].
    private const double Far = 1.96;

    /// <summary>One sentence for the verdict.</summary>
    /// <param name="l">What was learned.</param>
    /// <param name="robot">Name of the robot.</param>
    public static string Verdict(LearnedOdds l, string robot) =>
        Text($"After {l.Results.Matches} real matches, of which {robot} won {l.Results.Wins}, it wins the next one with {100.0 * l.Share.Value:0.#} % (counting error: {100.0 * l.Share.Low:0.#} to {100.0 * l.Share.High:0.#} %; {100.0 * l.Before:0.#} % before).");

    /// <summary>What to know before believing it.</summary>
    /// <param name="l">What was learned.</param>
    public static IReadOnlyList<string> Warnings(LearnedOdds l) =>
    [
        .. l.EffectivePairs < LearnedOdds.LeastEffective ? [Text($"only {l.EffectivePairs:0.#} of {l.Pairs} plausible pairs are left by the real matches: the tolerances hardly allow what came, or more --matches must be drawn")] : Array.Empty<string>(),
        .. l.Results.Past is { Predictions.Count: > 1, Z: > Far } ? ["past predictions were off by more than chance: they were too sure"] : Array.Empty<string>(),
        .. l.Results.Past is { Predictions.Count: > 1, Z: < -Far } ? ["past predictions were off by more than chance: they were not sure enough"] : Array.Empty<string>(),
    ];

    /// <summary>The tables: what moved, and past predictions.</summary>
    /// <param name="l">What was learned.</param>
    public static IReadOnlyList<AnswerTable> Tables(LearnedOdds l)
    {
        AnswerTable moved = new AnswerTable("Learned from real matches").AddColumn("Value").AddNumberColumn("before").AddNumberColumn("after");
        foreach (LearnedValue v in l.Values)
        {
            moved.AddRow(v.Name, $"{PlainNumber.Of(v.Mean, 3)} ± {PlainNumber.Of(2.0 * v.Deviation, 2)}", $"{PlainNumber.Of(v.After, 3)} ± {PlainNumber.Of(2.0 * v.DeviationAfter, 2)}");
        }

        moved.AddRemark(Text($"{l.Pairs} plausible pairs, weighted by how likely each makes the record; they are worth {l.EffectivePairs:0} equally likely ones"), isAside: true);
        return l.Results.Past is PastPredictions past ? [moved, Past(past)] : [moved];
    }

    private static AnswerTable Past(PastPredictions past)
    {
        AnswerTable table = new AnswerTable("Past predictions").AddNumberColumn("predicted").AddNumberColumn("won").AddColumn("of matches, 95 %");
        foreach ((double predicted, int wins, int matches) in past.Fifths)
        {
            Bounds b = ShareInterval.Wilson(wins, matches);
            table.AddRow(Text($"{100.0 * predicted:0} %"), Text($"{100.0 * wins / matches:0} %"), Text($"{matches}: {100.0 * b.Low:0} to {100.0 * b.High:0} %"));
        }

        return table.AddRemark(Text($"Brier's score {past.Brier:0.000}; true predictions like these have {past.Expected:0.000} in the mean, {Math.Abs(past.Z):0.0} standard deviations away"), isAside: true);
    }
}
