using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Odds;

/// <summary>Everything that `odds` reports.</summary>
internal sealed record OddsResult
{
    public required string Robot { get; init; }

    public required string Opponent { get; init; }

    public required ulong Seed { get; init; }

    /// <summary>Label of the draws.</summary>
    public required string Contest { get; init; }

    public required Tally Tally { get; init; }

    public required IReadOnlyList<MatchEnd> Failed { get; init; }

    public required IReadOnlyList<TolerancedValue> Values { get; init; }

    /// <summary>Inputs and their share of the ground's variance, those above noise, largest first [1].</summary>
    public required IReadOnlyList<(string Name, double Share)> Inputs { get; init; }

    /// <summary>What each input does together with others, largest first; empty if not asked.</summary>
    public IReadOnlyList<InputEffect> Effects { get; init; } = [];

    public required double MatchesPerSecond { get; init; }

    public required bool IsInterrupted { get; init; }

    public Comparison? Comparison { get; init; }

    public Tally? Other { get; init; }

    public string OtherName { get; init; } = "";

    public required string Verdict { get; init; }

    public required IReadOnlyList<string> Warnings { get; init; }

    public static OddsResult Of(OddsRun.Side own, OddsRun.Side? other, OddsRequest request, bool isInterrupted, double rate)
    {
        var tally = Tally.Of(own.Outcomes);
        Tally? second = other is null ? null : Tally.Of(other.Outcomes);
        Comparison? comparison = other is null ? null : Comparison.Of(own.Outcomes, other.Outcomes);
        MatchEnd[] failed = [.. own.Outcomes.Where(o => o.HasFailed)];
        string otherName = other?.Source.Middle.Name ?? "";
        return new OddsResult
        {
            Robot = own.Source.Robot,
            Opponent = own.Source.Opponent,
            Seed = request.Plan.Seed,
            Contest = own.Contest.Label,
            Tally = tally,
            Failed = failed,
            Values = own.Values,
            Inputs = InputShares.Of(own.Source, own.Outcomes),
            MatchesPerSecond = rate,
            IsInterrupted = isInterrupted,
            Comparison = comparison,
            Other = second,
            OtherName = otherName,
            Verdict = OddsWords.Verdict(own.Source.Robot, own.Source.Opponent, tally) + (comparison is null ? "" : " " + OddsWords.Verdict(own.Source.Middle.Name, otherName, comparison)),
            Warnings = OddsWords.Warnings(failed),
        };
    }
}
