using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;

namespace PushSim.Words.Fits;

/// <summary>What a bench says of its pulls.</summary>
public static class BenchWords
{
    // A slack reading that moved by more of the pull is told [1].
    private const double MovedThatMatters = 0.02;

    /// <summary>Cautions before the first pull.</summary>
    public const string Caution = "Keep clear of the taut tether. Wheels off the floor until ready; keep pulls short: stalled motors burn.";

    /// <summary>One pull in a line: "pull 3: peak 6.12 N (624 gf), sliding 5.10 N (520 gf)".</summary>
    /// <param name="number">Its number [1].</param>
    /// <param name="pull">What was found.</param>
    public static string Of(int number, WatchedPull pull)
    {
        if (pull.Flaw != PullFlaw.None)
        {
            return $"pull {number}: again: {Why(pull)}";
        }

        FoundPull found = pull.Pull!;
        string peak = pull.Peak is double high ? $"peak {ForceWords.Both(high)}, " : "no peak, ";
        string few = found.Quality == BreakawayQuality.FewSamples ? "; the peak may be higher: few readings on the ramp" : "";
        return $"pull {number}: {peak}sliding {ForceWords.Both(found.Plateau!.Value.Value)}{few}{Moved(pull)}";
    }

    /// <summary>Why a pull is to be done again, with what helps.</summary>
    public static string Why(WatchedPull pull) => pull.Flaw switch
    {
        PullFlaw.NoPlateau => "no plateau. Let the tyre slide for a second",
        PullFlaw.Clipped => "clipped. The cell sticks at its greatest reading: take a larger one or a lower gain",
        PullFlaw.Sideways => FormattableString.Invariant($"pulled sideways. The force {(pull.Share < 0.0 ? "falls" : "rises")} by {100.0 * Math.Abs(pull.Share):0} % while it slides: line the tether up with the cell"),
        PullFlaw.Swings => "it swings as far as it rises. Try a stiffer tether or another throttle",
        PullFlaw.TooCoarse => "the reading moves in steps nearly as large as the pull. Log more digits",
        PullFlaw.NoSlack => "no slack before it. Let the chain hang for a second",
        PullFlaw.Gap => "readings are missing in it. Check cable and plug",
        _ => "no pull in it. A knock or a hand on the cell?",
    };

    /// <summary>A word for a flaw, for tables and documents; empty for none.</summary>
    public static string Word(PullFlaw flaw) => flaw switch
    {
        PullFlaw.None => "",
        PullFlaw.NoPlateau => "no plateau",
        PullFlaw.Clipped => "clipped",
        PullFlaw.Sideways => "pulled sideways",
        PullFlaw.Swings => "swings",
        PullFlaw.TooCoarse => "too coarse",
        PullFlaw.NoSlack => "no slack",
        PullFlaw.Gap => "gap",
        _ => "no pull",
    };

    /// <summary>The answer of a bench: how many pulls, how many good, what they give.</summary>
    /// <param name="pulls">All of them.</param>
    public static string Verdict(IReadOnlyList<WatchedPull> pulls)
    {
        int good = pulls.Count(p => p.Flaw == PullFlaw.None);
        string counted = $"{pulls.Count} {(pulls.Count == 1 ? "pull" : "pulls")}, {(good == pulls.Count ? pulls.Count == 1 ? "a good one" : "all good" : good == 0 ? "none good" : $"{good} good")}";
        return pulls.Count == 0 ? "No pull came." : Sliding(pulls) is { } f ? $"{counted}: sliding at {ForceWords.Both(f.Value)}." : counted + ".";
    }

    /// <summary>Mean sliding force of the good pulls, with the interval of its scatter from pull to pull [N]; null without a good one.</summary>
    public static Interval? Sliding(IReadOnlyList<WatchedPull> pulls) => Mean([.. pulls.Where(p => p.Flaw == PullFlaw.None).Select(p => p.Pull!.Plateau!.Value.Value)]);

    /// <summary>The same of the peaks of those that have one [N].</summary>
    public static Interval? Peaks(IReadOnlyList<WatchedPull> pulls) => Mean([.. pulls.Select(p => p.Peak).OfType<double>()]);

    private static Interval? Mean(double[] values) => values.Length == 0 ? null : Interval.OfMean(values);

    private static string Moved(WatchedPull pull) => Math.Abs(pull.ZeroMoved) > MovedThatMatters * pull.Pull!.Plateau!.Value.Value
        ? FormattableString.Invariant($"; slack reads {pull.ZeroMoved:+0.00;-0.00} N after it") : "";
}
