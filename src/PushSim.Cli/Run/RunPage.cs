using PushSim.Plotting.Report;
using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>The page of `run --report`.</summary>
internal static class RunPage
{
    public static ReportPage Of(RunResult result, ReadResult read, double milliseconds, TyreAnswers tyres, TurnMap? map = null) => new()
    {
        Command = "run",
        Subject = result.Scenario.Name,
        Question = result.Scenario.Question,
        Verdict = RunWords.Verdict(result),
        Warnings = [.. RunWords.Warnings(result), .. PageReport.Problems(read.Problems)],
        Replay = result,
        Tables = [.. RunTables.Of(result), .. TurnTables.Of(result), .. TyreText.Tables(tyres)],
        Figures = [.. RunPlot.Of(result).Figures, .. tyres.Plots.SelectMany(p => p.Plot.Figures), .. map?.Plot.Figures ?? []],
        Inputs = PageReport.Inputs(read),
        Estimates = [.. read.Notes, .. read.Remarks],
        Computation = RunTables.Computation(result, milliseconds),
        Cautions = Cautions.OfPredictions,
    };
}
