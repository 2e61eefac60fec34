using System.CommandLine;

namespace PushSim.Cli;

/// <summary>`--report` of every command that can make a page: one description, one rule.</summary>
internal static class ReportOption
{
    public static Option<bool> Create(string description = "Write report.html too: one page, to show.") => new("--report") { Description = description };

    /// <summary>Refuses a page that would have no folder: with --json files are written only with --out.</summary>
    public static void Check(Command command, Option<bool> report, Option<bool> json, Option<string?> outDir) => command.Validators.Add(found =>
    {
        if (found.GetValue(report) && found.GetValue(json) && found.GetResult(outDir) is null)
        {
            found.AddError("--report writes a file, and with --json files are written only with --out: give --out DIR");
        }
    });
}
