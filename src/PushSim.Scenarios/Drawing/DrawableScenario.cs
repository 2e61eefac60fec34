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

    /// <summary>Whether the file asks for a method or a tolerance of integration.</summary>
    public bool StatesAccuracy { get; }

    /// <summary>Reads a scenario file, its robots and what is set anew in them.</summary>
    /// <param name="path">The scenario file.</param>
    /// <param name="options">Limits of reading, and what is set anew.</param>
    public static DrawableResult Open(string path, ReadOptions? options = null) =>
        Open(options ?? new ReadOptions(), context => Includes.Tree(context, path, path) is TomlTable tree && !FileNature.IsNoScenario(context, tree)
            ? new SceneTrees { Path = path, Name = Path.GetFileNameWithoutExtension(path), Scenario = tree }
            : null);

    /// <summary>Two robots in a scene: a scenario file whose robots are left out of account, or an empty floor.</summary>
    /// <param name="robot">File of the first robot.</param>
    /// <param name="opponent">File of the second.</param>
    /// <param name="scene">Scenario file with floor, shove and driving; null for a plain shove.</param>
    /// <param name="options">Limits of reading.</param>
    public static DrawableResult OfPair(string robot, string opponent, string? scene = null, ReadOptions? options = null) =>
        Open(options ?? new ReadOptions(), context => PairTrees(context, robot, opponent, scene));

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
        (scenario.Find("opponent")?.Value as TomlTable)?.Remove(Key);
    }

    private static SceneTrees? PairTrees(ReadContext context, string robot, string opponent, string? scene)
    {
        const string Plain = "question = \"Who wins?\"\n[manoeuvre]\nkind = \"shove\"\n";
        TomlTable? tree = scene is null ? TomlTree.Parse(context, new SourceFile(BuiltIn, Plain)) : Includes.Tree(context, scene, scene);
        TomlTable? first = Includes.Tree(context, robot, robot);
        TomlTable? second = Includes.Tree(context, opponent, opponent);
        if (tree is null || FileNature.IsNoScenario(context, tree) || first is null || second is null)
        {
            return null;
        }

        Place place = tree.Place;
        tree.Put(new TomlEntry("robot", place, new TomlText(place, robot)));
        if (tree.Find("opponent")?.Value is not TomlTable other)
        {
            other = new TomlTable(place, isExplicit: true);
            tree.Put(new TomlEntry("opponent", place, other));
        }

        other.Put(new TomlEntry("robot", place, new TomlText(place, opponent)));
        DropOverrides(tree);
        string name = $"{Path.GetFileNameWithoutExtension(robot)}-{Path.GetFileNameWithoutExtension(opponent)}";
        return new SceneTrees { Path = scene ?? BuiltIn, Name = name, Scenario = tree, Robot = first, Opponent = second };
    }

    private static DrawableResult Open(ReadOptions options, Func<ReadContext, SceneTrees?> load)
    {
        var first = new ReadContext(options) { Recorder = new DrawRecorder(new HashSet<string>()), Set = SetValues.Nodes(options.Set) };
        SceneTrees? trees = load(first);
        (ScenarioSettings? middle, RobotSettings? _) = trees is null ? (null, null) : SceneEvaluation.Of(first, trees);
        ReadResult read = ReadResult.Of(first, middle, middle?.Robot);
        if (trees is null || middle is null)
        {
            return new DrawableResult(read, null);
        }

        // read again, what was set anew and the material now being in the trees: now it is known which files state tolerances and which blocks
        // stand for several parts
        var stated = first.Recorder.Values.Select(v => v.Owner).ToHashSet(StringComparer.Ordinal);
        string[] owners = ["", "robot", "opponent"];
        var classed = owners.Where(o => !stated.Contains(o)).ToHashSet(StringComparer.Ordinal);
        trees.ClearSlots();
        DropOverrides(trees.Scenario);
        ClassDefaults.Add(trees, classed, hasOpponent: middle.Opponent is not null);
        PartCopies.Add(trees.Robot);
        PartCopies.Add(trees.Opponent);
        var second = new ReadContext(options) { Recorder = new DrawRecorder(classed), TyreMaterial = null };
        (ScenarioSettings? again, RobotSettings? _) = SceneEvaluation.Of(second, trees);
        return again is null
            ? new DrawableResult(ReadResult.Of(second, null, null), null)
            : new DrawableResult(read, new DrawableScenario(trees, options, second.Recorder.Values, middle, read.Inputs.Any(i => i.Key is "numerics.method" or "numerics.tolerance")));
    }
}
