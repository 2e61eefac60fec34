namespace PushSim.Scenarios.Keys;

/// <summary>A key and the table that it stands in.</summary>
/// <param name="Section">The table.</param>
/// <param name="Key">The key.</param>
public sealed record KeyMatch(KeySection Section, KeyDefinition Key)
{
    /// <summary>Full name, for example "robot.tyre.body_stiffness".</summary>
    public string Path => Section.PathOf(Key);
}
