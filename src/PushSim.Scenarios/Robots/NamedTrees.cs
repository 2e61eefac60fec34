using PushSim.Files;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Robots;

/// <summary>The tree of what a user names: a file, else a robot or rival of the garage.</summary>
internal static class NamedTrees
{
    /// <summary>The tree; null after a complaint.</summary>
    public static TomlTable? Of(ReadContext context, string name)
    {
        if (IsFile(name))
        {
            return Includes.Tree(context, name, name);
        }

        if (OfName(context, name) is TomlTable tree)
        {
            return tree;
        }

        if (context.Errors > 0)
        {
            return null;
        }

        if (context.Garage is not GarageFolder garage || Path.HasExtension(name) || name.Contains('/') || name.Contains('\\'))
        {
            return Includes.Tree(context, name, name);
        }

        string[] names = [.. garage.Robots(), .. GarageRivals.Names(context)];
        context.CannotRead = true;
        context.Error(new Place(new SourceFile(name, ""), 0, 0, 1), $"\"{SourceFile.Clean(name, 60)}\" is neither a file nor a robot of the garage", NearestWord.Advice(name, names) + (names.Length == 0 ? $"the garage has no robots yet; put their files into {GarageFolder.Shown(garage.Path)}/{GarageFolder.RobotFolder}" : "the garage has " + string.Join(", ", names)));
        return null;
    }

    /// <summary>The tree of a robot or rival of the garage; null if it has none of that name, or after a complaint.</summary>
    public static TomlTable? OfName(ReadContext context, string name)
    {
        if (name.Length == 0 || name.IndexOfAny(['/', '\\', '\0']) >= 0 || context.Garage is not GarageFolder garage)
        {
            return null;
        }

        string? robot = garage.Robots().FirstOrDefault(r => r == name) ?? garage.Robots().FirstOrDefault(r => r.Equals(name, StringComparison.OrdinalIgnoreCase));
        return robot is null ? GarageRivals.Tree(context, name) : Includes.Tree(context, garage.FileOf(robot), garage.FileOf(robot));
    }

    // what cannot even be looked at is complained about where it is opened
    private static bool IsFile(string name)
    {
        try
        {
            return name.Length == 0 || name.Contains('\0') || Disk.Look(name) != PathKind.None;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            return true;
        }
    }
}
