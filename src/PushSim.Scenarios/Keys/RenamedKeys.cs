namespace PushSim.Scenarios.Keys;

/// <summary>Keys of a scenario that stand in another table by now, under another name; files and paths that have them where they were are read on.</summary>
internal static class RenamedKeys
{
    /// <summary>The table that took them in, inside the one where they were.</summary>
    public const string Table = "driver";

    private static readonly (string Old, string New)[] s_names = [("reaction_delay", "reaction"), ("heading_hold", "heading_hold"), ("heading_lag", "heading_lag")];

    private static readonly string[] s_sections = ["manoeuvre", "opponent"];

    /// <summary>The tables in which they were, each with what they were called and are called now.</summary>
    public static IEnumerable<(string Section, string Old, string New)> All => s_sections.SelectMany(s => s_names.Select(n => (s, n.Old, n.New)));

    /// <summary>The path of a value by its name of today.</summary>
    /// <param name="path">Its path, old or new.</param>
    public static string Path(string path)
    {
        foreach ((string section, string old, string now) in All)
        {
            if (path.Length == section.Length + 1 + old.Length && path.StartsWith(section, StringComparison.Ordinal) && path[section.Length] == '.' && path.EndsWith(old, StringComparison.Ordinal))
            {
                return $"{section}.{Table}.{now}";
            }
        }

        return path;
    }
}
