using PushSim.Analysis.Limits;
using PushSim.Plotting.Report;
using PushSim.Words.Limits;

namespace PushSim.Cli.Limits;

/// <summary>The page of `limits --report`.</summary>
internal static class LimitsPage
{
    public static ReportPage Of(LimitReport report, RunResult? run, ReadResult read, double? throttle, DutyPattern duty) => new()
    {
        Command = "limits",
        Subject = report.Scenario.Name,
        Question = "Motors or traction: what can each give, and what would 10 % more buy?",
        Verdict = LimitVerdict.Of(report),
        Warnings = [.. LimitWarnings.Of(report), .. PageReport.Problems(read.Problems)],
        Tables = LimitTables.Of(report, run),
        Figures = LimitsPlot.Of(report, run).Figures,
        Inputs = [.. PageReport.Inputs(read), .. PageReport.Given("--throttle", throttle, "1"), .. Pattern(duty)],
        Estimates = [.. read.Notes, .. read.Remarks],
        Cautions = Cautions.OfPredictions,
    };

    // always shown: the match of the page is nothing without it
    private static IEnumerable<ReportInput> Pattern(DutyPattern d) =>
    [
        .. PageReport.Given("--duty", FormattableString.Invariant($"{d.Push:0.###}:{d.Dash:0.###}:{d.Turn:0.###}:{d.Rest:0.###}"), null, "s"), .. PageReport.Given("--match", d.Length, "s"),
    ];
}
