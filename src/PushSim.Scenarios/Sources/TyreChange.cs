namespace PushSim.Scenarios.Sources;

/// <summary>A tyre put on some wheels of the robot that is read, as if its table stood in the robot's file.</summary>
/// <param name="Table">A [[tyre]] table with a name, as a robot file holds it.</param>
/// <param name="Wheels">Names of the wheels that get it.</param>
public sealed record TyreChange(string Table, IReadOnlyList<string> Wheels);
