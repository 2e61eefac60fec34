using System.Text;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Shelf;

/// <summary>One kind of parts of the shelf, from a file beside this one.</summary>
public sealed class PartShelf
{
    private readonly Lazy<IReadOnlyList<ShelfPart>> _parts;

    private PartShelf(string section, string file, string list, string one, string many)
    {
        (Section, File, One, Many) = (section, file, one, many);
        _parts = new Lazy<IReadOnlyList<ShelfPart>>(() => Load(list));
    }

    /// <summary>Tyre materials.</summary>
    public static PartShelf Tyres { get; } = new("tyre", "tyres", "material", "tyre material", "tyre materials");

    /// <summary>Motors with or without gears.</summary>
    public static PartShelf Motors { get; } = new("motor", "motors", "part", "motor", "motors");

    /// <summary>Motor controllers.</summary>
    public static PartShelf Controllers { get; } = new("controller", "controllers", "part", "controller", "controllers");

    /// <summary>Lithium cells, each as if it had 1 Ah.</summary>
    public static PartShelf Cells { get; } = new("battery", "cells", "part", "cell", "cells");

    /// <summary>Floors.</summary>
    public static PartShelf Floors { get; } = new("floor", "floors", "part", "floor", "floors");

    /// <summary>Every kind, in the order of lists.</summary>
    public static IReadOnlyList<PartShelf> All { get; } = [Tyres, Motors, Controllers, Cells, Floors];

    /// <summary>Table of a robot or scenario file that takes these parts, for example "motor".</summary>
    public string Section { get; }

    /// <summary>Name of the file that holds them, which is the kind's name in JSON too.</summary>
    public string File { get; }

    /// <summary>What one of them is called.</summary>
    public string One { get; }

    /// <summary>What several are called.</summary>
    public string Many { get; }

    /// <summary>How a file writes the table that takes them, for example "[[motor]]".</summary>
    public string Header => Section is "battery" or "floor" ? $"[{Section}]" : $"[[{Section}]]";

    /// <summary>The parts in the order of the file.</summary>
    public IReadOnlyList<ShelfPart> Parts => _parts.Value;

    /// <summary>The part of that name, alias or old name, in capitals or not; null if there is none.</summary>
    public ShelfPart? Find(string name) => Parts.FirstOrDefault(p => p.Names.Concat(p.OldNames).Contains(name, StringComparer.OrdinalIgnoreCase));

    /// <summary>Every key that some part gives.</summary>
    internal IEnumerable<string> Keys => Parts.SelectMany(p => p.Numbers).Select(n => n.Key);

    /// <summary>The name or alias nearest to a name that is not there, and all names.</summary>
    internal string Advice(string name) => NearestWord.Advice(name, Parts.SelectMany(p => p.Names)) + "on the shelf: " + string.Join("; ", Parts.Select(p => p.Name));

    /// <summary>A value of the shelf as the tree of a file holds it, put at a place of that file. A list keeps its places on the shelf.</summary>
    internal static TomlNode Node(KeyDefinition key, string text, Place place) => key.Kind switch
    {
        KeyKind.Whole => new TomlNumber(place, double.Parse(text, CultureInfo.InvariantCulture), isWhole: true),
        KeyKind.Curve => TomlTree.Parse(new Complaints(new ReadOptions()), new SourceFile("the shelf", "v = " + text))?.Find("v")?.Value
            ?? throw new InvalidOperationException($"the shelf's {key.Name} cannot be read"),
        _ => new TomlText(place, text) { IsOfShelf = true },
    };

    private List<ShelfPart> Load(string list)
    {
        using Stream stream = typeof(PartShelf).Assembly.GetManifestResourceStream($"Shelf/{File}.toml") ?? throw new InvalidOperationException("the program lacks its shelf");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var complaints = new Complaints(new ReadOptions());
        TomlTable? tree = TomlTree.Parse(complaints, new SourceFile($"{File}.toml", reader.ReadToEnd()));
        return tree?.Find(list)?.Value is TomlArray parts && complaints.Errors == 0
            ? [.. parts.Items.Cast<TomlTable>().Select(Part)]
            : throw new InvalidOperationException($"the shelf of {File} cannot be read");
    }

    private ShelfPart Part(TomlTable table) => new(
        TextOf(table, "name"),
        TextOf(table, "about"),
        [.. table.Entries.Where(e => e.Value is TomlTable).Select(e => Number(e.Key, (TomlTable)e.Value))])
    {
        Aliases = TextsOf(table, "aliases"),
        OldNames = TextsOf(table, "old_names"),
    };

    private ShelfNumber Number(string key, TomlTable table)
    {
        KeyDefinition d = KeyTable.Find(Section, key) ?? throw new InvalidOperationException($"the shelf has an unknown key {key}");
        var number = new ShelfNumber(key, TextOf(table, "value"), TextOf(table, "source"));
        if (d.Kind != KeyKind.Quantity)
        {
            return number;
        }

        return Quantity.TryParse(number.Text, d.Dimension, out Quantity q, out string message, out string _)
            ? number with { Value = q.Value, Tolerance = q.Tolerance, Unit = UnitTable.SiName(d.Dimension) }
            : throw new InvalidOperationException($"the shelf's {key} {number.Text}: {message}");
    }

    private static IReadOnlyList<string> TextsOf(TomlTable table, string key) => table.Find(key)?.Value is TomlArray list ? [.. list.Items.Cast<TomlText>().Select(t => t.Value)] : [];

    private static string TextOf(TomlTable table, string key) =>
        table.Find(key)?.Value is TomlText t ? t.Value : throw new InvalidOperationException($"the shelf lacks {key} in line {table.Place.Line}");
}
