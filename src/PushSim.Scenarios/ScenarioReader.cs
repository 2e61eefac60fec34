using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Robots;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Toml;
using PushSim.Simulation;

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

    /// <summary>Reads a robot file alone. What is wrong with it is complained about, never thrown.</summary>
    /// <param name="path">The robot file.</param>
    /// <param name="options">Limits of reading; <see cref="ReadOptions.Set"/> has no effect here. Null: the defaults.</param>
    /// <returns>The robot in SI, or the complaints; never a scenario.</returns>
    public static ReadResult ReadRobot(string path, ReadOptions? options = null)
    {
        var context = new ReadContext(options ?? new ReadOptions());
        TomlTable? tree = Tree(context, path, path, null);
        RobotSettings? robot = tree is null || FileNature.IsNoRobot(context, tree) ? null : RobotReader.Read(context, tree);
        return Result(context, null, robot);
    }

    /// <summary>Reads a file that may be either kind: it is taken for a robot file if it has a chassis or wheels and names no robot.</summary>
    /// <param name="path">The file.</param>
    /// <param name="options">Limits of reading; <see cref="ReadOptions.Set"/> has an effect on a scenario only. Null: the defaults.</param>
    /// <returns>The settings in SI, or the complaints; without a scenario if it is a robot file.</returns>
    public static ReadResult Check(string path, ReadOptions? options = null) => ReadFile(path, options, mayBeRobot: true);

    private static ReadResult ReadFile(string path, ReadOptions? options, bool mayBeRobot)
    {
        var context = new ReadContext(options ?? new ReadOptions()) { Set = SetText.Nodes(options?.Set ?? []) };
        TomlTable? tree = Tree(context, path, path, null);
        if (tree is null)
        {
            return Result(context, null, null);
        }

        if (mayBeRobot && FileNature.IsRobot(tree))
        {
            return Result(context, null, RobotReader.Read(context, tree));
        }

        if (FileNature.IsNoScenario(context, tree))
        {
            return Result(context, null, null);
        }

        var trees = new SceneTrees { Path = path, Name = Path.GetFileNameWithoutExtension(path), Scenario = tree };
        (ScenarioSettings? scenario, RobotSettings? robot) = Evaluate(context, trees);
        return Result(context, scenario, robot);
    }

    /// <summary>The settings that a scenario's trees give; robot files that are not there yet are loaded.</summary>
    internal static (ScenarioSettings? Scenario, RobotSettings? Robot) Evaluate(ReadContext context, SceneTrees trees)
    {
        Overrides? scene = context.Set.Count == 0 ? null : new Overrides(null, EntriesOf(context, ""));
        context.Overrides = scene;
        if (context.Drawn is null)
        {
            ShelfFill.FillScenario(context, trees.Scenario);
        }

        var root = new Section(context, "scenario", trees.Scenario);
        RobotSettings? robot = Robot(context, trees, root, "robot");
        context.TyreMaterial = null;
        context.Overrides = scene;
        Section? opponentSection = root.Table("opponent");
        (int notes, int derived) = (context.Notes.Count, context.Derived.Count);
        RobotSettings? opponent = opponentSection is null ? null : Robot(context, trees, opponentSection, "opponent");
        if (robot is not null && opponent?.Name == robot.Name)
        {
            opponent = opponent with { Name = opponent.Name + " B" };
        }

        if (robot is not null && opponent is not null && context.Drawn is null)
        {
            NameNotes(context, (0, notes), (0, derived), robot.Name);
            NameNotes(context, (notes, context.Notes.Count), (derived, context.Derived.Count), opponent.Name);
        }

        context.Overrides = scene;
        ScenarioSettings? scenario = SceneReader.Read(context, root, robot, opponentSection, opponent, trees.Name);
        if (context.Drawn is null && root.Table("measured") is Section measured && scenario is not null)
        {
            scenario = MeasuredReader.Add(context, trees.Path, measured, scenario);
        }

        if (scenario is not null)
        {
            scene?.ReportUnused(context, "this scenario");
        }

        context.Overrides = null;

        return (context.Errors == 0 ? scenario : null, robot);
    }

    // With two robots a note must say whose it is.
    private static void NameNotes(ReadContext context, (int From, int To) notes, (int From, int To) derived, string robot)
    {
        for (int i = notes.From; i < notes.To; i++)
        {
            context.Notes[i] = $"{robot}: {context.Notes[i]}";
        }

        for (int i = derived.From; i < derived.To; i++)
        {
            context.Derived[i] = context.Derived[i] with { Text = $"{robot}: {context.Derived[i].Text}" };
        }
    }

    // What a caller sets anew in a robot or, for no owner, in the scenario.
    private static List<TomlEntry> EntriesOf(ReadContext context, string owner) =>
        [.. context.Set.Where(s => SetPath.OwnerOf(s.Path) == owner).Select(s => new TomlEntry(owner == "" ? s.Path : SetPath.WithoutOwner(s.Path), s.Value.Place, s.Value))];

    // The robot that a scenario or its opponent names, with what they and the caller set anew in it.
    private static RobotSettings? Robot(ReadContext context, SceneTrees trees, Section user, string owner)
    {
        string? name = user.Text("robot");
        TomlTable? set = context.Drawn is null ? user.Raw("override") : null;
        TomlTable? tree = owner == "robot" ? trees.Robot : trees.Opponent;
        if (tree is null && name is not null)
        {
            tree = RobotTree(context, trees.Path, name, user.PlaceOf("robot"));
        }

        if (tree is null || (context.Drawn is null && FileNature.IsNoRobot(context, tree)))
        {
            return null;
        }

        (trees.Robot, trees.Opponent) = owner == "robot" ? (tree, trees.Opponent) : (trees.Robot, tree);
        List<TomlEntry> first = EntriesOf(context, owner);
        context.Overrides = set is null && first.Count == 0 ? null : new Overrides(set, first);
        context.Owner = owner;
        context.Unnamed.Clear();
        RobotSettings? robot = RobotReader.Read(context, tree);
        if (robot is not null)
        {
            context.Overrides?.ReportUnused(context, $"robot \"{SourceFile.Clean(robot.Name, 60)}\"");
        }

        context.Overrides = null;
        context.Owner = "";
        return robot;
    }

    private static TomlTable? RobotTree(ReadContext context, string path, string name, Place place)
    {
        string folder = FileLoader.FolderOf(path);
        if (FileLoader.Resolve(context, folder, name, place) is not string full)
        {
            return null;
        }

        string shown = Path.IsPathRooted(name) || folder == "." ? name : Path.Combine(folder, name);
        return Tree(context, full, shown, (place, name));
    }

    /// <summary>A file's tree with what it includes; null if it is not there or no TOML, complained about then.</summary>
    /// <param name="context">Gathers complaints.</param>
    /// <param name="path">The file's path.</param>
    /// <param name="name">Its name in messages.</param>
    /// <param name="from">Where another file names it, and how; null if the user did.</param>
    internal static TomlTable? Tree(ReadContext context, string path, string name, (Place Place, string Text)? from)
    {
        TomlTable? tree = FileLoader.Load(context, path, name, from) is SourceFile file ? TomlTree.Parse(context, file) : null;
        if (tree is not null)
        {
            Includes.Merge(context, tree, path, name);
        }

        return tree;
    }

    /// <summary>What a reading gave, its complaints in order of file and place.</summary>
    internal static ReadResult Result(ReadContext context, ScenarioSettings? scenario, RobotSettings? robot) => new()
    {
        Scenario = context.Errors == 0 ? scenario : null,
        Robot = context.Errors == 0 ? robot : null,
        Problems = [.. context.Problems.OrderBy(p => p.File, StringComparer.Ordinal).ThenBy(p => p.Line).ThenBy(p => p.Column)],
        Notes = [.. context.Notes.Distinct()],
        Remarks = context.Remarks,
        Derived = [.. context.Derived.Distinct()],
        Inputs = context.Inputs,
        CannotRead = context.CannotRead,
    };
}
