using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>
/// Single values that a scenario sets anew in a robot it uses, by the value's path: "tyre.soft.static_friction". A path may be written as one
/// key in quotes, as a dotted key or as nested tables.
/// </summary>
internal sealed class Overrides
{
    private readonly Dictionary<string, TomlEntry> _entries = new(StringComparer.Ordinal);
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);

    /// <param name="table">The file's table of overrides; may be null.</param>
    /// <param name="first">Entries, whole paths as keys, that win over those of the table.</param>
    public Overrides(TomlTable? table, IReadOnlyList<TomlEntry> first)
    {
        foreach (TomlEntry entry in first)
        {
            _entries[entry.Key] = entry;
        }

        if (table is not null)
        {
            Flatten("", table);
        }
    }

    /// <summary>The value set for a path; null for none.</summary>
    public TomlEntry? Find(string path)
    {
        _asked.Add(path);
        return _entries.GetValueOrDefault(path);
    }

    /// <summary>First value set inside a table; null if there is none. A table that the file leaves out is then there all the same.</summary>
    public TomlEntry? FindInside(string table) =>
        _entries.FirstOrDefault(e => e.Key.StartsWith(table + ".", StringComparison.Ordinal)).Value;

    /// <summary>Complains about every value that nothing asked for. Only sensible after a reading that was complete.</summary>
    public void ReportUnused(ReadContext context, string robot)
    {
        foreach ((string path, TomlEntry entry) in _entries)
        {
            if (!_asked.Contains(path))
            {
                string near = NearestWord.Find(path, _asked) is string word ? $"did you mean \"{SourceFile.Clean(word)}\"?" : "write it as part.name.key, for example \"tyre.soft.static_friction\" or \"chassis.mass\"";
                context.Error(entry.KeyPlace, $"robot \"{SourceFile.Clean(robot, 60)}\" has no value \"{SourceFile.Clean(path, 100)}\"", near);
            }
        }
    }

    private void Flatten(string prefix, TomlTable table)
    {
        foreach (TomlEntry entry in table.Entries)
        {
            string path = prefix + entry.Key;
            if (entry.Value is TomlTable inner)
            {
                Flatten(path + ".", inner);
            }
            else
            {
                _entries.TryAdd(path, entry);
            }
        }
    }
}
