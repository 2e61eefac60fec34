using PushSim.Plotting.Report;
using PushSim.Scenarios;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>The page of `run --report`.</summary>
internal static class RunPage
{
    public const string FileName = "report.html";

    public static ReportPage Of(RunResult result, ReadResult read, double milliseconds) => new()
    {
        Command = "run",
        Subject = result.Scenario.Name,
        Question = result.Scenario.Question,
        Verdict = result.Verdict,
        Warnings = [.. result.Warnings, .. read.Problems.Select(p => p.ToString())],
        Replay = result,
        Tables = [.. TextReport.Tables(result)],
        Figures = ReportFigure.Of(result),
        Inputs = Inputs(read),
        Estimates = read.Notes,
        Computation = TextReport.Computation(result, milliseconds),
        Cautions = TextReport.Cautions,
    };

    /// <summary>Values of the files for a page.</summary>
    public static IReadOnlyList<ReportInput> Inputs(ReadResult read) =>
        [.. read.Inputs.Select(i => new ReportInput(i.Key, i.Text, i.Value, i.Unit, i.Tolerance, Shown(i.File), i.Line))];

    // a page is shown to others: not the folders of this machine
    private static string Shown(string file) => Path.IsPathRooted(file) ? Path.GetFileName(file) : file;
}
