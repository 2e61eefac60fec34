using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Reading;

/// <summary>Notes every value that has a tolerance while files are read, its own or that usual for its kind, and gives its node a slot.</summary>
/// <param name="isOfAll">Whether values without a tolerance are noted too, so that they can be set anew.</param>
internal sealed class DrawRecorder(bool isOfAll = false)
{
    private readonly List<TolerancedValue> _values = [];

    /// <summary>The values by slot.</summary>
    public IReadOnlyList<TolerancedValue> Values => _values;

    /// <summary>Notes a value that was read, if it has a tolerance.</summary>
    /// <param name="owner">Whose it is: "" for the scenario, "robot" or "opponent".</param>
    /// <param name="table">The table that it stands in.</param>
    /// <param name="key">Its key.</param>
    /// <param name="path">Its path in its file.</param>
    /// <param name="node">Its node, which gets the slot.</param>
    /// <param name="q">The value and its tolerance, in SI.</param>
    public void Add(string owner, TomlTable table, KeyDefinition key, string path, TomlNode node, Quantity q)
    {
        if (table.IsReplaced || node.Slot >= 0)
        {
            return;
        }

        ClassTolerance? rule = q.Tolerance > 0.0 || q.IsExact ? null : ClassTolerance.Find(key.Section, key.Name);
        double tolerance = rule?.HalfWidth(q.Value) ?? q.Tolerance;
        if ((tolerance <= 0.0 && !isOfAll) || key.Name == "own_share")
        {
            return;
        }

        node.Slot = _values.Count;
        _values.Add(new TolerancedValue
        {
            Owner = owner,
            Key = owner == "opponent" ? $"opponent.{path}" : path,
            Part = table.Part,
            OwnShare = table.OwnShare,
            Shelf = (table.Find(KeyTable.Shelf)?.Value as TomlText)?.Value.Trim() ?? "",
            Middle = q.Value,
            Tolerance = tolerance,
            Spread = rule?.Spread ?? q.Spread,
            Unit = key.Dimension == Dimension.Ratio ? "" : UnitTable.SiName(key.Dimension),
            Least = key.Min,
            Most = key.Max,
            IsOfClass = rule is not null || node is TomlText { IsOfClass: true },
            IsShare = rule is { Share: > 0.0 },
            IsOfShelf = rule is null && node is TomlText { IsOfShelf: true },
        });
    }
}
