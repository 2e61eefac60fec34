using PushSim.Files;

namespace PushSim.Cli.Shared;

/// <summary>`--garage DIR` of every command that reads robots: where names come from.</summary>
internal static class GarageOption
{
    private const string Name = "--garage";

    // commands that read no robot of a person
    private static readonly string[] s_without = ["new", "explain", "shelf", "cluster"];

    public static void AddTo(Command command)
    {
        if (!s_without.Contains(command.Name))
        {
            command.Options.Add(new Option<string?>(Name) { Description = $"Folder with {GarageFolder.FileName} that names come from (default: the nearest upwards).", HelpName = "DIR" });
        }
    }

    /// <summary>Takes the garage that a command line names, or the nearest.</summary>
    /// <returns>What is wrong; null if nothing is.</returns>
    public static string? Choose(ParseResult parsed)
    {
        string? folder = parsed.CommandResult.Command.Options.Any(o => o.Name == Name) ? parsed.GetValue<string?>(Name) : null;
        GarageFolder.Choose(folder);
        return folder is not null && Disk.Look(Path.Combine(folder, GarageFolder.FileName)) != PathKind.File ? $"{folder} is no garage: it has no {GarageFolder.FileName}; pushsim garage new {folder} makes one" : null;
    }
}
