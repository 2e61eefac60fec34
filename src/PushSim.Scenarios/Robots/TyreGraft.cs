using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Robots;

/// <summary>Puts a tyre's table into the tree of a robot file, in place of one of its name and of those that no wheel has any more; see <see cref="TyreChange"/>.</summary>
internal static class TyreGraft
{
    /// <summary>Changes the tree; complaints about the table go to the context.</summary>
    public static void Put(ReadContext context, TomlTable robot, TyreChange change)
    {
        if (TomlTree.Parse(context, new SourceFile("the fitted tyre", change.Table))?.Find("tyre")?.Value is not TomlArray { Items: [TomlTable tyre] } || robot.Find("tyre")?.Value is not TomlArray tyres)
        {
            return;
        }

        string name = PartNames.Label(tyre, 0);
        TomlTable[] wheels = [.. robot.Find("wheel")?.Value is TomlArray list ? list.Items.OfType<TomlTable>() : []];
        for (int i = 0; i < wheels.Length; i++)
        {
            if (change.Wheels.Contains(PartNames.Label(wheels[i], i)))
            {
                wheels[i].Put(new TomlEntry("tyre", tyre.Place, new TomlText(tyre.Place, name)));
            }
        }

        var used = wheels.Select(w => (w.Find("tyre")?.Value as TomlText)?.Value.Trim()).ToHashSet(StringComparer.Ordinal);
        for (int i = tyres.Items.Count - 1; i >= 0; i--)
        {
            string own = tyres.Items[i] is TomlTable table ? PartNames.Label(table, i) : "";
            if (own == name || !used.Contains(own))
            {
                tyres.Items.RemoveAt(i);
                context.Overrides?.Forget($"tyre.{own}.");
            }
        }

        tyres.Items.Add(tyre);
    }
}
