using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Robots;

/// <summary>Puts the tyres of the garage that a robot's wheels name into the robot's tree, as if their tables stood in its file; and the diameter and mass that a tyre gives its wheels.</summary>
internal static class GarageTyres
{
    /// <summary>Changes the tree.</summary>
    public static void Add(ReadContext context, TomlTable robot)
    {
        if (robot.Find("wheel")?.Value is not TomlArray wheels)
        {
            return;
        }

        foreach ((TomlTable wheel, string name) in wheels.Items.OfType<TomlTable>().Select((w, i) => (w, TyreOf(context, w, i))).Where(w => w.Item2.Length > 0).ToArray())
        {
            TomlTable? tyre = Find(robot, name);
            if (tyre is null && context.OfGarage("tyre").FirstOrDefault(t => NameOf(t) == name) is TomlTable own)
            {
                tyre = own;
                if (robot.Find("tyre")?.Value is not TomlArray list)
                {
                    list = new TomlArray(own.Place, isOfHeaders: true);
                    robot.Put(new TomlEntry("tyre", own.Place, list));
                }

                list.Items.Add(own);
                context.Notes.Add($"tyre \"{SourceFile.Clean(name, 60)}\" of the garage");
            }

            if (tyre is not null)
            {
                Give(tyre, "diameter", wheel, "diameter");
                Give(tyre, "wheel_mass", wheel, "mass");
            }
        }
    }

    private static void Give(TomlTable tyre, string key, TomlTable wheel, string to)
    {
        if (tyre.Find(key) is { Value: TomlText text } && wheel.Find(to) is null && !(to == "mass" && wheel.Find("inertia") is not null))
        {
            wheel.Add(new TomlEntry(to, text.Place, new TomlText(text.Place, text.Value)));
        }
    }

    // what is set anew counts
    private static string TyreOf(ReadContext context, TomlTable wheel, int index) =>
        ((context.Overrides?.Find($"wheel.{PartNames.Label(wheel, index)}.tyre") ?? wheel.Find("tyre"))?.Value as TomlText)?.Value.Trim() ?? "";

    private static TomlTable? Find(TomlTable robot, string name) => robot.Find("tyre")?.Value is TomlArray list ? list.Items.OfType<TomlTable>().FirstOrDefault(t => NameOf(t) == name) : null;

    private static string NameOf(TomlTable table) => (table.Find("name")?.Value as TomlText)?.Value.Trim() ?? "";
}
