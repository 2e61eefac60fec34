using System.Globalization;
using System.Text;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Shelf;

/// <summary>The generic tyre materials that come with the program, from tyres.toml beside this file.</summary>
public static class TyreShelf
{
    private static readonly Lazy<IReadOnlyList<ShelfPart>> s_all = new(Load);

    /// <summary>Every material, in the order of the shelf.</summary>
    public static IReadOnlyList<ShelfPart> All => s_all.Value;

    /// <summary>The material of that name; null if there is none.</summary>
    public static ShelfPart? Find(string name) => All.FirstOrDefault(m => string.Equals(m.Name, name, StringComparison.OrdinalIgnoreCase));

    /// <summary>The words nearest to a name that is not there, and all names.</summary>
    internal static string Advice(string name)
    {
        List<string> names = [.. All.Select(m => m.Name)];
        return Section.DidYouMean(name, names) + "on the shelf: " + string.Join("; ", names);
    }

    private static List<ShelfPart> Load()
    {
        using Stream stream = typeof(TyreShelf).Assembly.GetManifestResourceStream("Shelf/tyres.toml") ?? throw new InvalidOperationException("the program lacks its shelf");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        var context = new ReadContext(new ReadOptions());
        TomlTable? tree = TomlTree.Parse(context, new SourceFile("tyres.toml", reader.ReadToEnd()));
        return tree?.Find("material")?.Value is TomlArray list && context.Errors == 0
            ? [.. list.Items.Cast<TomlTable>().Select(Part)]
            : throw new InvalidOperationException("the shelf of tyres cannot be read");
    }

    private static ShelfPart Part(TomlTable table) => new(
        TextOf(table, "name"),
        TextOf(table, "about"),
        [.. table.Entries.Where(e => e.Key is not ("name" or "about")).Select(e => Number(e.Key, (TomlTable)e.Value))]);

    private static ShelfNumber Number(string key, TomlTable table)
    {
        KeyDefinition d = KeyTable.Find("tyre", key) ?? throw new InvalidOperationException($"the shelf has an unknown key {key}");
        var number = new ShelfNumber(key, TextOf(table, "value"), TextOf(table, "source"));
        if (d.Kind != KeyKind.Quantity)
        {
            return number;
        }

        return Quantity.TryParse(number.Text, d.Dimension, out Quantity q, out string message, out string _)
            ? number with { Value = q.Value, Tolerance = q.Tolerance, Unit = UnitTable.SiName(d.Dimension) }
            : throw new InvalidOperationException(string.Create(CultureInfo.InvariantCulture, $"the shelf's {key} {number.Text}: {message}"));
    }

    private static string TextOf(TomlTable table, string key) =>
        table.Find(key)?.Value is TomlText t ? t.Value : throw new InvalidOperationException($"the shelf lacks {key} in line {table.Place.Line}");
}
