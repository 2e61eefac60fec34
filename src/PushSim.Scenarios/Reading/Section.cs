using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>
/// One table of a file, read by the table of keys: unknown and missing keys are complained about at once, each value when it is asked for. A
/// missing or wrong number reads as NaN, so that reading goes on and finds the other mistakes.
/// </summary>
internal sealed partial class Section
{
    private readonly ReadContext _context;
    private readonly TomlTable _table;
    private readonly string _section;
    private readonly string? _label;

    // What stands before the keys in their paths; empty at the top level, null until it was asked for.
    private string? _path;

    public Section(ReadContext context, string section, TomlTable table, string? label = null)
    {
        _context = context;
        _table = table;
        _section = section;
        _label = label;
        if (context.Drawn is null)
        {
            UnknownKeys.Report(context, section, table);
            ReportMissing();
        }
    }

    /// <summary>Where the table starts.</summary>
    public Place Place => _table.Place;

    /// <summary>The context that gathers complaints.</summary>
    public ReadContext Context => _context;

    /// <summary>Whether the file gives the key, or what uses the file sets it anew; wrong values count too.</summary>
    public bool Has(string key) => Entry(key) is not null;

    /// <summary>Where a key's value stands; the table's place if it has none.</summary>
    public Place PlaceOf(string key) => Entry(key)?.Value.Place ?? _table.Place;

    /// <summary>Where a scenario or the caller sets a key of this robot anew; null if neither does.</summary>
    public Place? PlaceSetAnew(string key) => _context.Overrides?.Find(PathTo(key))?.KeyPlace;

    /// <summary>Complains about missing keys, unless what was likely meant to give one of them stands there misspelled.</summary>
    public void Missing(IReadOnlyList<string> keys, string message, string help)
    {
        if (!keys.Any(IsMeant))
        {
            _context.Error(_table.Place, message, help);
        }
    }

    /// <summary>True for a key that is not there because something else is wrong, which was complained about.</summary>
    public bool IsMeant(string key) => _table.Meant.Contains(key);

    /// <summary>True for a kind of parts of which some were not read: a misspelled header, a missing name, none where one must be. That was complained about; what refers to them may be right.</summary>
    public bool IsUnsure(string kind) => IsMeant(kind) || _context.Unnamed.Contains(kind) || (Definition(kind).IsRequired && !Has(kind));

    /// <summary>
    /// The record with every value of this table that the file gives, in the order of the table of keys. What is missing stays as the record has it; a wrong number
    /// is NaN, a wrong flag or count stays. Values that are read apart are left to the steps.
    /// </summary>
    /// <param name="record">What holds where the file gives nothing.</param>
    /// <param name="steps">What else is read, each step before the key of that name.</param>
    public T Fill<T>(T record, params ReadOnlySpan<(string Before, Func<T, T> Step)> steps)
    {
        foreach ((KeyDefinition key, KeyRow<T>? row) in KeyTable.Rows<T>(_section))
        {
            foreach ((string before, Func<T, T> step) in steps)
            {
                record = before == key.Name ? step(record) : record;
            }

            record = row is null or { IsReadApart: true } ? record : Put(record, key, row);
        }

        return record;
    }

    /// <summary>The record with the value of one key, if the file gives it.</summary>
    public T Put<T>(T record, string key)
    {
        KeyDefinition d = Definition(key);
        return Put(record, d, d.Row<T>()!);
    }

    // What the file gives, or what the file that uses it sets in its place.
    private TomlEntry? Entry(string key)
    {
        TomlEntry? own = _table.Find(key);
        if (_context.Overrides?.Find(PathTo(key)) is not TomlEntry set)
        {
            return own;
        }

        if (_context.Recorder is null)
        {
            return set;
        }

        // written into the tree for good, so that a draw need not look it up; a copy, since other parts may get it too
        if (own is null || own.KeyPlace != set.KeyPlace)
        {
            _table.Put(new TomlEntry(key, set.KeyPlace, set.Value.Copy()));
        }

        return _table.Find(key);
    }

    private string SectionOf(string key) => _section is "robot" or "scenario" or "garage" ? key : $"{_section}.{key}";

    // The key with the tables that it stands in, and the name of its part: "tyre.soft.static_friction".
    private string PathTo(string key)
    {
        string own = _section is "robot" or "scenario" or "garage" ? "" : _section;
        _path ??= _label is null ? own : $"{own}.{_label}";
        return _path.Length == 0 ? key : $"{_path}.{key}";
    }

    private KeyDefinition Definition(string key) =>
        KeyTable.Find(_section, key) ?? throw new ArgumentException($"no key {key} in {_section}", nameof(key));

    private T Put<T>(T record, KeyDefinition key, KeyRow<T> row)
    {
        double? value = key.Kind switch
        {
            KeyKind.Whole => Whole(key),
            KeyKind.Flag => Flag(key) is bool flag ? (flag ? 1.0 : 0.0) : null,
            _ => Number(key),
        };
        return value is double given ? row.Put(record, given) : record;
    }

    private void ReportMissing()
    {
        foreach (KeyDefinition d in KeyTable.In(_section))
        {
            if (d.IsRequired && Entry(d.Name) is null)
            {
                string where = PathTo("") is { Length: > 0 } path ? path.TrimEnd('.') : $"this {_section} file";
                string example = d.Kind is KeyKind.Table ? $"add [{SectionOf(d.Name)}]" : d.Kind is KeyKind.Tables ? $"add [[{SectionOf(d.Name)}]]" : d.Kind is KeyKind.Overrides ? $"add {d.Name} = {{ {d.Example} }}" : $"add {d.Name} = {d.Example}";
                Missing([d.Name], $"missing \"{d.Name}\" in {where}", $"{example} ({char.ToLowerInvariant(d.Meaning[0])}{d.Meaning[1..].TrimEnd('.')})");
            }
        }
    }
}
