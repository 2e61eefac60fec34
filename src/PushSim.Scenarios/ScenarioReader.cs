using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Toml;
using PushSim.Simulation;

namespace PushSim.Scenarios;

/// <summary>
/// Reads scenario and robot files. Every mistake of a file is found in one go, with its place; a file is used only if it has
/// none. Numbers read the same whatever the country set in the system.
/// </summary>
public static class ScenarioReader
{
    /// <summary>Reads a scenario file and the robot file that it names.</summary>
    public static ReadResult Read(string path, ReadOptions? options = null) => ReadFile(path, options, mayBeRobot: false);

    /// <summary>Reads a robot file alone.</summary>
    public static ReadResult ReadRobot(string path, ReadOptions? options = null)
    {
        var context = new ReadContext(options ?? new ReadOptions());
        TomlTable? tree = Tree(context, path, path, null);
        RobotSettings? robot = tree is null ? null : RobotReader.Read(context, tree);
        return Result(context, null, robot);
    }

    /// <summary>Reads a file that may be either kind: it is taken for a robot file if it has a chassis and names no robot.</summary>
    public static ReadResult Check(string path, ReadOptions? options = null) => ReadFile(path, options, mayBeRobot: true);

    private static ReadResult ReadFile(string path, ReadOptions? options, bool mayBeRobot)
    {
        var context = new ReadContext(options ?? new ReadOptions());
        TomlTable? tree = Tree(context, path, path, null);
        if (tree is null)
        {
            return Result(context, null, null);
        }

        bool isRobot = tree.Find("robot") is null && (tree.Find("chassis") is not null || tree.Find("wheel") is not null);
        if (isRobot && mayBeRobot)
        {
            return Result(context, null, RobotReader.Read(context, tree));
        }

        if (isRobot)
        {
            context.Error(new Place(tree.Place.File, 1, 1, 1), "this is a robot file, not a scenario", "write a scenario that names it: robot = \"" + SourceFile.Clean(Path.GetFileName(path)) + "\"");
            return Result(context, null, null);
        }

        SetValues.PutIntoScenario(context, tree);
        PartFill.FillScenario(context, tree);
        var root = new Section(context, "scenario", tree);
        RobotSettings? robot = Robot(context, path, root, SetValues.OfRobot(context));
        context.TyreMaterial = null;
        Section? opponentSection = root.Table("opponent");
        (int notes, int derived) = (context.Notes.Count, context.Derived.Count);
        RobotSettings? opponent = opponentSection is null ? null : Robot(context, path, opponentSection, []);
        if (robot is not null && opponent is not null)
        {
            NameNotes(context, (0, notes), (0, derived), robot.Name);
            NameNotes(context, (notes, context.Notes.Count), (derived, context.Derived.Count), opponent.Name);
        }

        ScenarioSettings? scenario = SceneReader.Read(context, root, robot, opponentSection, opponent, Path.GetFileNameWithoutExtension(path));
        if (root.Table("measured") is Section measured && scenario is not null)
        {
            scenario = MeasuredReader.Add(context, path, measured, scenario);
        }

        return Result(context, scenario, robot);
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

    // The robot that a scenario or its opponent names, with what they set anew in it.
    private static RobotSettings? Robot(ReadContext context, string path, Section user, IReadOnlyList<TomlEntry> first)
    {
        if (user.Text("robot") is not string name)
        {
            return null;
        }

        TomlTable? set = user.Raw("override");
        TomlTable? tree = RobotTree(context, path, name, user.PlaceOf("robot"));
        if (tree is null)
        {
            return null;
        }

        context.Overrides = set is null && first.Count == 0 ? null : new Overrides(set, first);
        RobotSettings? robot = RobotReader.Read(context, tree);
        if (robot is not null)
        {
            context.Overrides?.ReportUnused(context, robot.Name);
        }

        context.Overrides = null;
        return robot;
    }

    private static TomlTable? RobotTree(ReadContext context, string path, string name, Place place)
    {
        string folder = Path.GetDirectoryName(path) is { Length: > 0 } own ? own : ".";
        if (FileLoader.Resolve(context, folder, name, place) is not string full)
        {
            return null;
        }

        string shown = Path.IsPathRooted(name) || folder == "." ? name : Path.Combine(folder, name);
        return Tree(context, full, shown, (place, name));
    }

    private static TomlTable? Tree(ReadContext context, string path, string name, (Place Place, string Text)? from)
    {
        TomlTable? tree = FileLoader.Load(context, path, name, from) is SourceFile file ? TomlTree.Parse(context, file) : null;
        if (tree is not null)
        {
            Includes.Merge(context, tree, path, name);
        }

        return tree;
    }

    private static ReadResult Result(ReadContext context, ScenarioSettings? scenario, RobotSettings? robot) => new()
    {
        Scenario = context.Errors == 0 ? scenario : null,
        Robot = context.Errors == 0 ? robot : null,
        Problems = [.. context.Problems.OrderBy(p => p.File, StringComparer.Ordinal).ThenBy(p => p.Line).ThenBy(p => p.Column)],
        Notes = [.. context.Notes.Distinct()],
        Derived = [.. context.Derived.Distinct()],
        Inputs = context.Inputs,
        CannotRead = context.CannotRead,
    };
}
