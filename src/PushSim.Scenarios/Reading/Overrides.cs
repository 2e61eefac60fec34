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

    // Paths with a star, split at it, and which of them stood for some value.
    private readonly List<(string Head, string Tail, TomlEntry Entry)> _wild = [];
    private readonly HashSet<string> _used = new(StringComparer.Ordinal);

    /// <summary>Values of a table and of a caller together.</summary>
    /// <param name="table">The file's table of overrides; may be null.</param>
    /// <param name="first">Entries, whole paths as keys, that win over those of the table; "*" stands for any name.</param>
    public Overrides(TomlTable? table, IReadOnlyList<TomlEntry> first)
    {
        foreach (TomlEntry entry in first)
        {
            int star = entry.Key.IndexOf(".*.", StringComparison.Ordinal);
            if (star < 0)
            {
                _entries[entry.Key] = entry;
            }
            else
            {
                _wild.Add((entry.Key[..(star + 1)], entry.Key[(star + 2)..], entry));
            }
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
        foreach ((string head, string tail, TomlEntry entry) in _wild)
        {
            if (path.Length > head.Length + tail.Length && path.StartsWith(head, StringComparison.Ordinal) && path.EndsWith(tail, StringComparison.Ordinal))
            {
                _used.Add(entry.Key);
                return entry;
            }
        }

        return _entries.GetValueOrDefault(path);
    }

    /// <summary>First value set inside a table; null if there is none. A table that the file leaves out is then there all the same.</summary>
    public TomlEntry? FindInside(string table) =>
        _entries.FirstOrDefault(e => e.Key.StartsWith(table + ".", StringComparison.Ordinal)).Value;

    /// <summary>Complains about every value that nothing asked for. Only sensible after a reading that was complete.</summary>
    public void ReportUnused(ReadContext context, string owner)
    {
        IEnumerable<(string Path, TomlEntry Entry)> all = [.. _entries.Select(e => (e.Key, e.Value)), .. _wild.Where(w => !_used.Contains(w.Entry.Key)).Select(w => (w.Entry.Key, w.Entry))];
        foreach ((string path, TomlEntry entry) in all)
        {
            if (!_asked.Contains(path))
            {
                string near = NearestWord.Find(path, _asked) is string word ? $"did you mean \"{SourceFile.Clean(word)}\"?" : "write it as part.name.key, for example \"tyre.soft.static_friction\" or \"chassis.mass\"";
                context.Error(entry.KeyPlace, $"{owner} has no value \"{SourceFile.Clean(path, 100)}\"", near);
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
