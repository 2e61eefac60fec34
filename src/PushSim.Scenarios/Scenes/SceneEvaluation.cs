using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Robots;
using PushSim.Scenarios.Toml;

namespace PushSim.Scenarios.Scenes;

/// <summary>Makes settings of the trees of a scenario and its robots.</summary>
internal static class SceneEvaluation
{
    /// <summary>The settings that a scenario's trees give; robot files that are not there yet are loaded.</summary>
    public static (ScenarioSettings? Scenario, RobotSettings? Robot) Of(ReadContext context, SceneTrees trees)
    {
        if (context.Drawn is null)
        {
            RenamedEntries.Move(context, trees.Scenario);
        }

        var scene = Overrides.Of(EntriesOf(context, trees, ""));
        context.Overrides = scene;
        if (context.Drawn is null)
        {
            ShelfFill.FillScenario(context, trees.Scenario);
        }

        var root = new Section(context, "scenario", trees.Scenario);
        RobotSettings? robot = Robot(context, trees, root, "robot");
        (context.TyreMaterial, context.Tyre) = (null, null);
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
        context.Variants = context.Drawn is null ? Variants.Names(root) : [];
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

    // What the scenario, then a caller and then the variant set anew in a robot or, for no owner, in the scenario. Draws find it in the trees
    private static IEnumerable<TomlEntry> EntriesOf(ReadContext context, SceneTrees trees, string owner)
    {
        bool isDrawn = context.Drawn is not null;
        IEnumerable<TomlEntry> own = isDrawn ? [] : Overrides.Entries(trees.Scenario.Find("override")?.Value as TomlTable);
        IEnumerable<TomlEntry> variant = isDrawn ? [] : Variants.Entries(context, trees.Scenario);
        bool isAnother = owner == "robot" ? context.Options.Robot is not null : owner == "opponent" && context.Options.Opponent is not null;
        if (isAnother)
        {
            (own, variant) = ([], []);
        }

        return own.Concat(context.Set.Select(s => new TomlEntry(s.Path, s.Value.Place, s.Value))).Concat(variant)
            .Select(e => e with { Key = RenamedKeys.Path(e.Key) })
            .Where(e => SetValues.OwnerOf(e.Key) == owner).Select(e => owner == "" ? e : e with { Key = SetValues.WithoutOwner(e.Key) });
    }

    // The robot that a scenario or its opponent names, with what they and the caller set anew in it.
    private static RobotSettings? Robot(ReadContext context, SceneTrees trees, Section user, string owner)
    {
        string? name = user.Text("robot");
        TomlTable? set = context.Drawn is null ? user.Raw("override") : null;
        IEnumerable<TomlEntry> ofOpponent = owner == "opponent" ? Overrides.Entries(set) : [];
        TomlTable? tree = owner == "robot" ? trees.Robot : trees.Opponent;
        if (tree is null && owner == "robot" && context.Options.Robot is string other)
        {
            tree = NamedTrees.Of(context, other);
            name = null;
        }

        if (tree is null && name is not null)
        {
            tree = RobotTree(context, trees.Path, name, user.PlaceOf("robot"));
        }

        if (tree is null || (context.Drawn is null && FileNature.IsNoRobot(context, tree)))
        {
            return null;
        }

        (trees.Robot, trees.Opponent) = owner == "robot" ? (tree, trees.Opponent) : (trees.Robot, tree);
        context.Overrides = Overrides.Of(ofOpponent.Concat(EntriesOf(context, trees, owner)));
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

        // a file in the scenario's folder wins over a name of the garage
        if (!Path.IsPathRooted(name) && PushSim.Files.Disk.Look(Path.Combine(folder, name)) == PushSim.Files.PathKind.None && NamedTrees.OfName(context, name) is TomlTable named)
        {
            return named;
        }

        if (FileLoader.Resolve(context, folder, name, place) is not string full)
        {
            return null;
        }

        string shown = Path.IsPathRooted(name) || folder == "." ? name : Path.Combine(folder, name);
        return Includes.Tree(context, full, shown, (place, name), FileLoader.Root(context, folder));
    }
}
