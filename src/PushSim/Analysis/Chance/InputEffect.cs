using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Chance;

/// <summary>How much of the variance of the ground gained an input has a hand in, alone or together with others.</summary>
/// <param name="Key">The input; the parts that it holds for are drawn anew together.</param>
/// <param name="Share">Total index [1].</param>
/// <param name="Bounds">Its 95 % interval [1].</param>
public sealed record InputEffect(string Key, double Share, Bounds Bounds)
{
    /// <summary>The same share of who wins (1 for a win, else 0), with its 95 % interval [1].</summary>
    public Interval OfWinning { get; init; }

    /// <summary>From matches that differ in this input alone; a match that failed in one of the two is left out. Of very many the first <see cref="InputShares.Most"/> are taken.</summary>
    /// <param name="key">The input.</param>
    /// <param name="own">The matches by number.</param>
    /// <param name="redrawn">The same with this input drawn anew, by number.</param>
    public static InputEffect Of(string key, IEnumerable<MatchEnd> own, IEnumerable<MatchEnd> redrawn)
    {
        (MatchEnd Own, MatchEnd Other)[] both = [.. OddsDifference.Pairs(own, redrawn).Take(InputShares.Most)];
        (double share, Bounds interval) = Sensitivity.Total([.. both.Select(o => o.Own.GroundGained)], [.. both.Select(o => o.Other.GroundGained)]);
        (double ofWon, Bounds around) = Sensitivity.Total([.. both.Select(o => Won(o.Own))], [.. both.Select(o => Won(o.Other))]);
        return new InputEffect(key, share, interval) { OfWinning = new Interval(ofWon, around.Low, around.High) };

        static double Won(MatchEnd end) => end.Winner == 0 ? 1.0 : 0.0;
    }
}
