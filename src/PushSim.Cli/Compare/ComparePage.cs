using PushSim.Plotting.Report;

namespace PushSim.Cli.Compare;

/// <summary>The page of `compare --report`.</summary>
internal static class ComparePage
{
    public static ReportPage Of(CompareResult result, CompareRequest request) => new()
    {
        Command = "compare",
        Subject = result.Run.Scenario.Name,
        Question = "How far is the run off the log?",
        Verdict = result.Verdict,
        Card = result.Card,
        Warnings = [.. result.Warnings, .. CommandPage.Problems(result.Read.Problems)],
        Tables = CompareRun.Tables(result),
        Figures = ComparePlot.Of(result.Log.Time, result.Errors, result.From).Figures,
        Inputs =
        [
            .. CommandPage.Given("LOG", CommandPage.Shown(request.Log)), .. request.Identify.SelectMany(k => CommandPage.Given("--identify", k)), .. CommandPage.Given("--from", request.From, "s"),
            .. CommandPage.Given("--to", request.To, "s"), .. CommandPage.Given("--replay", request.Replay), .. CommandPage.Inputs(result.Read),
        ],
        Estimates = [.. result.Notes, .. result.Read.Notes, .. result.Read.Remarks],
        Cautions = Cautions.OfPredictions,
    };
}
