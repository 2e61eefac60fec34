using PushSim.Analysis.Chance;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

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

    /// <summary>True for a block whose parts stand beside it, each with an error of its own.</summary>
    public bool IsReplaced => _table.IsReplaced;

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

    /// <summary>A number in SI; null if it is not there, NaN if it is wrong.</summary>
    public double? Number(string key) => Number(Definition(key));

    /// <summary>A number in SI that was read before; NaN if it was not, or if it is wrong.</summary>
    public double Known(string key) => Entry(key)?.Value.Known ?? double.NaN;

    /// <summary>How far a number may be off in SI, and whether the file states that: its tolerance, else half a unit of the last digit written; null if it is not there or wrong.</summary>
    public (double HalfWidth, bool IsStated)? Doubt(string key)
    {
        string text = Entry(key)?.Value switch { TomlText t => t.Value, TomlNumber n => n.Value.ToString("R", CultureInfo.InvariantCulture), _ => "" };
        return !Units.Quantity.TryParse(text, Definition(key).Dimension, out Quantity q, out string _, out string _) ? null
            : q.IsExact || q.Tolerance > 0.0 ? (q.Tolerance, true) : (0.5 * q.LastDigit, false);
    }

    /// <summary>A required number in SI; NaN if it is missing (then already complained about) or wrong.</summary>
    public double Required(string key) => Number(key) ?? double.NaN;

    /// <summary>A number in SI; the default if it is not there, NaN if it is wrong.</summary>
    public double Or(string key, double byDefault) => Number(key) ?? byDefault;

    /// <summary>A whole number; the default if it is missing or wrong.</summary>
    public int Whole(string key, int byDefault) => Whole(Definition(key)) ?? byDefault;

    /// <summary>A text without blanks at its ends; null if it is missing, wrong or empty.</summary>
    public string? Text(string key)
    {
        if (_context.Drawn is not null)
        {
            return (Entry(key)?.Value as TomlText)?.Value.Trim();
        }

        KeyDefinition d = Definition(key);
        if (Entry(key) is not TomlEntry e)
        {
            return null;
        }

        if (e.Value is not TomlText t)
        {
            _context.Error(e.Value.Place, $"\"{key}\" takes a text, not {e.Value.Words}", $"for example {key} = {d.Example}");
            return null;
        }

        if (t.Value.Trim().Length == 0)
        {
            _context.Error(t.Place, $"\"{key}\" is empty", $"for example {key} = {d.Example}");
            return null;
        }

        string text = SourceFile.Clean(t.Value.Trim(), _context.Options.MaxText);
        Note(PathTo(key), t.Place, text);
        return text;
    }

    /// <summary>True or false; the default if it is missing or wrong.</summary>
    public bool Flag(string key, bool byDefault) => Flag(Definition(key)) ?? byDefault;

    /// <summary>Place of the word in the key's list of choices; -1 if missing or wrong.</summary>
    public int Choice(string key)
    {
        KeyDefinition d = Definition(key);
        if (Entry(key) is not TomlEntry e)
        {
            return -1;
        }

        string all = "allowed: " + string.Join(", ", d.Choices);
        if (e.Value is not TomlText t)
        {
            _context.Error(e.Value.Place, $"\"{key}\" takes a word in quotes, not {e.Value.Words}", all);
            return -1;
        }

        int index = d.Choices.ToList().IndexOf(t.Value);
        if (index < 0)
        {
            _context.Error(t.Place, $"\"{SourceFile.Clean(t.Value, 60)}\" is no {key.Replace('_', ' ')}", NearestWord.Advice(t.Value, d.Choices) + all);
            return -1;
        }

        Note(PathTo(key), t.Place, t.Value);
        return index;
    }

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

    // A value that was read before: drawn, or as it was then.
    private double Again(TomlNode node) => node.Slot >= 0 ? _context.Drawn![node.Slot] : node.Known;

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

    private double? Number(KeyDefinition d) => Entry(d.Name) is not TomlEntry e ? null : _context.Drawn is not null ? Again(e.Value) : Quantity(d, e.Value, PathTo(d.Name));

    private int? Whole(KeyDefinition d)
    {
        if (Entry(d.Name) is not TomlEntry e)
        {
            return null;
        }

        if (_context.Drawn is not null)
        {
            return (int)Again(e.Value);
        }

        double? count = e.Value is TomlNumber { IsWhole: true } n ? n.Value : e.Value is TomlText t ? Counting.Read(d, t.Value) : null;
        if (count is null)
        {
            _context.Error(e.Value.Place, $"\"{d.Name}\" takes a whole number, not {(e.Value is TomlNumber ? "one with decimals" : e.Value.Words)}", $"for example {d.Name} = {d.Example}");
            return null;
        }

        Note(PathTo(d.Name), e.Value.Place, count.Value.ToString(CultureInfo.InvariantCulture), count);
        e.Value.Known = Math.Min(count.Value, int.MaxValue);
        return AllowedRange.Check(_context, d, count.Value, e.Value.Place) ? (int)Math.Min(count.Value, int.MaxValue) : null;
    }

    private bool? Flag(KeyDefinition d)
    {
        if (Entry(d.Name) is not TomlEntry e)
        {
            return null;
        }

        if (e.Value is not TomlFlag f)
        {
            _context.Error(e.Value.Place, $"\"{d.Name}\" takes true or false, not {e.Value.Words}", "write true or false without quotes");
            return null;
        }

        Note(PathTo(d.Name), f.Place, f.Value ? "true" : "false");
        return f.Value;
    }

    private double Quantity(KeyDefinition d, TomlNode node, string path)
    {
        if (_context.Drawn is not null)
        {
            return Again(node);
        }

        Quantity q;
        switch (node)
        {
            case TomlNumber n when d.Dimension != Dimension.Ratio:
                _context.Error(n.Place, $"\"{d.Name}\" needs a unit", $"{(n.Place.File.Name == ReadOptions.CommandLine ? "write it behind each number" : "write it in quotes with one of")}: {string.Join(", ", UnitTable.Names(d.Dimension))}");
                return double.NaN;
            case TomlNumber n when !double.IsFinite(n.Value):
                _context.Error(n.Place, $"\"{d.Name}\" is not finite", "");
                return double.NaN;
            case TomlNumber n:
                q = new Quantity(n.Value, 0.0);
                Note(path, n.Place, n.Value.ToString("R", CultureInfo.InvariantCulture), n.Value);
                break;
            case TomlText t:
                if (!Units.Quantity.TryParse(t.Value, d.Dimension, out q, out string message, out string help))
                {
                    _context.Error(t.Place, $"\"{d.Name}\": {SourceFile.Clean(message)}", help);
                    return double.NaN;
                }

                Note(path, t.Place, SourceFile.Clean(t.Value), q.Value, UnitTable.SiName(d.Dimension), q.Tolerance, q.Spread);
                break;
            default:
                _context.Error(node.Place, $"\"{d.Name}\" takes {UnitTable.Words(d.Dimension)}, not {node.Words}", d.Example.Length > 0 ? $"for example {d.Name} = {d.Example}" : "");
                return double.NaN;
        }

        if (!AllowedRange.Check(_context, d, q.Value, node.Place, node is TomlText written && written.Value.Contains('%', StringComparison.Ordinal)))
        {
            return double.NaN;
        }

        node.Known = q.Value;
        _context.Recorder?.Add(_context.Owner, _table, d, path, node, q);
        return q.Value;
    }

    // A row of the inputs used, of a value that was read.
    private void Note(string path, Place place, string text, double? value = null, string unit = "", double tolerance = 0.0, DrawShape spread = DrawShape.Normal) =>
        _context.Inputs.Add(new InputRow(place.File.Name, place.Line, place.Column, path, text, value, unit, tolerance) { Spread = spread, Owner = _context.Owner });

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
