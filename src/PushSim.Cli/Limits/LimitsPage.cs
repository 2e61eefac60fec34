using PushSim.Analysis.Limits;
using PushSim.Plotting.Report;
using PushSim.Words.Designs;

namespace PushSim.Cli.Limits;

/// <summary>The page of `limits --report`.</summary>
internal static class LimitsPage
{
    public static ReportPage Of(IReadOnlyList<ComparedDesign> designs, RunResult? run, ReadResult read, ReadOptions options, double? throttle, DutyPattern duty) => new()
    {
        Command = "limits",
        Subject = designs[0].Limits!.Scenario.Name,
        Question = "Motors or traction: what can each give, and what would 10 % more buy?",
        Verdict = LimitsText.Verdict(designs),
        Card = LimitsText.Card(designs),
        Warnings = [.. LimitsText.Warnings(designs), .. CommandPage.Problems(read.Problems)],
        Tables = LimitsText.Tables(designs, run),
        Figures = LimitsPlot.Of(designs[0].Limits!, run, designs).Figures,
        Inputs = [.. OpponentOptions.Given(options.Opponent, options.Scene), .. CommandPage.Inputs(read), .. CommandPage.Given("--throttle", throttle, "1"), .. Pattern(duty)],
        Estimates = [.. read.Notes, .. read.Remarks],
        Cautions = Cautions.OfPredictions,
    };

    // always shown: the match of the page is nothing without it
    private static IEnumerable<ReportInput> Pattern(DutyPattern d) =>
    [
        .. CommandPage.Given("--duty", FormattableString.Invariant($"{d.Push:0.###}:{d.Dash:0.###}:{d.Turn:0.###}:{d.Rest:0.###}"), null, "s"), .. CommandPage.Given("--match", d.Length, "s"),
    ];
}
