using PushSim.Files;

namespace PushSim.Cli.Shared;

/// <summary>`--garage DIR` of every command that reads robots: where names come from.</summary>
internal static class GarageOption
{
    /// <summary>Its name.</summary>
    public const string Name = "--garage";

    // commands that read no robot of a person
    private static readonly string[] s_without = ["new", "explain", "shelf", "cluster"];

    public static void AddTo(Command command)
    {
        if (!s_without.Contains(command.Name))
        {
            command.Options.Add(new Option<string?>(Name) { Description = $"Folder with {GarageFolder.FileName} that names come from (default: the nearest upwards).", HelpName = "DIR" });
        }
    }

    /// <summary>The garage that a command line names; null: it names none, and the nearest is taken.</summary>
    public static string? Of(ParseResult parsed) => parsed.CommandResult.Command.Options.Any(o => o.Name == Name) ? parsed.GetValue<string?>(Name) : null;

    /// <summary>What is wrong with the garage that a command line names; null if nothing is.</summary>
    public static string? Wrong(ParseResult parsed)
    {
        string? folder = Of(parsed);
        return folder is not null && Disk.Look(Path.Combine(folder, GarageFolder.FileName)) != FileKind.File ? $"{folder} is no garage: it has no {GarageFolder.FileName}; pushsim garage new {folder} makes one" : null;
    }
}
