using PushSim.Files;

namespace PushSim.Scenarios.Sources;

/// <summary>What is said of a file that did not open, whoever named it: why, and what helps.</summary>
internal static class UnopenedFile
{
    // Files of a folder that are named [1].
    private const int MostNamed = 3;

    /// <summary>Why, to stand behind the file's name or "it"; and help, empty for none.</summary>
    /// <param name="state">What came of opening it.</param>
    /// <param name="path">The file.</param>
    /// <param name="shown">Its name as it was written.</param>
    /// <param name="ending">Ending of the files that are meant: ".toml", ".csv".</param>
    /// <param name="by">The file that names it; null: none does.</param>
    public static (string Why, string Help) Of(OpenState state, string path, string shown, string ending, string? by = null) => state switch
    {
        OpenState.Folder => ("is a folder, not a file", Inside(path, ending) is { Length: > 0 } files ? $"name a file in it: {string.Join(", ", files)}" : "name a file in it"),
        OpenState.Outside => ("leaves the scenario's folder", "put the file in the same folder or below it"),
        OpenState.NoRegularFile => ("is a pipe or a device, no regular file", "name a regular file"),
        _ => ("is not there", NearestFile.Find(path, shown, by) is string near ? $"did you mean \"{SourceFile.Clean(near)}\"?" : "check the name and the folder"),
    };

    /// <summary>The same as a problem of the file itself.</summary>
    public static Problem Problem(OpenState state, string path, string ending)
    {
        string name = SourceFile.Clean(path);
        (string why, string help) = Of(state, path, name, ending);
        return new Problem(name, 0, 0, Severity.Error, state == OpenState.Outside ? "this path " + why : "it " + why, help);
    }

    private static string[] Inside(string folder, string ending)
    {
        try
        {
            return [.. Disk.List(folder).Where(f => f.EndsWith(ending, StringComparison.OrdinalIgnoreCase)).Select(f => SourceFile.Clean(Path.GetFileName(f))).Order(StringComparer.Ordinal).Take(MostNamed)];
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            return [];
        }
    }
}
