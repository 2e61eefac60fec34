using PushSim.Analysis.Chance;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Drawing;

/// <summary>
/// A scenario whose toleranced values can be put in anew, many times a millisecond: the parsed files are kept and read again by the same readers, without their
/// checks of form. Applying draws is safe from several threads.
/// </summary>
public sealed class DrawableScenario
{
    /// <summary>What stands for the file of a scene where none is given.</summary>
    public const string BuiltIn = "built-in shove";

    private readonly SceneTrees _trees;
    private readonly ReadOptions _options;

    private DrawableScenario(SceneTrees trees, ReadOptions options, IReadOnlyList<TolerancedValue> values, ScenarioSettings middle, bool statesAccuracy)
    {
        _trees = trees;
        _options = options;
        Values = values;
        Middle = middle;
        StatesAccuracy = statesAccuracy;
    }

    /// <summary>The values that are drawn, in the order in which <see cref="With"/> takes them.</summary>
    public IReadOnlyList<TolerancedValue> Values { get; }

    /// <summary>The scenario at the files' own values.</summary>
    public ScenarioSettings Middle { get; }

    /// <summary>Label of the contest of its two robots.</summary>
    public string Label => ContestKey.Of(Middle.Robot.Name, Middle.Opponent?.Robot.Name ?? "");

    /// <summary>Whether the file asks for a method or a tolerance of integration.</summary>
    public bool StatesAccuracy { get; }

    /// <summary>Reads a scenario file, its robots and what is set anew in them.</summary>
    /// <param name="path">The scenario file.</param>
    /// <param name="options">Limits of reading, and what is set anew.</param>
    public static DrawableResult Open(string path, ReadOptions? options = null) =>
        Open(options ?? new ReadOptions(), context => Includes.Tree(context, path, path) is TomlTable tree && !FileNature.IsNoScenario(context, tree)
            ? new SceneTrees { Path = path, Name = Path.GetFileNameWithoutExtension(path), Scenario = tree }
            : null);

    /// <summary>
    /// A contest as a user names it: a scenario; a scenario with another opponent; or a robot, its opponent and a scene, which is a scenario file whose robots are left
    /// out of account, or an empty floor.
    /// </summary>
    /// <param name="file">Scenario or robot file.</param>
    /// <param name="opponent">Robot file of the opponent; null for the scenario's own.</param>
    /// <param name="scene">Scenario file with floor, shove and driving of two robot files; null for a plain shove.</param>
    /// <param name="options">Limits of reading, and what is set anew.</param>
    public static DrawableResult OfContest(string file, string? opponent, string? scene = null, ReadOptions? options = null) => opponent is null
        ? Open(file, options)
        : Open(options ?? new ReadOptions(), context => PairTrees(context, file, opponent, scene, mayBeScene: scene is null));

    /// <summary>Two robots in a scene: a scenario file whose robots are left out of account, or an empty floor.</summary>
    /// <param name="robot">File of the first robot.</param>
    /// <param name="opponent">File of the second.</param>
    /// <param name="scene">Scenario file with floor, shove and driving; null for a plain shove.</param>
    /// <param name="options">Limits of reading, and what is set anew.</param>
    public static DrawableResult OfPair(string robot, string opponent, string? scene = null, ReadOptions? options = null) =>
        Open(options ?? new ReadOptions(), context => PairTrees(context, robot, opponent, scene, mayBeScene: false));

    /// <summary>The settings with these values in place of the middles.</summary>
    /// <param name="values">One for each of <see cref="Values"/>, in its unit.</param>
    /// <param name="cause">Why there are none; empty if there are.</param>
    /// <returns>The settings; null if the values contradict each other.</returns>
    public ScenarioSettings? With(double[] values, out string cause)
    {
        var context = new ReadContext(_options) { Drawn = values };
        (ScenarioSettings? scenario, RobotSettings? _) = SceneEvaluation.Of(context, _trees);
        cause = scenario is null ? context.Problems.FirstOrDefault(p => p.Severity == Severity.Error)?.Message ?? "the values contradict each other" : "";
        return scenario;
    }

    // They stand in the trees by now, under what a caller sets anew, and would take its place
    private static void DropOverrides(TomlTable scenario)
    {
        const string Key = "override";
        scenario.Remove(Key);
        Variants.Drop(scenario);
        (scenario.Find("opponent")?.Value as TomlTable)?.Remove(Key);
    }

    // A robot file that may be a scenario, and is one: its robot meets the opponent in that scene
    private static SceneTrees? PairTrees(ReadContext context, string robot, string opponent, string? scene, bool mayBeScene)
    {
        const string Plain = "question = \"Who wins?\"\n[manoeuvre]\nkind = \"shove\"\n";
        TomlTable? first = Includes.Tree(context, robot, robot);
        bool isScene = first is not null && mayBeScene && FileNature.IsScenario(first);
        TomlTable? tree = isScene ? first : scene is null ? TomlTree.Parse(context, new SourceFile(BuiltIn, Plain)) : Includes.Tree(context, scene, scene);
        TomlTable? second = Includes.Tree(context, opponent, opponent);
        if (tree is null || FileNature.IsNoScenario(context, tree) || first is null || second is null)
        {
            return null;
        }

        string name = $"{Path.GetFileNameWithoutExtension(robot)}-{Path.GetFileNameWithoutExtension(opponent)}";
        Place place = tree.Place;
        if (tree.Find("opponent")?.Value is not TomlTable other)
        {
            other = new TomlTable(place, isExplicit: true);
            tree.Put(new TomlEntry("opponent", place, other));
        }

        other.Put(new TomlEntry("robot", place, new TomlText(place, opponent)));
        if (isScene)
        {
            other.Remove("override");
            return new SceneTrees { Path = robot, Name = name, Scenario = tree, Opponent = second };
        }

        tree.Put(new TomlEntry("robot", place, new TomlText(place, robot)));
        DropOverrides(tree);
        return new SceneTrees { Path = scene ?? BuiltIn, Name = name, Scenario = tree, Robot = first, Opponent = second };
    }

    private static DrawableResult Open(ReadOptions options, Func<ReadContext, SceneTrees?> load)
    {
        var first = new ReadContext(options) { Recorder = new DrawRecorder(), Set = SetValues.Nodes(options.Set) };
        SceneTrees? trees = load(first);
        (ScenarioSettings? middle, RobotSettings? _) = trees is null ? (null, null) : SceneEvaluation.Of(first, trees);
        ReadResult read = ReadResult.Of(first, middle, middle?.Robot);
        if (trees is null || middle is null)
        {
            return new DrawableResult(read, null);
        }

        // read again, what was set anew and the material now being in the trees, with usual values where nobody states one and a block for each of several parts
        trees.ClearSlots();
        DropOverrides(trees.Scenario);
        ClassDefaults.Add(trees, hasOpponent: middle.Opponent is not null);
        PartCopies.Add(trees.Robot);
        PartCopies.Add(trees.Opponent);
        var second = new ReadContext(options) { Recorder = new DrawRecorder(), TyreMaterial = null, Tyre = null };
        (ScenarioSettings? again, RobotSettings? _) = SceneEvaluation.Of(second, trees);
        return again is null
            ? new DrawableResult(ReadResult.Of(second, null, null), null)
            : new DrawableResult(read, new DrawableScenario(trees, options, second.Recorder.Values, middle, read.Inputs.Any(i => i.Key is "numerics.method" or "numerics.tolerance")));
    }
}
