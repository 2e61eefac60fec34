using System.Globalization;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>Puts the values of <see cref="ReadOptions.Set"/> in place of those of the files.</summary>
internal static class SetValues
{
    private const string Name = "command line";

    /// <summary>Puts those whose path begins with a table of a scenario.</summary>
    public static void PutIntoScenario(ReadContext context, TomlTable tree)
    {
        foreach ((string path, string value) in context.Options.Set.Where(s => IsOfScenario(s.Path)))
        {
            string[] parts = path.Split('.');
            TomlEntry entry = Entry(path, parts[^1], value);
            TomlTable table = tree;
            foreach (string part in parts[..^1])
            {
                if (table.Find(part)?.Value is not TomlTable inner)
                {
                    inner = new TomlTable(entry.KeyPlace, isExplicit: true);
                    table.Put(new TomlEntry(part, entry.KeyPlace, inner));
                }

                table = inner;
            }

            table.Put(entry);
        }
    }

    /// <summary>The others, as entries with their whole path as key.</summary>
    public static IReadOnlyList<TomlEntry> OfRobot(ReadContext context) =>
        [.. context.Options.Set.Where(s => !IsOfScenario(s.Path)).Select(s => Entry(s.Path, s.Path, s.Value))];

    private static bool IsOfScenario(string path) => KeyTable.Find("scenario", path.Split('.')[0]) is not null;

    private static TomlEntry Entry(string path, string key, string value)
    {
        var file = new SourceFile(Name, $"{path} = {value}");
        var keyPlace = new Place(file, 1, 1, path.Length);
        var place = new Place(file, 1, path.Length + 4, Math.Max(1, value.Length));
        TomlNode node = value is "true" or "false" ? new TomlFlag(place, value == "true")
            : double.TryParse(value, NumberStyles.Float, CultureInfo.InvariantCulture, out double number) && double.IsFinite(number) ? new TomlNumber(place, number, number == Math.Floor(number))
            : new TomlText(place, value);
        return new TomlEntry(key, keyPlace, node);
    }
}
