using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Scenes;

/// <summary>The [[variant]] tables of a scenario: names, and values that each sets anew.</summary>
internal static class Variants
{
    private const string Key = "variant";

    /// <summary>Their names, after complaints about what is wrong with them.</summary>
    public static IReadOnlyList<string> Names(Section root)
    {
        List<string> names = [];
        foreach (Section variant in root.Tables(Key))
        {
            if (PartNames.New(variant, Key, names.Contains) is string name)
            {
                names.Add(name);
            }

            if (variant.Raw("set") is { Entries.Count: 0 } empty)
            {
                variant.Context.Error(empty.Place, "this variant sets nothing", "for example set = { \"chassis.mass\" = \"1.2 kg\" }");
            }
        }

        return names;
    }

    /// <summary>The values of the variant that is read, with whole paths as keys; empty for none.</summary>
    public static IEnumerable<TomlEntry> Entries(ReadContext context, TomlTable scenario) => context.Options.Variant is not string name ? []
        : (scenario.Find(Key)?.Value as TomlArray)?.Items.OfType<TomlTable>().Where(t => t.Find("name")?.Value is TomlText n && n.Value.Trim() == name)
            .SelectMany(t => Overrides.Entries(t.Find("set")?.Value as TomlTable)) ?? [];

    /// <summary>Takes them out: they stand in the trees by now.</summary>
    public static void Drop(TomlTable scenario) => scenario.Remove(Key);
}
