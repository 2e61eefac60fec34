using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Shelf;

/// <summary>
/// shelf = "foamed elastomer, soft" in a [[tyre]]: the material's values are put where the tyre gives none of its own. A value of the file also
/// displaces those of the shelf that say the same thing in another way.
/// </summary>
internal static class ShelfFill
{
    private const string Key = "shelf";

    // Assumed where a robot's own tyres have no cover to copy [as a file writes it].
    private const string UsualWidth = "20 mm";
    private const string UsualThickness = "6 mm";

    // What a swap of material leaves as it is: sizes and places, not the stuff.
    private static readonly string[] Sizes = ["name", "width", "tread_thickness", "hub_stiffness", "reference_load"];

    // Of each row, what stands left in the file makes what stands right on the shelf moot.
    private static readonly (string Given, string[] Moot)[] Displaced =
    [
        ("shore_a", ["modulus", "solid_shore_a"]),
        ("solid_shore_a", ["modulus", "shore_a"]),
        ("modulus", ["shore_a", "solid_shore_a"]),
        ("rebound_height", ["rebound"]),
        ("friction_table", ["load_exponent"]),
    ];

    /// <summary>Fills every tyre of a robot file's tree that names a material.</summary>
    public static void Fill(ReadContext context, TomlTable robot)
    {
        if (robot.Find("tyre")?.Value is not TomlArray list)
        {
            return;
        }

        for (int i = 0; i < list.Items.Count; i++)
        {
            if (list.Items[i] is TomlTable tyre)
            {
                string label = PartNames.Label(tyre, i);
                list.Items[i] = context.TyreMaterial is string material ? Swapped(context, tyre, label, material) : tyre;
                Fill(context, (TomlTable)list.Items[i], label);
            }
        }
    }

    private static void Fill(ReadContext context, TomlTable tyre, string label)
    {
        if ((context.Overrides?.Find($"tyre.{label}.{Key}") ?? tyre.Find(Key)) is not { Value: TomlText { Value: var wanted } text })
        {
            // missing, or of another kind, which is complained about where the table is read
            return;
        }

        if (PartShelf.Tyres.Find(wanted) is not ShelfPart part)
        {
            context.Error(text.Place, $"there is no \"{SourceFile.Clean(wanted, 60)}\" on the shelf of tyres", PartShelf.Tyres.Advice(wanted));
            tyre.Meant.UnionWith(PartShelf.Tyres.Keys);
            return;
        }

        HashSet<string> moot = [.. Displaced.Where(d => IsGiven(context, tyre, label, d.Given)).SelectMany(d => d.Moot)];
        List<ShelfNumber> used = [.. part.Numbers.Where(n => !moot.Contains(n.Key) && !IsGiven(context, tyre, label, n.Key))];
        foreach (ShelfNumber n in used)
        {
            tyre.Add(new TomlEntry(n.Key, text.Place, new TomlText(text.Place, n.Text) { IsOfShelf = true }));
            context.Derived.Add(new DerivedValue($"tyre \"{label}\": {n.Key} {n.Text}, from the shelf's \"{part.Name}\": {n.Source}", n.Error));
        }

        context.Notes.Add($"tyre \"{label}\": from the shelf's \"{part.Name}\": {string.Join(", ", used.Select(n => $"{n.Key} {n.Text}"))}");
    }

    private static bool IsGiven(ReadContext context, TomlTable tyre, string label, string key) =>
        tyre.Find(key) is not null || context.Overrides?.Find($"tyre.{label}.{key}") is not null;

    private static TomlTable Swapped(ReadContext context, TomlTable tyre, string label, string material)
    {
        var swapped = new TomlTable(tyre.Place, isExplicit: true);
        foreach (TomlEntry entry in tyre.Entries.Where(e => Sizes.Contains(e.Key)))
        {
            swapped.Add(entry);
        }

        swapped.Add(new TomlEntry(Key, tyre.Place, new TomlText(tyre.Place, material)));
        Assume("width", UsualWidth);
        Assume("tread_thickness", UsualThickness);
        return swapped;

        void Assume(string key, string value)
        {
            if (!IsGiven(context, swapped, label, key))
            {
                swapped.Add(new TomlEntry(key, tyre.Place, new TomlText(tyre.Place, value)));
                context.Notes.Add($"tyre \"{label}\": {key} {value} assumed, the file gives none");
            }
        }
    }
}
