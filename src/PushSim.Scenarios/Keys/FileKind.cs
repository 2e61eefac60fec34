namespace PushSim.Scenarios.Keys;

/// <summary>The kinds of file that a person writes.</summary>
public enum FileKind
{
    /// <summary>A robot file.</summary>
    Robot,

    /// <summary>A scenario file.</summary>
    Scenario,

    /// <summary>The file that makes a folder a garage.</summary>
    Garage,
}
