using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Drawing;

/// <summary>Writes the defaults of keys with a class tolerance into trees that leave them out, so that they too can be drawn.</summary>
internal static class Missing
{
    private static readonly (string Owner, string Table, string Key, double Value)[] Defaults =
    [
        ("", "shove", "offset", 0.0), ("", "manoeuvre", "heading", 0.0), ("", "opponent", "heading", 0.0),
        ("", "manoeuvre", "reaction_delay", 0.0), ("", "opponent", "reaction_delay", 0.0), ("", "floor", "dust", 0.0),
        ("robot", "battery", "charge", 1.0), ("opponent", "battery", "charge", 1.0),
    ];

    private static readonly Dictionary<string, string> Units = new() { ["offset"] = " m", ["heading"] = " rad", ["reaction_delay"] = " s", ["dust"] = "", ["charge"] = "" };

    public static void Add(SceneTrees trees, IReadOnlySet<string> classed, bool hasOpponent)
    {
        foreach ((string owner, string table, string key, double value) in Defaults)
        {
            TomlTable? tree = owner switch { "robot" => trees.Robot, "opponent" => trees.Opponent, _ => trees.Scenario };
            bool isOfShove = table is "shove" or "opponent";
            if (tree is null || !classed.Contains(owner) || (isOfShove && !hasOpponent))
            {
                continue;
            }

            if (tree.Find(table)?.Value is not TomlTable inner)
            {
                if (table == "battery")
                {
                    continue;
                }

                inner = new TomlTable(tree.Place, isExplicit: true);
                tree.Add(new TomlEntry(table, tree.Place, inner));
            }

            if (inner.Find(key) is null)
            {
                TomlNode node = Units[key].Length == 0 ? new TomlNumber(inner.Place, value, isWhole: false) : new TomlText(inner.Place, $"{value:0}{Units[key]}");
                inner.Add(new TomlEntry(key, inner.Place, node));
            }
        }
    }
}
