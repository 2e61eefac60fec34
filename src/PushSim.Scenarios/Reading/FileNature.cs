using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Reading;

/// <summary>
/// Tells robot files, scenario files, parts of either and tables of readings apart, so that a file given in the wrong place draws one complaint instead of one for
/// each of its keys.
/// </summary>
internal static class FileNature
{
    // What marks a whole file of either kind.
    private static readonly string[] RobotMarks = ["chassis", "wheel"];
    private static readonly string[] SceneMarks = ["robot", "manoeuvre", "question"];

    /// <summary>Whether a tree is that of a robot file.</summary>
    public static bool IsRobot(TomlTable tree) => Has(tree, RobotMarks) && tree.Find("robot") is null;

    /// <summary>Whether a tree is that of a scenario file.</summary>
    public static bool IsScenario(TomlTable tree) => Has(tree, SceneMarks);

    /// <summary>True after a complaint that a file, given as scenario, is a robot file or a part of one.</summary>
    public static bool IsNoScenario(ReadContext context, TomlTable tree)
    {
        if (!IsRobot(tree))
        {
            return IsPart(context, tree);
        }

        string name = SourceFile.Clean(Path.GetFileName(tree.Place.File.Name));
        context.Error(tree.Place, "this is a robot file, not a scenario", $"write a scenario beside it that names it: robot = \"{name}\" (pushsim new writes one of any kind), or let it meet another robot: --against FILE (run, odds, sweep); check and limits take the robot file itself");
        return true;
    }

    /// <summary>True after a complaint that a file, given as robot, is a scenario or a part of a robot.</summary>
    public static bool IsNoRobot(ReadContext context, TomlTable tree)
    {
        if (!Has(tree, SceneMarks) || Has(tree, RobotMarks))
        {
            return IsPart(context, tree);
        }

        string help = tree.Find("robot")?.Value is TomlText robot ? $"name the robot's own file; this scenario's is \"{SourceFile.Clean(robot.Value, 60)}\"" : "name the robot's own file";
        context.Error(tree.Place, "this is a scenario, not a robot file", help);
        return true;
    }

    // A part to be included: keys of one kind of file, each of them known, and none that marks a whole file.
    private static bool IsPart(ReadContext context, TomlTable tree)
    {
        string[] keys = [.. tree.Entries.Select(e => e.Key).Where(k => k != "include")];
        if (keys.Length == 0 || keys.Contains("name") || Has(tree, RobotMarks) || Has(tree, SceneMarks))
        {
            return false;
        }

        bool isOfRobot = keys.All(k => KeyTable.Find("robot", k) is not null);
        if (!isOfRobot && !keys.All(k => KeyTable.Find("scenario", k) is not null))
        {
            return false;
        }

        string whole = isOfRobot ? "robot" : "scenario";
        string name = SourceFile.Clean(Path.GetFileName(tree.Place.File.Name));
        context.Error(tree.Place, $"this is only a part of a {whole} file ({string.Join(", ", keys)})", $"a {whole} file takes it in by include = [\"{name}\"]");
        return true;
    }

    private static bool Has(TomlTable tree, string[] keys) => Array.Exists(keys, k => tree.Find(k) is not null);
}
