using PushSim.Plotting.Report;

namespace PushSim.Cli.Shared;

/// <summary>What the page of every command has: its name, the values and warnings of the files, what was given with the command.</summary>
internal static class CommandPage
{
    public const string FileName = "report.html";

    /// <summary>Values of the files for a page.</summary>
    public static IReadOnlyList<ReportInput> Inputs(ReadResult read) =>
        [.. read.Inputs.Select(i => UsualValue.Told(new ReportInput(i.Key, Shown(i.Text), i.Value, i.Unit, i.Tolerance, Shown(i.File), i.Line) { Spread = i.Spread }))];

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
