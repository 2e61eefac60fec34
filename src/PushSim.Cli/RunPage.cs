using System.Globalization;
using PushSim.Plotting;
using PushSim.Plotting.Report;
using PushSim.Runs;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;

namespace PushSim.Cli;

/// <summary>The page of `run --report`.</summary>
internal static class RunPage
{
    public const string FileName = "report.html";

    public static ReportPage Of(RunResult result, ReadResult read, double milliseconds, TyreAnswers tyres, TurnMap? map = null) => new()
    {
        Command = "run",
        Subject = result.Scenario.Name,
        Question = result.Scenario.Question,
        Verdict = result.Verdict,
        Warnings = [.. result.Warnings, .. Problems(read.Problems)],
        Replay = result,
        Tables = [.. TextReport.Tables(result), .. TurnTextReport.Tables(result.Turning), .. TyreText.Tables(tyres)],
        Figures = [.. RunPlot.Figures(result), .. tyres.Figures(), .. map?.Figures() ?? []],
        Inputs = Inputs(read),
        Estimates = [.. read.Notes, .. read.Remarks],
        Computation = TextReport.Computation(result, milliseconds),
        Cautions = TextReport.Cautions,
    };

    /// <summary>Values of the files for a page.</summary>
    public static IReadOnlyList<ReportInput> Inputs(ReadResult read) =>
        [.. read.Inputs.Select(i => new ReportInput(i.Key, Shown(i.Text), i.Value, i.Unit, i.Tolerance, Shown(i.File), i.Line))];

    /// <summary>Warnings about the files, for a page.</summary>
    public static IEnumerable<string> Problems(IEnumerable<Problem> problems) => problems.Select(p => (p with { File = Shown(p.File) }).ToString());

    /// <summary>A value given with the command, as a row beside those of the files.</summary>
    /// <param name="option">The option's name.</param>
    /// <param name="text">What was given; null: nothing was, and there is no row.</param>
    /// <param name="value">What the computation makes of it [unit].</param>
    /// <param name="unit">Its unit.</param>
    public static IEnumerable<ReportInput> Given(string option, string? text, double? value = null, string unit = "") =>
        text is null ? [] : [new ReportInput(option, text, value, unit, 0.0, "Given with the command", 0)];

    /// <summary>The same for a number.</summary>
    public static IEnumerable<ReportInput> Given(string option, double? value, string unit) =>
        Given(option, value?.ToString("G6", CultureInfo.InvariantCulture), value, unit);

    /// <summary>A file's name for a page, which is shown to others: not the folders of this machine.</summary>
    public static string Shown(string file) => Path.IsPathRooted(file) ? Path.GetFileName(file) : file;
}
