using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Robots;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Scenes;

/// <summary>The trees of what a user names: a scenario; a scenario with another opponent; or a robot, its opponent and a scene.</summary>
internal static class ContestTrees
{
    /// <summary>What stands for the file of a scene where none is given.</summary>
    public const string BuiltIn = "built-in shove";

    private const string Plain = "question = \"Who wins?\"\n[manoeuvre]\nkind = \"shove\"\n";

    /// <summary>The trees of a file, with the opponent and the scene of the options.</summary>
    /// <param name="context">What is read, and how.</param>
    /// <param name="file">Scenario file, or robot file if there is an opponent.</param>
    /// <param name="mayBeScene">Whether a file with an opponent may be a scenario, whose scene then stays.</param>
    /// <returns>Null after complaints.</returns>
    public static SceneTrees? Load(ReadContext context, string file, bool mayBeScene = true)
    {
        TomlTable? tree = NamedTrees.Of(context, file);
        return tree is null ? null : Load(context, file, tree, mayBeScene);
    }

    /// <summary>The same of a file whose tree is there.</summary>
    public static SceneTrees? Load(ReadContext context, string file, TomlTable tree, bool mayBeScene = true)
    {
        string name = Path.GetFileNameWithoutExtension(file);
        if (context.Options.Opponent is not string opponent)
        {
            return FileNature.IsNoScenario(context, tree) ? null : new SceneTrees { Path = file, Name = name, Scenario = tree };
        }

        string? scene = context.Options.Scene;
        bool isScene = mayBeScene && scene is null && FileNature.IsScenario(tree) && !FileNature.IsRobot(tree);
        TomlTable? scenario = isScene ? tree : scene is null ? TomlTree.Parse(context, new SourceFile(BuiltIn, Plain)) : Includes.Tree(context, scene, scene);
        TomlTable? second = NamedTrees.Of(context, opponent);
        if (scenario is null || second is null || FileNature.IsNoScenario(context, scenario))
        {
            return null;
        }

        name = $"{name}-{Path.GetFileNameWithoutExtension(opponent)}";
        Place place = scenario.Place;
        if (scenario.Find("opponent")?.Value is not TomlTable other)
        {
            other = new TomlTable(place, isExplicit: true);
            scenario.Put(new TomlEntry("opponent", place, other));
        }

        other.Put(new TomlEntry("robot", place, new TomlText(place, opponent)));
        other.Remove("override");
        if (isScene)
        {
            return new SceneTrees { Path = file, Name = name, Scenario = scenario, Opponent = second };
        }

        scenario.Put(new TomlEntry("robot", place, new TomlText(place, file)));
        DropOverrides(scenario);
        return new SceneTrees { Path = scene ?? BuiltIn, Name = name, Scenario = scenario, Robot = tree, Opponent = second };
    }

    /// <summary>Takes out what a scenario sets anew in its robots, and its variants.</summary>
    public static void DropOverrides(TomlTable scenario)
    {
        const string Key = "override";
        scenario.Remove(Key);
        Variants.Drop(scenario);
        (scenario.Find("opponent")?.Value as TomlTable)?.Remove(Key);
    }
}
