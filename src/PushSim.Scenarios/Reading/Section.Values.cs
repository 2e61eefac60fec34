using PushSim.Analysis.Chance;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Reading;

/// <content>Values of a table: numbers, texts, flags and choices.</content>
internal sealed partial class Section
{
    /// <summary>A number in SI; null if it is not there, NaN if it is wrong.</summary>
    public double? Number(string key) => Number(Definition(key));

    /// <summary>A number in SI that was read before; NaN if it was not, or if it is wrong.</summary>
    public double Known(string key) => Entry(key)?.Value.Known ?? double.NaN;

    /// <summary>How far a number may be off in SI, and whether the file states that: its tolerance, else half a unit of the last digit written; null if it is not there or wrong.</summary>
    public (double HalfWidth, bool IsStated)? Doubt(string key)
    {
        string text = Entry(key)?.Value switch { TomlText t => t.Value, TomlNumber n => PlainNumber.Exact(n.Value), _ => "" };
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

    // A value that was read before: drawn, or as it was then.
    private double Again(TomlNode node) => node.Slot >= 0 ? _context.Drawn![node.Slot] : node.Known;

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
                Note(path, n.Place, PlainNumber.Exact(n.Value), n.Value);
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
}
