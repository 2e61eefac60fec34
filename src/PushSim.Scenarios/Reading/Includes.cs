using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>
/// include = ["parts/tyres.toml"]: what the named files hold is added to the file. Lists of tables are joined, tables filled key
/// by key, and where both give a value the including file's own stands.
/// </summary>
internal static class Includes
{
    private const string Key = "include";

    // Files that one file may pull in, directly or by way of others.
    private const int MostFiles = 32;

    /// <summary>A file's tree with what it includes; null if it is not there or no TOML, complained about then.</summary>
    /// <param name="context">Gathers complaints.</param>
    /// <param name="path">The file's path.</param>
    /// <param name="name">Its name in messages.</param>
    /// <param name="from">Where another file names it, and how; null if the user did.</param>
    /// <param name="root">Folder that it must lie in; null: it may lie anywhere.</param>
    public static TomlTable? Tree(ReadContext context, string path, string name, (Place Place, string Text)? from = null, string? root = null)
    {
        TomlTable? tree = FileLoader.Load(context, path, name, from, root) is SourceFile file ? TomlTree.Parse(context, file) : null;
        if (tree is not null)
        {
            int files = 0;
            Merge(context, tree, name, [Path.GetFullPath(path)], ref files);
        }

        return tree;
    }

    private static void Merge(ReadContext context, TomlTable tree, string shown, List<string> chain, ref int files)
    {
        if (tree.Find(Key)?.Value is not TomlNode value)
        {
            return;
        }

        if (value is not TomlArray list || list.Items.Any(i => i is not TomlText))
        {
            context.Error(value.Place, $"\"{Key}\" takes a list of texts", $"for example {Key} = [\"parts/tyres.toml\"]");
            return;
        }

        string folder = Path.GetDirectoryName(chain[^1])!;
        foreach (TomlText name in list.Items.OfType<TomlText>())
        {
            if (FileLoader.Resolve(context, folder, name.Value, name.Place) is not string full)
            {
                continue;
            }

            if (chain.Contains(full, StringComparer.Ordinal))
            {
                string way = string.Join(", then ", chain.Skip(chain.IndexOf(full)).Append(full).Select(f => SourceFile.Clean(Path.GetFileName(f), 60)));
                context.Error(name.Place, $"these files include each other in a circle: {way}", "take one of the includes out");
                continue;
            }

            if (++files > MostFiles)
            {
                context.Error(name.Place, $"more than {MostFiles} included files", "join some of them");
                return;
            }

            string place = Path.GetDirectoryName(shown) is { Length: > 0 } own ? Path.Combine(own, name.Value) : name.Value;
            if (FileLoader.Load(context, full, place, (name.Place, name.Value), FileLoader.Root(context, folder)) is SourceFile file && TomlTree.Parse(context, file) is TomlTable other)
            {
                Merge(context, other, place, [.. chain, full], ref files);
                Add(tree, other);
            }
        }
    }

    private static void Add(TomlTable to, TomlTable from)
    {
        foreach (TomlEntry entry in from.Entries.Where(e => e.Key != Key))
        {
            switch (to.Find(entry.Key)?.Value, entry.Value)
            {
                case (null, _):
                    to.Add(entry);
                    break;
                case (TomlTable own, TomlTable other):
                    Add(own, other);
                    break;
                case (TomlArray { IsOfHeaders: true } own, TomlArray { IsOfHeaders: true } other):
                    own.Items.AddRange(other.Items);
                    break;
            }
        }
    }
}
