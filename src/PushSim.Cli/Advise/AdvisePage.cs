using PushSim.Plotting.Report;

namespace PushSim.Cli.Advise;

/// <summary>The page of `advise --report`.</summary>
internal static class AdvisePage
{
    public static ReportPage Of(AdviceRequest request, AdviceResult result, AdviceOrder order, Suggestion more) => new()
    {
        Command = "advise",
        Subject = result.Robot,
        Question = $"What should I change first about {result.Robot}, and what should I measure?",
        Verdict = AdviseText.Verdict(result, order),
        Card = AdviseText.Card(result, order, more),
        Warnings = [.. PageReport.Problems(result.Problems)],
        Tables = AdviseText.Tables(result, order),
        Figures = Picture(result, order).Figures,
        Inputs =
        [
            .. PageReport.Given("ROBOT", PageReport.Shown(request.Robot)), .. PageReport.Given("--against", string.Join(',', request.Opponents.Select(PageReport.Shown))), .. PageReport.Given("--scene", request.Scene is { } scene ? PageReport.Shown(scene) : null),
            .. PageReport.Given("--limit", request.Limit, "kg"), .. PageReport.Given("--per", order.Name), .. PageReport.Given("--matches", request.Matches.ToString(CultureInfo.InvariantCulture)), .. PageReport.Given("--seed", request.Seed.ToString(CultureInfo.InvariantCulture)),
        ],
        Estimates = result.Notes,
        Computation = FormattableString.Invariant($"seed {request.Seed}; every change plays the draws of the robot as it is; intervals: 95 % for all changes together (Tango score, Bonferroni)"),
        Cautions = Cautions.OfPredictions,
    };

    /// <summary>Gains with their intervals, in the order of the table.</summary>
    public static PlotSheet Picture(AdviceResult result, AdviceOrder order) => AdvicePlot.Of([.. order.Of(result).Select(c => (c.Change.Name, c.Gain))]);
}
