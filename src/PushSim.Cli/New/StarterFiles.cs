using System.Reflection;
using System.Text.RegularExpressions;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Starters;

namespace PushSim.Cli.New;

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

    // A robot on one axle rears up on a hook that others hardly feel [1].
    private const double LowHook = 0.6;

    /// <summary>The kind that a word means ("pull" is "pull-test"); null if none.</summary>
    public static string? Find(string word) => Kinds.FirstOrDefault(k => k == word || k == word + "-test");

    /// <summary>Name and text of each file of a kind, the scenario first.</summary>
    /// <param name="kind">One of <see cref="Kinds"/>.</param>
    /// <param name="design">The robot; null for the plain one.</param>
    public static IReadOnlyList<(string Name, string Text)> Of(string kind, StarterDesign? design)
    {
        bool isLocked = Locked.Contains(kind);
        string robot = design is null ? Read("Templates/" + RobotName) : new StarterRobot(design, isLocked).Text();
        if (isLocked && design is null)
        {
            robot = robot.Replace("zero_command = \"brake\"              # or \"coast\", or \"locked\"", "zero_command = \"locked\"             # or \"coast\", or \"brake\"", StringComparison.Ordinal)
                .Replace("zero_command = \"brake\"", "zero_command = \"locked\"", StringComparison.Ordinal);
        }

        return
        [
            (kind + Suffix, Scaled(Read(Prefix + kind + Suffix), design)),
            (RobotName, robot),
            .. new[] { FileKind.Robot, FileKind.Scenario }.Select(f => (JsonSchema.FileName(f), JsonSchema.Shipped(f))),
        ];
    }

    // what lies on or before the robot, and the opponent's mass, go with its size
    private static string Scaled(string scenario, StarterDesign? design) => design is null ? scenario : Regex.Replace(
        scenario,
        """(?m)^(?:hook|anchor|x1|x2|"chassis\.mass").*$""",
        line => Regex.Replace(line.Value, @"(height = )?""(-?\d+) (mm|g)""", m => Sized(m, design)));

    private static string Sized(Match quantity, StarterDesign design)
    {
        (string key, string unit) = (quantity.Groups[1].Value, quantity.Groups[3].Value);
        double factor = unit == "g" ? design.Mass / StarterDesign.PlainMass : design.Scale * (key.Length > 0 && design.Wheels == 2 ? LowHook : 1.0);
        return string.Create(CultureInfo.InvariantCulture, $"{key}\"{double.Parse(quantity.Groups[2].Value, CultureInfo.InvariantCulture) * factor:0} {unit}\"");
    }

    private static string Read(string resource)
    {
        using Stream stream = Assembly.GetExecutingAssembly().GetManifestResourceStream(resource) ?? throw new InvalidOperationException($"the program lacks {resource}");
        using var reader = new StreamReader(stream, Encoding.UTF8);
        return reader.ReadToEnd();
    }
}
