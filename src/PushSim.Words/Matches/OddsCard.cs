using PushSim.Analysis.Chance;
using PushSim.Words.Tables;

namespace PushSim.Words.Matches;

/// <summary>The answer card of drawn matches.</summary>
public static class OddsCard
{
    // Lower end of a share of wins from which nothing that was drawn is worth measuring [1].
    private const double Settled = 0.95;

    /// <summary>The card.</summary>
    /// <param name="robot">Name of the robot.</param>
    /// <param name="opponent">Name of its opponent.</param>
    /// <param name="t">The matches.</param>
    /// <param name="inputs">Which inputs matter by themselves, named in plain words.</param>
    /// <param name="pairs">Plausible pairs that fought several times; null where none did.</param>
    /// <param name="compared">How the other designs do on the same draws, in sentences; empty for none.</param>
    public static AnswerCard Of(string robot, string opponent, Tally t, InputShares inputs, PairOdds? pairs, string compared)
    {
        if (t.Matches == 0)
        {
            return new AnswerCard(OddsWords.Verdict(robot, opponent, t));
        }

        return new AnswerCard($"{robot} wins {Of100(t.Share(t.Wins))} of 100 matches against {opponent}.")
        {
            Facts = $"{OddsWords.Reason(robot, t)} {compared}".Trim(),
            Numbers =
            [
                Number($"{robot} wins", t.Wins, t, t.WinInterval), Number($"{opponent} wins", t.Losses, t, t.LossInterval), Number("no winner", t.Stalemates, t, t.StalemateInterval),
                .. inputs.Told.Take(AnswerCard.MostNumbers - 3).Select((i, k) => new CardNumber(k == 0 ? "most of the doubt" : "then", Text($"{100.0 * i.Share.Value:0} ± {100.0 * Math.Max(i.Share.High - i.Share.Value, i.Share.Value - i.Share.Low):0} %"), "", i.Name)),
            ],
            Sure = Text($"the ranges are the counting error of {t.Matches} matches.{(pairs is null ? "" : " " + PairWords.Verdict(pairs))}{(t.LeadInterval.Holds(0.0) ? " Neither is shown to be the better." : "")}"),
            Next = IsSettled(t) ? "nothing drawn here turns it; a harder opponent tells more: --against." : inputs.Told.Count == 0 ? OddsWords.TooFew(t) : $"measure {inputs.Told[0].Name}: it carries {100.0 * inputs.Told[0].Share.Value:0} % of the doubt by itself.",
            Robots = [robot, opponent],
            Split = new WinSplit(t.Share(t.Wins), t.Share(t.Losses), t.WinInterval.Low, t.WinInterval.High),
        };
    }

    // the one that wins does so in nearly all that may be, whatever carries the rest of the doubt
    private static bool IsSettled(Tally t) => t.WinInterval.Low > Settled || t.LossInterval.Low > Settled;

    private static CardNumber Number(string label, long count, Tally t, Bounds i) =>
        new(label, Of100(t.Share(count)), "of 100", Text($"{100.0 * i.Low:0.#} to {100.0 * i.High:0.#}"));

    private static string Of100(double share) => Text($"{100.0 * share:0.#}");
}
