namespace PushSim.Cli.Odds;

/// <summary>Everything that `odds` reports.</summary>
/// <param name="Own">The scenario with its matches.</param>
/// <param name="Beside">The one it is compared with; null for none.</param>
/// <param name="Seed">Of the draws.</param>
/// <param name="Effects">What each input does together with others, largest first; empty if not asked.</param>
/// <param name="MatchesPerSecond">How fast they were [1/s].</param>
/// <param name="IsInterrupted">Whether some matches are missing.</param>
internal sealed record OddsResult(OddsSide Own, OddsSide? Beside, ulong Seed, IReadOnlyList<InputEffect> Effects, double MatchesPerSecond, bool IsInterrupted)
{
    public string Robot => Own.Source.Robot;

    public string Opponent => Own.Source.Opponent;

    public string OtherName => Beside?.Source.Middle.Name ?? "";

    /// <summary>Label of the draws.</summary>
    public string Contest => Own.Contest.Label;

    public Tally Tally { get; } = Tally.Of(Own.Outcomes);

    public Tally? Other { get; } = Beside is null ? null : Tally.Of(Beside.Outcomes);

    public Comparison? Comparison { get; } = Beside is null ? null : Comparison.Of(Own.Outcomes, Beside.Outcomes);

    /// <summary>The matches in the three orders of starts; null where they were not played.</summary>
    public StartOdds? Start { get; init; }

    public IReadOnlyList<MatchEnd> Failed { get; } = [.. Own.Outcomes.Where(o => o.HasFailed)];

    /// <summary>Inputs and their share of the ground's variance, those above noise, largest first [1].</summary>
    public IReadOnlyList<(string Name, double Share)> Inputs { get; } = InputShares.Of(Own.Source, Own.Outcomes);

    public string Verdict => OddsWords.Verdict(Robot, Opponent, Tally) + (Comparison is null ? "" : " " + OddsWords.Verdict(Own.Source.Middle.Name, OtherName, Comparison));

    public IReadOnlyList<string> Warnings => OddsWords.Warnings(Failed);
}
