using System.CommandLine.Parsing;

namespace PushSim.Cli.Shared;

/// <summary>Options that several commands share.</summary>
/// <param name="folder">What the folder is for.</param>
/// <param name="page">What the page is.</param>
internal sealed class CommonOptions(string folder = "Folder for files (default in pushsim-out).", string page = "Write report.html too: one page, to show.")
{
    public Option<string?> Out { get; } = new("--out") { Description = folder, HelpName = "DIR" };

    public Option<bool> Force { get; } = new("--force") { Description = "Write into a folder that is not an output of pushsim." };

    public Option<bool> Json { get; } = new("--json") { Description = "Print one JSON document; files only with --out." };

    public Option<bool> Quiet { get; } = new("--quiet") { Description = "Print the answer only." };

    public Option<bool> Details { get; } = new("--details") { Description = "Print all tables, not the answer alone." };

    public Option<bool> NoPlots { get; } = new("--no-plots") { Description = "Write no pictures." };

    public Option<string> Format { get; } = new("--format") { Description = "Forms of the pictures: png, svg, pdf, or several as png,svg.", HelpName = "FORMS", DefaultValueFactory = _ => "png" };

    public Option<bool> Report { get; } = new("--report") { Description = page };

    public Option<long> Seed { get; } = Whole("--seed", "S", "Seed of the draws; the same seed gives the same matches.", 1, 0, long.MaxValue);

    public Option<long> Threads { get; } = Whole("--threads", "T", "Threads, one per processor.", Environment.ProcessorCount, 1, 1024);

    /// <summary>Adds the options that every command with files has; the command's own ones that are given stand before the page.</summary>
    public void AddTo(Command command, params Option[] own)
    {
        CheckFolder(Out);
        CheckText(Format, text => PictureFile.Formats(text) is null ? $"takes png, svg and pdf, with commas between them, not \"{text}\"" : "");
        foreach (Option option in (Option[])[Out, Force, Json, Quiet, Details, NoPlots, Format, .. own, Report])
        {
            command.Options.Add(option);
        }

        // a page would have no folder: with --json files are written only with --out
        command.Validators.Add(found =>
        {
            if (found.GetValue(Report) && found.GetValue(Json) && found.GetResult(Out) is null)
            {
                found.AddError("--report writes a file, and with --json files are written only with --out: give --out DIR");
            }
        });
    }

    /// <summary>What was asked by them.</summary>
    public OutputRequest Of(ParseResult p) => new(p.GetValue(Out), p.GetValue(Force), p.GetValue(Json), p.GetValue(Quiet), p.GetValue(NoPlots), p.GetValue(Report), p.GetValue(Details), "pushsim " + string.Join(' ', p.Tokens.Select(t => t.Value)))
    {
        Formats = PictureFile.Formats(p.GetValue(Format) ?? "png") ?? PictureFormat.Png, Garage = GarageOption.Of(p),
    };

    /// <summary>A whole number, read the same in every country.</summary>
    public static Option<long> Whole(string name, string help, string description, long byDefault, long least, long most) => new(name)
    {
        Description = description, HelpName = help, DefaultValueFactory = _ => byDefault, CustomParser = found => Read(found, name, least, most) ?? byDefault,
    };

    /// <summary>The same where none need be given: null.</summary>
    public static Option<long?> WholeOrNone(string name, string help, string description, long least, long most) => new(name)
    {
        Description = description, HelpName = help, CustomParser = found => Read(found, name, least, most),
    };

    /// <summary>Refuses what can be no folder.</summary>
    public static void CheckFolder<T>(Option<T> option) => option.Validators.Add(found =>
    {
        string? path = found.GetValueOrDefault<string?>();
        if (string.IsNullOrWhiteSpace(path) || path.Contains('\0'))
        {
            found.AddError($"{option.Name} needs the name of a folder");
        }
    });

    /// <summary>Refuses texts that mean nothing to an option.</summary>
    /// <param name="option">The option; its name stands before the complaint.</param>
    /// <param name="complaint">What is wrong with a text; empty if nothing is.</param>
    public static void CheckText<T>(Option<T> option, Func<string, string> complaint) => option.Validators.Add(found =>
    {
        if (found.GetValueOrDefault<string?>() is string text && complaint(text) is { Length: > 0 } message)
        {
            found.AddError($"{option.Name}{(message.StartsWith("the ", StringComparison.Ordinal) ? ":" : "")} {message}");
        }
    });

    private static long? Read(ArgumentResult found, string name, long least, long most)
    {
        string text = found.Tokens.Count == 1 ? found.Tokens[0].Value : "";
        if (long.TryParse(text, NumberStyles.AllowLeadingSign, CultureInfo.InvariantCulture, out long value) && value >= least && value <= most)
        {
            return value;
        }

        found.AddError($"{name} takes a whole number from {least} to {most}, not \"{text}\"");
        return null;
    }
}
