using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <content>Tables inside a table.</content>
internal sealed partial class Section
{
    /// <summary>A table inside this one as it stands, for keys that no row of the key table knows; null if missing or wrong.</summary>
    public TomlTable? Raw(string key)
    {
        TomlNode? value = _table.Find(key)?.Value;
        if (value is not null and not TomlTable)
        {
            _context.Error(value.Place, $"\"{key}\" takes a table, not {value.Words}", $"for example [{PathTo(key)}] and below it {Definition(key).Example}");
        }

        return value as TomlTable;
    }

    /// <summary>A table inside this one; null if missing or wrong.</summary>
    public Section? Table(string key)
    {
        if (Entry(key) is not TomlEntry e)
        {
            if (_context.Overrides?.FindInside(PathTo(key)) is not TomlEntry set)
            {
                return null;
            }

            var empty = new TomlTable(set.KeyPlace, isExplicit: true);
            if (_context.Recorder is not null)
            {
                _table.Add(new TomlEntry(key, set.KeyPlace, empty));
            }

            return new Section(_context, SectionOf(key), empty);
        }

        if (e.Value is TomlTable t)
        {
            return new Section(_context, SectionOf(key), t);
        }

        bool isDoubled = e.Value is TomlArray { IsOfHeaders: true };
        _context.Error(e.Value.Place, $"\"{key}\" takes a table, not {(isDoubled ? "a list of tables" : e.Value.Words)}", isDoubled ? $"write [{SectionOf(key)}] once, with single brackets" : $"write it as [{SectionOf(key)}] or as {key} = {{ ... }}");
        return null;
    }

    /// <summary>The tables of a list, each labelled by its name; empty if missing or wrong.</summary>
    public IReadOnlyList<Section> Tables(string key)
    {
        if (Entry(key) is not TomlEntry e)
        {
            return [];
        }

        if (e.Value is TomlArray a && a.Items.All(i => i is TomlTable))
        {
            return [.. a.Items.Cast<TomlTable>().Select((t, i) => new Section(_context, SectionOf(key), t, _context.Drawn is null ? PartNames.Label(t, i) : ""))];
        }

        string help = e.Value is TomlTable ? $"write [[{SectionOf(key)}]] with double brackets" : $"write each as [[{SectionOf(key)}]]";
        _context.Error(e.Value.Place, $"\"{key}\" takes a list of tables, not {(e.Value is TomlArray ? "a list of other things" : e.Value.Words)}", help);
        return [];
    }
}
