using PushSim.Plotting.Report;
using PushSim.Words.Sweeps;

namespace PushSim.Cli.Sweep;

/// <summary>The page of `sweep --report`.</summary>
internal static class SweepPage
{
    // More rows than this nobody reads; the rest stand in sweep.csv [1].
    private const int MostRows = 200;

    public static ReportPage Of(SweepRequest request, SweepResult result, ReadResult first, string name) => new()
    {
        Command = "sweep",
        Subject = name,
        Question = $"What does {string.Join(" and ", request.Told(result).Inputs.Select(i => i.Key))} change?",
        Verdict = result.Verdict,
        Card = SweepText.Card(request, result),
        Warnings = [.. result.Warnings, .. CommandPage.Problems(first.Problems)],
        Tables = [SweepText.Table(request, result, MostRows)],
        Figures = result.Table.Points.Count > 1 ? SweepPicture.Of(request, result).Figures : [],
        Inputs =
        [
            .. request.Inputs.SelectMany(i => CommandPage.Given("--vary", $"{i.Key} = {string.Join(", ", i.Texts.Select(SweepWords.Quoted))}")),
            .. request.Odds > 0 ? CommandPage.Given("--odds", request.Odds.ToString(CultureInfo.InvariantCulture)).Concat(CommandPage.Given("--seed", request.Plan.Seed.ToString(CultureInfo.InvariantCulture))) : [],
            .. OpponentOptions.Given(request.Read.Opponent, request.Read.Scene),
            .. CommandPage.Inputs(first),
        ],
        Estimates = first.Notes,
        Computation = SweepText.Computation(request, result),
        Cautions = Cautions.OfPredictions,
    };
}
