using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Drawing;

/// <summary>Writes the defaults of keys with a class tolerance into trees that leave them out, so that they too can be drawn.</summary>
internal static class ClassDefaults
{
    /// <summary>Adds them to the trees.</summary>
    public static void Add(SceneTrees trees, bool hasOpponent)
    {
        foreach ((string owner, TomlTable? tree) in new[] { ("", trees.Scenario), ("robot", trees.Robot), ("opponent", trees.Opponent) })
        {
            foreach (ClassTolerance rule in tree is null ? [] : ClassTolerance.All)
            {
                KeyDefinition key = KeyTable.Find(rule.Section, rule.Key)!;
                bool isHere = KeyTable.Find("robot", rule.Section) is null == (owner.Length == 0) && (hasOpponent || rule.Section is not ("shove" or "opponent" or "opponent.driver" or "contact"));
                if (isHere && key.OwnDefault is double value && !double.IsNaN(value) && TableOf(tree!, rule.Section) is TomlTable inner && inner.Find(rule.Key) is null)
                {
                    (double middle, double half) = rule.Unstated(value);
                    string unit = UnitTable.SiName(key.Dimension);
                    string text = FormattableString.Invariant($"{middle:R} {unit} ± {half:R} {unit} {rule.Spread.ToString().ToLowerInvariant()}");
                    inner.Add(new TomlEntry(rule.Key, inner.Place, new TomlText(inner.Place, text) { IsOfClass = true }));
                }
            }
        }
    }

    // A table of a file, added where it is missing; null for a battery that is not there.
    private static TomlTable? TableOf(TomlTable tree, string name)
    {
        if (name.Split('.') is [var outer, var rest])
        {
            return TableOf(tree, outer) is TomlTable table ? TableOf(table, rest) : null;
        }

        if (tree.Find(name) is null && name != "battery")
        {
            tree.Add(new TomlEntry(name, tree.Place, new TomlTable(tree.Place, isExplicit: true)));
        }

        return tree.Find(name)?.Value as TomlTable;
    }
}
