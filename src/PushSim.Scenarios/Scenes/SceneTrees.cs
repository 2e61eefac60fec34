using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Scenes;

/// <summary>A scenario's files as trees, kept so that they can be read again without parsing.</summary>
internal sealed class SceneTrees
{
    /// <summary>Path of the scenario file; robots are looked for from its folder.</summary>
    public required string Path { get; init; }

    /// <summary>Name of the scenario.</summary>
    public required string Name { get; init; }

    public required TomlTable Scenario { get; init; }

    /// <summary>The robot's file; null until it was loaded.</summary>
    public TomlTable? Robot { get; set; }

    /// <summary>The opponent's file; null until it was loaded, or without one.</summary>
    public TomlTable? Opponent { get; set; }

    /// <summary>Forgets which values are drawn.</summary>
    public void ClearSlots()
    {
        Clear(Scenario);
        Clear(Robot);
        Clear(Opponent);
    }

    private static void Clear(TomlNode? node)
    {
        switch (node)
        {
            case TomlTable t:
                t.Entries.ForEach(e => Clear(e.Value));
                break;
            case TomlArray a:
                a.Items.ForEach(Clear);
                break;
            case not null:
                node.Slot = -1;
                break;
        }
    }
}
