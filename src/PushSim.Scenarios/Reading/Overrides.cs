using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>
/// Values that a scenario or a caller sets anew, by path: "tyre.soft.static_friction", "wheel.*.tyre" for every name. In a file a path may be written as one key in
/// quotes, as a dotted key or as nested tables. Of several for one value the last counts.
/// </summary>
internal sealed class Overrides
{
    // Paths that a complaint offers [1].
    private const int MostNear = 3;

    private readonly List<TomlEntry> _entries;
    private readonly HashSet<string> _asked = new(StringComparer.Ordinal);
    private readonly HashSet<TomlEntry> _used = [];

    private Overrides(List<TomlEntry> entries) => _entries = entries;

    /// <summary>The values; null for none.</summary>
    /// <param name="entries">Entries with whole paths as keys.</param>
    public static Overrides? Of(IEnumerable<TomlEntry> entries) => entries.ToList() is { Count: > 0 } list ? new Overrides(list) : null;

    /// <summary>The entries of a table, with whole paths as keys.</summary>
    /// <param name="table">The file's table of overrides; may be null.</param>
    public static IEnumerable<TomlEntry> Entries(TomlTable? table) => table?.Entries.SelectMany(e => e.Value is TomlTable inner
        ? Entries(inner).Select(i => i with { Key = $"{e.Key}.{i.Key}" })
        : [e]) ?? [];

    /// <summary>The value set for a path; null for none.</summary>
    public TomlEntry? Find(string path)
    {
        _asked.Add(path);
        TomlEntry? found = null;
        foreach (TomlEntry entry in _entries)
        {
            if (IsOf(entry.Key, path))
            {
                _used.Add(entry);
                found = entry;
            }
        }

        return found;
    }

    /// <summary>Drops the values of one part, which something else gives by now.</summary>
    /// <param name="prefix">What their paths begin with.</param>
    public void Forget(string prefix) => _entries.RemoveAll(e => e.Key.StartsWith(prefix, StringComparison.Ordinal));

    /// <summary>First value set inside a table; null if there is none. A table that the file leaves out is then there all the same.</summary>
    public TomlEntry? FindInside(string table) => _entries.Find(e => e.Key.StartsWith(table + ".", StringComparison.Ordinal));

    // the whole path, else the one whose last part it is or is near to; stars keep their place
    private string[] Nearest(string key)
    {
        if (NearestWord.Find(key, _asked) is string whole)
        {
            return [whole];
        }

        string last = key[(key.LastIndexOf('.') + 1)..];
        string[] ends = [.. _asked.Select(a => a[(a.LastIndexOf('.') + 1)..]).Distinct()];
        string? end = Array.Find(ends, e => e.Equals(last, StringComparison.OrdinalIgnoreCase)) ?? NearestWord.Find(last, ends);
        string starred = key[..(key.LastIndexOf('.') + 1)] + end;
        return end is null ? [] : key.Contains('*', StringComparison.Ordinal) && starred != key ? [starred] : Kinds(_asked.Where(a => a == end || a.EndsWith("." + end, StringComparison.Ordinal)).Distinct());
    }

    // several parts of a kind as one path with a star
    private static string[] Kinds(IEnumerable<string> paths) =>
        [.. paths.GroupBy(p => p[..(p.IndexOf('.', StringComparison.Ordinal) + 1)]).Select(g => g.ToArray() is { Length: > 1 } all && all.All(p => p.Split('.').Length == 3) ? $"{g.Key}*{all[0][all[0].LastIndexOf('.')..]}" : g.First()).Take(MostNear)];

    /// <summary>Complains about every value that nothing asked for. Only sensible after a reading that was complete.</summary>
    public void ReportUnused(ReadContext context, string owner)
    {
        foreach (TomlEntry entry in _entries.Where(e => !_used.Contains(e)))
        {
            string near = Nearest(entry.Key) is { Length: > 0 } words ? $"did you mean {string.Join(" or ", words.Select(w => $"\"{SourceFile.Clean(w)}\""))}?" : "write it as part.name.key, for example \"tyre.soft.static_friction\" or \"chassis.mass\"";
            context.Error(entry.KeyPlace, $"{owner} has no value \"{SourceFile.Clean(entry.Key, 100)}\"", near);
        }
    }

    // A star stands for one name or more
    private static bool IsOf(string pattern, string path)
    {
        int star = pattern.IndexOf(".*.", StringComparison.Ordinal);
        return star < 0 ? pattern == path
            : path.Length > pattern.Length - 1 && path.AsSpan().StartsWith(pattern.AsSpan(0, star + 1)) && path.AsSpan().EndsWith(pattern.AsSpan(star + 2));
    }
}
