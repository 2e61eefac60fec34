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
        Warnings = [.. result.Warnings, .. PageReport.Problems(result.Read.Problems)],
        Tables = CompareRun.Tables(result),
        Figures = ComparePlot.Of(result.Log.Time, result.Errors, result.From).Figures,
        Inputs =
        [
            .. PageReport.Given("LOG", PageReport.Shown(request.Log)), .. request.Identify.SelectMany(k => PageReport.Given("--identify", k)), .. PageReport.Given("--from", request.From, "s"),
            .. PageReport.Given("--to", request.To, "s"), .. PageReport.Given("--replay", request.Replay), .. PageReport.Inputs(result.Read),
        ],
        Estimates = [.. result.Notes, .. result.Read.Notes, .. result.Read.Remarks],
        Cautions = Cautions.OfPredictions,
    };
}
