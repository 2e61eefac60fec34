namespace PushSim.Scenarios.Keys;

/// <summary>Finds keys by what a person types.</summary>
public static class KeySearch
{
    private const int MostNear = 3;

    // a single letter is near to every other
    private const int ShortestWord = 2;

    /// <summary>Every key of every kind of file.</summary>
    public static IReadOnlyList<KeyMatch> All { get; } =
        [.. Enum.GetValues<FileKind>().SelectMany(KeySection.Of).SelectMany(s => s.Keys.Select(k => new KeyMatch(s, k))).DistinctBy(m => m.Key)];

    /// <summary>
    /// The keys meant by a name ("body_stiffness"), a table and name ("tyre.body_stiffness") or the full name with the kind of file in
    /// front. Letter case, brackets and hyphens count nothing; empty if there is none.
    /// </summary>
    public static IReadOnlyList<KeyMatch> Find(string words)
    {
        string wanted = Plain(words);
        return wanted.Length == 0 ? [] : [.. All.Where(m => m.Path == wanted || m.Path.EndsWith("." + wanted, StringComparison.Ordinal))];
    }

    /// <summary>The few names nearest to a mistyped one, nearest first: by spelling, else those that share a word with it, else those whose meaning has the word.</summary>
    public static IReadOnlyList<string> Nearest(string words)
    {
        string wanted = Plain(words);
        string last = wanted[(wanted.LastIndexOf('.') + 1)..];
        if (last.Length < ShortestWord)
        {
            return [];
        }

        string[] names = [.. All.Select(m => m.Key.Name).Distinct()];
        List<string> near = [];
        while (near.Count < MostNear && NearestWord.Find(last, names.Except(near)) is string found)
        {
            near.Add(found);
        }

        string[] parts = last.Split('_', StringSplitOptions.RemoveEmptyEntries);
        if (near.Count == 0)
        {
            near = [.. names.Where(n => n.Split('_').Intersect(parts).Any()).Take(MostNear)];
        }

        // a word of the trade that is no key: those whose meaning speaks of it
        return near.Count > 0 ? near
            : [.. All.Where(m => m.Key.Meaning.Contains(last.Replace('_', ' '), StringComparison.OrdinalIgnoreCase)).Select(m => m.Key.Name).Distinct().Take(MostNear)];
    }

    private static string Plain(string words) =>
        words.Trim().Trim('[', ']', '"', '\'').Trim().ToLowerInvariant().Replace('-', '_').Replace(' ', '_');
}
