using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Drawing;

/// <summary>Writes the defaults of keys with a class tolerance into trees that leave them out, so that they too can be drawn.</summary>
internal static class ClassDefaults
{
    // The defaults in SI; without a unit a pure number.
    private static readonly (string Owner, string Table, string Key, double Value, string Unit)[] Defaults =
    [
        ("", "shove", "offset", 0.0, "m"), ("", "manoeuvre", "heading", 0.0, "rad"), ("", "opponent", "heading", 0.0, "rad"),
        ("", "manoeuvre", "reaction_delay", 0.0, "s"), ("", "opponent", "reaction_delay", 0.0, "s"), ("", "floor", "dust", 0.0, ""),
        ("robot", "battery", "charge", 1.0, ""), ("opponent", "battery", "charge", 1.0, ""),
    ];

    /// <summary>Adds them to the trees.</summary>
    /// <param name="trees">The trees, changed in place.</param>
    /// <param name="classed">Owners whose files state no tolerance.</param>
    /// <param name="hasOpponent">Whether there is one.</param>
    public static void Add(SceneTrees trees, IReadOnlySet<string> classed, bool hasOpponent)
    {
        foreach ((string owner, string table, string key, double value, string unit) in Defaults)
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
                TomlNode node = unit.Length == 0 ? new TomlNumber(inner.Place, value, isWhole: false) : new TomlText(inner.Place, FormattableString.Invariant($"{value:0} {unit}"));
                inner.Add(new TomlEntry(key, inner.Place, node));
            }
        }
    }
}
