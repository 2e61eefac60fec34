using System.Reflection;
using System.Text;
using PushSim.Scenarios.Keys;

namespace PushSim.Cli;

/// <summary>
/// The starter files of `pushsim new`: one robot, and a scenario per kind. A new file Templates/scenario-NAME.toml is a new kind; nothing else
/// needs to know it.
/// </summary>
internal static class StarterFiles
{
    public const string DefaultKind = "launch";
    public const string RobotName = "robot.toml";

    private const string Prefix = "Templates/scenario-";
    private const string Suffix = ".toml";

    // Kinds that give no command: the robot can only stand if its controllers hold it.
    private static readonly string[] Locked = ["drag-test", "hold"];

    /// <summary>All kinds, in alphabetical order.</summary>
    public static IReadOnlyList<string> Kinds { get; } =
        [.. Assembly.GetExecutingAssembly().GetManifestResourceNames()
            .Where(n => n.StartsWith(Prefix, StringComparison.Ordinal))
            .Select(n => n[Prefix.Length..^Suffix.Length])
            .Order(StringComparer.Ordinal)];

    /// <summary>The kind that a word means ("pull" is "pull-test"); null if none.</summary>
    public static string? Find(string word) => Kinds.FirstOrDefault(k => k == word || k == word + "-test");

    /// <summary>Name and text of each file of a kind, the scenario first.</summary>
    public static IReadOnlyList<(string Name, string Text)> Of(string kind)
    {
        string robot = Read("Templates/" + RobotName);
        if (Locked.Contains(kind))
        {
            robot = robot.Replace("zero_command = \"brake\"              # or \"coast\", or \"locked\"", "zero_command = \"locked\"             # or \"coast\", or \"brake\"", StringComparison.Ordinal)
                .Replace("zero_command = \"brake\"", "zero_command = \"locked\"", StringComparison.Ordinal);
        }

        return
        [
            (kind + Suffix, Read(Prefix + kind + Suffix)),
            (RobotName, robot),
            .. Enum.GetValues<FileKind>().Select(f => (JsonSchema.FileName(f), JsonSchema.Shipped(f))),
        ];
    }

    private static string Read(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource) ?? throw new InvalidOperationException($"the program lacks {resource}");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
