using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Robots;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios;

/// <summary>
/// Reads scenario and robot files. Every mistake of a file is found in one go, with its place; a file is used only if it has
/// none. Numbers read the same whatever the country set in the system.
/// </summary>
public static class ScenarioReader
{
    /// <summary>Reads a scenario file and the robot files that it names. What is wrong with a file is complained about, never thrown.</summary>
    /// <param name="path">The scenario file.</param>
    /// <param name="options">Limits of reading, and what is set anew; null: the defaults.</param>
    /// <returns>The settings in SI, or the complaints.</returns>
    public static ReadResult Read(string path, ReadOptions? options = null) => ReadFile(path, options, mayBeRobot: false);

    /// <summary>Whether a file is a scenario, by its keys alone; false too where it cannot be read.</summary>
    public static bool IsScenario(string path, string? garage = null) => NamedTrees.Of(new ReadContext(new ReadOptions { Garage = garage }), path) is TomlTable tree && FileNature.IsScenario(tree) && !FileNature.IsRobot(tree);

    /// <summary>Reads a file that may be either kind: it is taken for a robot file if it has a chassis or wheels and names no robot.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">Limits of reading, and what is set anew; null: the defaults.</param>
    /// <returns>The settings in SI, or the complaints; without a scenario if it is a robot file.</returns>
    public static ReadResult Check(string path, ReadOptions? options = null) => ReadFile(path, options, mayBeRobot: true);

    // A robot without a scenario, with what the caller sets anew in it
    private static RobotSettings? Robot(ReadContext context, TomlTable tree)
    {
        var set = Overrides.Of(SetValues.Nodes(context.Options.Set).Select(s => new TomlEntry(s.Path, s.Value.Place, s.Value)));
        context.Overrides = set;
        context.Owner = "robot";
        RobotSettings? robot = RobotReader.Read(context, tree);
        (context.Overrides, context.Owner) = (null, "");
        if (robot is not null)
        {
            set?.ReportUnused(context, $"robot \"{SourceFile.Clean(robot.Name, 60)}\"");
        }

        return context.Errors == 0 ? robot : null;
    }

    private static ReadResult ReadFile(string path, ReadOptions? options, bool mayBeRobot)
    {
        var context = new ReadContext(options ?? new ReadOptions()) { Set = SetValues.Nodes(options?.Set ?? []) };
        TomlTable? tree = NamedTrees.Of(context, path);
        if (tree is null)
        {
            return ReadResult.Of(context, null, null);
        }

        if (mayBeRobot && context.Options.Opponent is null && FileNature.IsRobot(tree))
        {
            return ReadResult.Of(context, null, Robot(context, tree));
        }

        if (ContestTrees.Load(context, path, tree) is not SceneTrees trees)
        {
            return ReadResult.Of(context, null, null);
        }

        (ScenarioSettings? scenario, RobotSettings? robot) = SceneEvaluation.Of(context, trees);
        var read = ReadResult.Of(context, scenario, robot);
        if (read.Variants.Count == 0 || context.Options.Variant is not null)
        {
            return read;
        }

        // what is wrong with a variant is wrong with the file
        Problem[] wrong =
        [
            .. read.Variants.SelectMany(v => ReadFile(path, context.Options with { Variant = v }, mayBeRobot).Problems.Except(read.Problems).Distinct()
                .Select(p => p with { Message = $"variant \"{SourceFile.Clean(v, 60)}\": {p.Message}" })),
        ];
        return wrong.Any(p => p.Severity == Severity.Error) ? read with { Scenario = null, Robot = null, Problems = [.. read.Problems, .. wrong] } : read with { Problems = [.. read.Problems, .. wrong] };
    }
}
