using PushSim.Files;

namespace PushSim.Scenarios.Sources;

/// <summary>
/// The folder in which a builder keeps robots, tyres, opponents, floors and readings: the nearest one upwards that holds `garage.toml`, or the one that was named. Its robots are the
/// files in `robots/`, named by their files.
/// </summary>
public sealed class GarageFolder
{
    /// <summary>Name of the file that makes a folder a garage.</summary>
    public const string FileName = "garage.toml";

    /// <summary>Name of the folder of its robots.</summary>
    public const string RobotFolder = "robots";

    // Folders above that are looked into [1].
    private const int MostUp = 40;

    private GarageFolder(string path) => Path = path;

    /// <summary>The folder, absolute.</summary>
    public string Path { get; }

    /// <summary>Its `garage.toml`.</summary>
    public string File => System.IO.Path.Combine(Path, FileName);

    /// <summary>The garage of a folder: this one or the nearest above it; null if there is none.</summary>
    /// <param name="from">The folder.</param>
    public static GarageFolder? Above(string from)
    {
        string? folder = System.IO.Path.GetFullPath(from);
        for (int i = 0; i < MostUp && folder is not null; i++, folder = System.IO.Path.GetDirectoryName(folder))
        {
            if (Disk.Look(System.IO.Path.Combine(folder, FileName)) == FileKind.File)
            {
                return new GarageFolder(folder);
            }
        }

        return null;
    }

    /// <summary>The garage that a command takes names from; null if there is none.</summary>
    /// <param name="named">Folder that was named; null: the nearest one upwards of the current folder.</param>
    public static GarageFolder? Of(string? named) => named is null ? Above(".") : Disk.Look(System.IO.Path.Combine(named, FileName)) == FileKind.File ? new GarageFolder(System.IO.Path.GetFullPath(named)) : null;

    /// <summary>Its robots' names, in order.</summary>
    public IReadOnlyList<string> Robots()
    {
        string folder = System.IO.Path.Combine(Path, RobotFolder);
        return Disk.Look(folder) != FileKind.Folder ? [] : [.. Disk.List(folder).Where(f => f.EndsWith(".toml", StringComparison.Ordinal)).Select(f => System.IO.Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];
    }

    /// <summary>The file of one of its robots, as a path from the current folder where that is shorter.</summary>
    /// <param name="name">The robot's name.</param>
    public string FileOf(string name) => Shown(System.IO.Path.Combine(Path, RobotFolder, name + ".toml"));

    /// <summary>A path in it for messages: from the current folder where that lies above it.</summary>
    /// <param name="path">The path.</param>
    public static string Shown(string path)
    {
        string near = System.IO.Path.GetRelativePath(".", path);
        return near.StartsWith("..", StringComparison.Ordinal) && near.Length > path.Length ? path : near;
    }
}
