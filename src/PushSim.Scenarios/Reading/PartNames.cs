using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>Names by which the parts of a robot refer to each other.</summary>
internal static class PartNames
{
    /// <summary>The block's name without the part.</summary>
    public static string OfBlock(string name)
    {
        int at = name.IndexOf(TomlTable.PartSeparator, StringComparison.Ordinal);
        return at < 0 ? name : name[..at];
    }

    /// <summary>What paths and notes call a block of a list: its name, else its place from 1.</summary>
    public static string Label(TomlTable table, int index) =>
        table.Find("name")?.Value is TomlText t ? SourceFile.Clean(OfBlock(t.Value), 60) : (index + 1).ToString(CultureInfo.InvariantCulture);

    /// <summary>The part's own copy of a block if there is one, else the block.</summary>
    public static bool TryFind<T>(Dictionary<string, T> blocks, string name, string part, [System.Diagnostics.CodeAnalysis.MaybeNullWhen(false)] out T found) =>
        blocks.TryGetValue(name + TomlTable.PartSeparator + part, out found) || blocks.TryGetValue(name, out found);

    /// <summary>A part's name, if it has one and no other of its kind has it; null after a complaint.</summary>
    public static string? New(Section s, string kind, Func<string, bool> isTaken)
    {
        if (s.Text("name") is not string name)
        {
            s.Context.Unnamed.Add(kind);
            return null;
        }

        if (isTaken(name))
        {
            s.Context.Error(s.PlaceOf("name"), $"there is already a {kind} \"{name}\"", "give each its own name");
            return null;
        }

        return name;
    }

    /// <summary>The same for a part that has columns of its own in the history: names that only signs or capitals keep apart would share them.</summary>
    public static string? NewWithColumns(Section s, string kind, IReadOnlyCollection<string> taken)
    {
        string? name = New(s, kind, taken.Contains);
        if (name is not null && taken.FirstOrDefault(t => Slug.Of(t) == Slug.Of(name)) is string other)
        {
            s.Context.Error(s.PlaceOf("name"), $"{kind} \"{other}\" and {kind} \"{name}\" would share the columns of history.csv", "let letters or digits tell them apart");
        }

        return name;
    }

    /// <summary>Complains about a name that no part of its kind has, unless some of the kind could not be read.</summary>
    public static void Unknown(Section robot, Place place, string kind, string name, IEnumerable<string> known)
    {
        if (robot.IsUnsure(kind))
        {
            return;
        }

        List<string> names = [.. known];
        string all = names.Count == 0 ? $"there is no [[{kind}]] in this file" : $"known: {string.Join(", ", names)}";
        robot.Context.Error(place, $"there is no {kind} \"{SourceFile.Clean(name, 60)}\"", NearestWord.Advice(name, names) + all);
    }
}
