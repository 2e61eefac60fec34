using PushSim.Scenarios.Robots;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Drawing;

/// <summary>Gives each wheel a copy of its tyre, and each drive of its motors, where the block says that its parts have errors of their own.</summary>
internal static class PartCopies
{
    /// <summary>Adds the copies to a robot file's tree; nothing without a tree.</summary>
    public static void Add(TomlTable? robot)
    {
        if (robot is not null)
        {
            Add(robot, "tyre", name => Named(robot, "wheel").Where(w => (w.Table.Find("tyre")?.Value as TomlText)?.Value.Trim() == name).Select(w => w.Name));
            Add(robot, "motor", name => Named(robot, "drive").SelectMany(d => Motors(d.Table, d.Name, name)));
        }
    }

    private static void Add(TomlTable robot, string kind, Func<string, IEnumerable<string>> parts)
    {
        if (robot.Find(kind)?.Value is not TomlArray list)
        {
            return;
        }

        foreach ((TomlTable block, string name) in Named(robot, kind).ToArray())
        {
            double share = OwnShare(block);
            string[] users = share > 0.0 ? [.. parts(name)] : [];
            if (users.Length > 0)
            {
                block.IsReplaced = true;
                list.Items.AddRange(users.Select(u => block.AsPart(u, share)));
            }
        }
    }

    private static IEnumerable<string> Motors(TomlTable drive, string name, string motor) => drive.Find("motors")?.Value is TomlArray list
        ? list.Items.Select((m, i) => (Text: (m as TomlText)?.Value.Trim(), Index: i)).Where(m => m.Text == motor).Select(m => DriveReader.PartOfDrive(name, m.Index))
        : [];

    private static IEnumerable<(TomlTable Table, string Name)> Named(TomlTable robot, string kind) => robot.Find(kind)?.Value is TomlArray list
        ? list.Items.OfType<TomlTable>().Select(t => (t, (t.Find("name")?.Value as TomlText)?.Value.Trim() ?? ""))
        : [];

    private static double OwnShare(TomlTable block) => block.Find("own_share")?.Value switch
    {
        TomlNumber n => n.Value,
        TomlText t when Quantity.TryParse(t.Value, Dimension.Ratio, out Quantity q, out _, out _) => q.Value,
        _ => 0.0,
    };
}
