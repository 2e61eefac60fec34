using PushSim.Analysis.Limits;
using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Odds;

/// <summary>Everything that `odds` reports.</summary>
/// <param name="Own">The scenario with its matches.</param>
/// <param name="Others">Those it is compared with: its variants, and the file beside it.</param>
/// <param name="Seed">Of the draws.</param>
/// <param name="Effects">What each input does together with others, largest first; empty if not asked.</param>
/// <param name="MatchesPerSecond">How fast they were [1/s].</param>
/// <param name="IsInterrupted">Whether some matches are missing.</param>
internal sealed record OddsResult(OddsSide Own, IReadOnlyList<OddsSide> Others, ulong Seed, IReadOnlyList<InputEffect> Effects, double MatchesPerSecond, bool IsInterrupted)
{
    public string Robot => Own.Source.Robot;

    public string Opponent => Own.Source.Opponent;

    /// <summary>Label of the draws.</summary>
    public string Contest => Own.Contest.Label;

    public Tally Tally => Own.Tally;

    /// <summary>The first compared with each of the others.</summary>
    public IReadOnlyList<OddsDifference> Comparisons { get; } = [.. Others.Select(o => OddsDifference.Of(Own.Outcomes, o.Outcomes))];

    /// <summary>The matches in the three orders of starts; null where they were not played.</summary>
    public StartOdds? Start { get; init; }

    /// <summary>Plausible pairs, each fought several times; null where they were not.</summary>
    public PairOdds? Pairs { get; init; }

    /// <summary>What really happened; null where nobody told it.</summary>
    public RealResults? Real { get; init; }

    /// <summary>What that changes; null without it, or without pairs.</summary>
    public LearnedOdds? Learned => field ??= Real is not null && Pairs is not null ? LearnedOdds.Of(Pairs, Real, Own.Source) : null;

    /// <summary>Half-width of the share of wins that was asked; 0 for none [1].</summary>
    public double Within { get; init; }

    /// <summary>Which inputs matter by themselves.</summary>
    public InputShares Inputs { get; } = InputShares.Of(Own.Source, Own.Outcomes);

    /// <summary>The same in plain words.</summary>
    public InputShares Told => Inputs with { Told = [.. Inputs.Told.Select(i => i with { Name = Label(i.Name) })] };

    /// <summary>An input in plain words.</summary>
    public string Label(string key) => KeyLabel.Of(key, Robot, Opponent);

    /// <summary>The throttle at which each robot pushes hardest, at the middle of what is drawn.</summary>
    public IReadOnlyList<BestThrottle?> Throttles => field ??= BestThrottleFinder.OfBoth(Own.Source.Middle);

    public string Verdict => string.Join(' ', [OddsWords.Verdict(Robot, Opponent, Tally, Pairs), .. Learned is LearnedOdds learned ? [LearnWords.Verdict(learned, Robot)] : Array.Empty<string>(), Compared]).TrimEnd();

    /// <summary>How the others do on the same draws, in sentences; empty for none.</summary>
    public string Compared => string.Join(' ', Others.Zip(Comparisons, (o, c) => OddsWords.Verdict(Own.Label, o.Label, c)));

    /// <summary>The picture; there must be a match that did not fail.</summary>
    public PlotSheet Plot => OddsPlot.Of(Own.Label, Robot, Opponent, Own.Outcomes, Told, [.. Others.Select(o => (o.Label, o.Source.Robot, o.Source.Opponent, o.Outcomes))]);

    public IReadOnlyList<string> Warnings => [.. OddsWords.Warnings(Tally), .. OddsWords.Cap(Tally, IsInterrupted ? 0.0 : Within) is string cap ? [cap] : Array.Empty<string>(), .. Learned is LearnedOdds learned ? LearnWords.Warnings(learned) : Real is not null ? ["too few matches were drawn to learn from real ones: at least 8"] : []];
}
