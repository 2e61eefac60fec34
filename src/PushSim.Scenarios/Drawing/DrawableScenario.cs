using PushSim.Analysis.Chance;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;

namespace PushSim.Scenarios.Drawing;

/// <summary>
/// A scenario whose toleranced values can be put in anew, many times a millisecond: the parsed files are kept and read again by the same readers, without their
/// checks of form. Applying draws is safe from several threads.
/// </summary>
public sealed class DrawableScenario
{
    /// <summary>What stands for the file of a scene where none is given.</summary>
    public const string BuiltIn = ContestTrees.BuiltIn;

    private readonly SceneTrees _trees;
    private readonly ReadOptions _options;

    private DrawableScenario(SceneTrees trees, ReadOptions options, IReadOnlyList<TolerancedValue> values, ScenarioSettings middle)
    {
        _trees = trees;
        _options = options;
        Values = values;
        Middle = middle;
    }

    /// <summary>The values that are drawn, in the order in which <see cref="With"/> takes them.</summary>
    public IReadOnlyList<TolerancedValue> Values { get; }

    /// <summary>The scenario at the files' own values.</summary>
    public ScenarioSettings Middle { get; }

    /// <summary>Label of the contest of its two robots.</summary>
    public string Label => ContestKey.Of(Middle.Robot.Name, Middle.Opponent?.Robot.Name ?? "");

    /// <summary>
    /// Reads a contest as a user names it: a scenario file; a scenario file with another opponent; or a robot file, an opponent and a scene, which is a scenario file whose
    /// robots are left out of account, or an empty floor.
    /// </summary>
    /// <param name="path">Scenario file, or robot file if the options name an opponent.</param>
    /// <param name="options">Limits of reading, opponent, scene, and what is set anew.</param>
    public static DrawableResult Open(string path, ReadOptions? options = null) => Open(options ?? new ReadOptions(), context => ContestTrees.Load(context, path));

    /// <summary>The same with every number of the files among <see cref="Values"/>, those that nobody doubts with a tolerance of zero.</summary>
    internal static DrawableResult OpenAll(string path, ReadOptions options) => Open(options, context => ContestTrees.Load(context, path), isOfAll: true);

    /// <summary>Two robots in a scene: a scenario file whose robots are left out of account, or an empty floor.</summary>
    /// <param name="robot">File of the first robot.</param>
    /// <param name="opponent">File of the second.</param>
    /// <param name="scene">Scenario file with floor, shove and driving; null for a plain shove.</param>
    /// <param name="options">Limits of reading, and what is set anew.</param>
    public static DrawableResult OfPair(string robot, string opponent, string? scene = null, ReadOptions? options = null) =>
        Open((options ?? new ReadOptions()) with { Opponent = opponent, Scene = scene }, context => ContestTrees.Load(context, robot, mayBeScene: false));

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

    private static DrawableResult Open(ReadOptions options, Func<ReadContext, SceneTrees?> load, bool isOfAll = false)
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
        // what was set anew would take the place of what a caller sets
        ContestTrees.DropOverrides(trees.Scenario);
        ClassDefaults.Add(trees, hasOpponent: middle.Opponent is not null);
        PartCopies.Add(trees.Robot);
        PartCopies.Add(trees.Opponent);
        var second = new ReadContext(options) { Recorder = new DrawRecorder(isOfAll), TyreMaterial = null, Tyre = null };
        (ScenarioSettings? again, RobotSettings? _) = SceneEvaluation.Of(second, trees);
        return again is null
            ? new DrawableResult(ReadResult.Of(second, null, null), null)
            : new DrawableResult(read, new DrawableScenario(trees, options, second.Recorder.Values, middle));
    }
}
