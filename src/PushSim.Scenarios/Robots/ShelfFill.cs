using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Robots;

/// <summary>
/// shelf = "..." in a [[tyre]], [[motor]], [[controller]], [battery] or [floor]: the part's values are put where the file gives none of its own. A value of
/// the file also displaces those of the shelf that say the same thing in another way.
/// </summary>
internal static class ShelfFill
{
    /// <summary>The key that names a part of the shelf.</summary>
    public const string Key = KeyTable.Shelf;

    private const double AmpereHour = 3600.0;

    // Of each row, what stands left in the file makes what stands right on the shelf moot.
    private static readonly (string Given, string[] Moot)[] Displaced =
    [
        ("shore_a", ["modulus", "solid_shore_a"]),
        ("solid_shore_a", ["modulus", "shore_a"]),
        ("modulus", ["shore_a", "solid_shore_a"]),
        ("rebound_height", ["rebound"]),
        ("friction_table", ["load_exponent"]),
        ("torque_constant", ["speed_constant"]),
        ("speed_constant", ["torque_constant"]),
        ("no_load_speed", ["speed_constant", "torque_constant"]),
        ("stall_torque", ["speed_constant", "torque_constant"]),
        ("output_speed", ["speed_constant", "torque_constant"]),
        ("output_stall_torque", ["speed_constant", "torque_constant"]),
        ("stall_current", ["resistance"]),
        ("locked_rotor_current", ["resistance"]),
        ("friction_torque", ["no_load_current"]),
        ("no_load_current", ["friction_torque", "viscous_friction"]),
        ("gear_efficiency", ["gear_stages", "gear_kind"]),
        ("gear_stages", ["gear_efficiency"]),
        ("first_load_current", ["resistance", "slow_resistance"]),
        ("resistance", ["slow_resistance"]),
    ];

    /// <summary>Fills the tyres, motors, controllers and battery of a robot file's tree; a tyre that is put on it and another material of its tyres first, if they are asked for.</summary>
    public static void FillRobot(ReadContext context, TomlTable robot)
    {
        if (context.Tyre is TyreChange change)
        {
            TyreGraft.Put(context, robot, change);
        }

        GarageTyres.Add(context, robot);

        foreach (PartShelf shelf in new[] { PartShelf.Tyres, PartShelf.Motors, PartShelf.Controllers })
        {
            List<TomlNode> tables = robot.Find(shelf.Section)?.Value is TomlArray list ? list.Items : [];
            for (int i = 0; i < tables.Count; i++)
            {
                if (tables[i] is not TomlTable table)
                {
                    continue;
                }

                string label = PartNames.Label(table, i);
                if (shelf == PartShelf.Tyres && context.TyreMaterial is string material)
                {
                    tables[i] = table = TyreSwap.Of(context, table, label, material);
                }

                Fill(context, shelf, table, $"{shelf.Section}.{label}", $"{shelf.Section} \"{label}\"");
            }
        }

        FillOne(context, PartShelf.Cells, robot);
    }

    /// <summary>Fills one tyre, as if it stood in a robot file.</summary>
    public static void FillTyre(ReadContext context, TomlTable tyre) => Fill(context, PartShelf.Tyres, tyre, $"{PartShelf.Tyres.Section}.{PartNames.Label(tyre, 0)}", PartShelf.Tyres.One);

    /// <summary>Fills the floor of a scenario's tree.</summary>
    public static void FillScenario(ReadContext context, TomlTable scenario) => FillOne(context, PartShelf.Floors, scenario);

    private static void FillOne(ReadContext context, PartShelf shelf, TomlTable file)
    {
        if (file.Find(shelf.Section) is null && context.Overrides?.Find($"{shelf.Section}.{Key}") is TomlEntry set)
        {
            file.Add(new TomlEntry(shelf.Section, set.KeyPlace, new TomlTable(set.KeyPlace, isExplicit: true)));
        }

        if (file.Find(shelf.Section)?.Value is TomlTable table)
        {
            Fill(context, shelf, table, shelf.Section, shelf.Section);
        }
    }

    // The path is what overrides call the table, the words are what notes call it.
    private static void Fill(ReadContext context, PartShelf shelf, TomlTable table, string path, string words)
    {
        if (Entry(Key) is not { Value: TomlText { Value: var wanted } text })
        {
            // missing, or of another kind, which is complained about where the table is read
            return;
        }

        // a floor of the garage goes before one of the shelf
        if (shelf == PartShelf.Floors && context.OfGarage("floor").FirstOrDefault(f => f.Find("name")?.Value is TomlText n && n.Value.Trim().Equals(wanted.Trim(), StringComparison.OrdinalIgnoreCase)) is TomlTable own)
        {
            table.Remove(Key);
            foreach (TomlEntry e in own.Entries.Where(e => Entry(e.Key) is null))
            {
                table.Add(e);
            }

            context.Notes.Add($"{words}: \"{SourceFile.Clean(wanted, 60)}\" of the garage");
            if (Entry(Key) is { Value: TomlText inner } && inner.Value != wanted)
            {
                Fill(context, shelf, table, path, words);
            }

            return;
        }

        if (shelf.Find(wanted) is not ShelfPart part)
        {
            context.Error(text.Place, $"there is no \"{SourceFile.Clean(wanted, 60)}\" on the shelf of {shelf.File}", shelf.Advice(wanted));
            table.Meant.UnionWith(shelf.Keys);
            return;
        }

        HashSet<string> moot = [.. Displaced.Where(d => KeyTable.Find(shelf.Section, d.Given) is not null && Entry(d.Given) is not null).SelectMany(d => d.Moot)];
        List<string> used = [];
        foreach (ShelfNumber n in part.Numbers.Where(n => !moot.Contains(n.Key) && Entry(n.Key) is null))
        {
            bool isCell = shelf == PartShelf.Cells && CellScale.Of(n.Key) is not null;
            if ((isCell ? OfPack(n, Entry("cells"), Entry("capacity")) : n.Text) is not string value)
            {
                // no cells or no capacity: complained about where the table is read
                table.Meant.Add(n.Key);
                continue;
            }

            table.Add(new TomlEntry(n.Key, text.Place, PartShelf.Node(KeyTable.Find(shelf.Section, n.Key)!, value, text.Place)));
            used.Add($"{n.Key} {value}");
            string scaled = isCell ? $" (a cell of 1 A h has {n.Text})" : "";
            context.Derived.Add(new DerivedValue($"{words}: {n.Key} {value}, from the shelf's \"{part.Name}\"{scaled}: {n.Source}", n.Error));
        }

        context.Notes.Add($"{words}: from the shelf's \"{part.Name}\": {string.Join(", ", used)}");

        TomlEntry? Entry(string key) => context.Overrides?.Find($"{path}.{key}") ?? table.Find(key);
    }

    // A value of one cell of 1 A h for the pack; null if cells or capacity cannot be read
    private static string? OfPack(ShelfNumber cell, TomlEntry? cells, TomlEntry? capacity)
    {
        double? count = cells?.Value switch
        {
            TomlNumber n => n.Value,
            TomlText t => Counting.Read(KeyTable.Find("battery", "cells")!, t.Value),
            _ => null,
        };
        if (count is not > 0.0 || capacity?.Value is not TomlText q || !Quantity.TryParse(q.Value, Dimension.Charge, out Quantity charge, out string _, out string _) || !(charge.Value > 0.0))
        {
            return null;
        }

        (double inUnit, string unit, Func<double, double, double> of) = CellScale.Of(cell.Key)!.Value;
        double scale = of(count.Value, charge.Value / AmpereHour);
        return !double.IsFinite(scale) ? null : FormattableString.Invariant($"{inUnit * scale * cell.Value!.Value:G4} {unit} ± {inUnit * scale * cell.Tolerance:G3}");
    }
}
