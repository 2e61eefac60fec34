using PushSim.Plotting.Report;
using PushSim.Scenarios.Drawing;

namespace PushSim.Cli.Ladder;

/// <summary>The page of `ladder --report`.</summary>
internal static class LadderPage
{
    /// <param name="result">The ladder.</param>
    /// <param name="reads">One reading of each pair; every value is listed once.</param>
    /// <param name="matches">Matches of each pair [1].</param>
    public static ReportPage Of(LadderResult result, IReadOnlyList<ReadResult> reads, long matches) => new()
    {
        Command = "ladder",
        Subject = FormattableString.Invariant($"{result.Robots.Count} robots"),
        Question = "Who beats whom, and who is best?",
        Verdict = result.Verdict,
        Card = LadderText.Card(result),
        Warnings = [.. result.Warnings, .. reads.SelectMany(r => CommandPage.Problems(r.Problems)).Distinct()],
        Tables = LadderText.Tables(result),
        Figures = result.Table.Ranking.Count == 0 ? [] : LadderPicture.Of(result).Figures,
        Inputs =
        [
            .. reads.SelectMany(CommandPage.Inputs).Where(i => i.File != DrawableScenario.BuiltIn && i.Key is not ("robot" or "opponent.robot")).Distinct(),
            .. CommandPage.Given("--matches", matches.ToString(CultureInfo.InvariantCulture)), .. CommandPage.Given("--seed", result.Seed.ToString(CultureInfo.InvariantCulture)),
        ],
        Estimates = [.. reads.SelectMany(r => r.Notes).Distinct()],
        Computation = LadderText.Computation(result),
        Cautions = Cautions.OfPredictions,
    };
}
