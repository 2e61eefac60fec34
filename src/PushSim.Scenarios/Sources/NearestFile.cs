using PushSim.Files;

namespace PushSim.Scenarios.Sources;

/// <summary>The file that a missing one most likely meant: one beside it with nearly its name, or one of its name in a folder there.</summary>
internal static class NearestFile
{
    // Folders beside a missing file that are looked into [1].
    private const int MostFolders = 200;

    /// <summary>Its name, from where the missing one was named; null if none is near.</summary>
    /// <param name="path">The missing one.</param>
    /// <param name="shown">Its name as it was written, whose folder the answer has, too.</param>
    /// <param name="by">The file that names it, which it is not; null: none does.</param>
    public static string? Find(string path, string shown, string? by = null)
    {
        try
        {
            string folder = Path.GetDirectoryName(path) is { Length: > 0 } given ? given : ".";
            string name = Path.GetFileName(path);

            // what has the name itself is a link that leads nowhere
            string[] there = [.. Disk.List(folder).Select(f => Path.GetFileName(f)).Where(f => f != name && (by is null || f != Path.GetFileName(by)))];
            string? near = NearestWord.Find(name, there) ?? Array.Find(there, f => Path.GetFileNameWithoutExtension(f).Equals(name, StringComparison.OrdinalIgnoreCase));
            near ??= there.Take(MostFolders).Where(f => Disk.Look(Path.Combine(folder, f)) == PathKind.Folder && Disk.Look(Path.Combine(folder, f, name)) == PathKind.File).Select(f => f + "/" + name).FirstOrDefault();
            return near is null ? null : shown[..^Math.Min(shown.Length, Path.GetFileName(shown).Length)] + near;
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException or ArgumentException)
        {
            // no folder there either
            return null;
        }
    }
}
