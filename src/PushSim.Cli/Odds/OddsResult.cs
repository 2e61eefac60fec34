using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Scenarios.Reading;
using PushSim.Words.Terms;

namespace PushSim.Cli.Odds;

/// <summary>Everything that `odds` reports.</summary>
internal sealed record OddsResult
{
    public required string Robot { get; init; }

    public required string Opponent { get; init; }

    public required ulong Seed { get; init; }

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
        string otherName = other?.Source.Middle.Name ?? "";
        return new OddsResult
        {
            Robot = own.Source.Robot,
            Opponent = own.Source.Opponent,
            Seed = request.Plan.Seed,
            Tally = tally,
            Failed = [.. own.Outcomes.Where(o => o.HasFailed)],
            Values = own.Values,
            Inputs = InputShares.Of(own.Source, own.Outcomes),
            MatchesPerSecond = rate,
            IsInterrupted = isInterrupted,
            Comparison = comparison,
            Other = second,
            OtherName = otherName,
            Verdict = Words(own.Source.Robot, own.Source.Opponent, tally) + (comparison is null ? "" : " " + Words(own.Source.Middle.Name, otherName, comparison)),
            Warnings = tally.Failed == 0 ? [] : [string.Create(CultureInfo.InvariantCulture, $"{tally.Failed} {(tally.Failed == 1 ? "match failed and is" : "matches failed and are")} left out of the shares; the first is number {own.Outcomes.First(o => o.HasFailed).Number}, shown by --match")],
        };
    }

    private static string Words(string robot, string opponent, Tally t)
    {
        if (t.Matches == 0)
        {
            return "No match was finished.";
        }

        Bounds win = t.WinInterval;
        string close = t.LeadInterval.Holds(0.0) ? " Neither is shown to be the better." : "";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"{robot} wins {100.0 * t.Share(t.Wins):0.#} % of {t.Matches} matches (95 % sure: {100.0 * win.Low:0.#} to {100.0 * win.High:0.#} %), {opponent} {100.0 * t.Share(t.Losses):0.#} %, {100.0 * t.Share(t.Stalemates):0.#} % end in a stalemate.{close}") + Reason(robot, t);
    }

    // what most often held the first robot back where it lost
    private static string Reason(string robot, Tally t)
    {
        var held = t.Decisions.Where(d => d.Decision is { Winner: 1, Limit: not null }).GroupBy(d => d.Decision.Limit!.Value)
            .Select(g => (Limit: g.Key, Count: g.Sum(d => d.Count))).OrderByDescending(h => h.Count).ThenBy(h => h.Limit).ToList();
        return held.Count == 0 ? "" : string.Create(
            CultureInfo.InvariantCulture, $" In {100.0 * held[0].Count / t.Losses:0.#} % of {robot}'s losses its {BindingTable.Words(held[0].Limit)} held it back.");
    }

    private static string Words(string own, string other, Comparison c)
    {
        Bounds i = c.Bounds;
        string sure = i.Holds(0.0) ? "which may be chance" : "which is more than chance";
        return string.Create(
            CultureInfo.InvariantCulture,
            $"On the same draws {own} wins {100.0 * Math.Abs(c.Difference):0.#} percentage points {(c.Difference < 0.0 ? "less" : "more")} than {other} (95 % sure: {100.0 * i.Low:+0.#;-0.#;0} to {100.0 * i.High:+0.#;-0.#;0}), {sure}.");
    }
}
