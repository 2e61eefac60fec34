using System.Runtime.CompilerServices;
using PushSim.Scenarios;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;

namespace PushSim.Tests.Bodies;

/// <summary>Scenarios of the folder of examples, some values set anew.</summary>
internal static class Shipped
{
    /// <summary>Names of all of them.</summary>
    public static IEnumerable<string> Names => Directory.GetFiles(Folder(), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal);

    /// <summary>One of them.</summary>
    /// <param name="name">Its file, without folder and ending.</param>
    /// <param name="set">Path and value of what is set anew.</param>
    public static ScenarioSettings Read(string name, params (string Path, string Value)[] set) =>
        ScenarioReader.Read(Path.Combine(Folder(), name + ".toml"), new ReadOptions { Set = set }).Scenario!;

    private static string Folder([CallerFilePath] string here = "") => Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "scenarios"));
}
