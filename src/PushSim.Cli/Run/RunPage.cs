using PushSim.Plotting.Report;
using PushSim.Words.Designs;
using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>The page of `run --report`.</summary>
internal static class RunPage
{
    public static ReportPage Of(RunResult result, string file, ReadResult read, ReadOptions options, RunCost cost, TyreAnswers tyres, IReadOnlyList<Design> designs, TurnMap? map = null) => new()
    {
        Command = "run",
        Subject = result.Scenario.Name,
        Question = result.Scenario.Question,
        Verdict = RunText.Verdict(result, designs),
        Card = RunText.Card(result, Asked.OnPage(file, options), designs, map, tyres),
        Warnings = [.. RunText.Warnings(result, designs), .. PageReport.Problems(read.Problems)],
        Replay = result,
        Tables = [.. RunText.Compared(designs), .. RunTables.Of(result), .. TurnTables.Of(result), .. TyreText.Tables(tyres)],
        Figures = [.. RunPlot.Of(result, designs).Figures, .. tyres.Plots.SelectMany(p => p.Plot.Figures), .. map?.Plot.Figures ?? []],
        Inputs = [.. OpponentOptions.Given(options.Opponent, options.Scene), .. PageReport.Inputs(read)],
        Estimates = [.. read.Notes, .. read.Remarks],
        Computation = RunTables.Computation(result, cost, isTimed: false),
        Cautions = Cautions.OfPredictions,
    };
}
