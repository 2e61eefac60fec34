using PushSim.Contact;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Toml;
using PushSim.Surroundings;

namespace PushSim.Scenarios.Scenes;

/// <summary>Everything of a scenario file but the robot.</summary>
internal static class SceneReader
{
    private const int MostSpeedPoints = 100;

    /// <summary>The scenario; null if the context has any error, or without its robots.</summary>
    /// <param name="context">Gathers complaints.</param>
    /// <param name="root">The scenario file's top level.</param>
    /// <param name="robot">Its robot; null if it could not be read.</param>
    /// <param name="opponentSection">Its [opponent]; null if there is none.</param>
    /// <param name="opponent">The opponent's robot; null if there is none, or if it could not be read.</param>
    /// <param name="name">Name of the scenario.</param>
    public static ScenarioSettings? Read(ReadContext context, Section root, RobotSettings? robot, Section? opponentSection, RobotSettings? opponent, string name)
    {
        string question = root.Text("question") ?? "";
        IReadOnlyList<string> ask = Ask(root);
        FloorSettings floor = root.Table("floor") is Section f ? Floor(f) : new FloorSettings();
        Section? tetherSection = root.Table("tether");
        TetherSettings? tether = tetherSection is null ? null : Tether(tetherSection);
        Section? manoeuvreSection = root.Table("manoeuvre");
        ManoeuvreSettings? manoeuvre = manoeuvreSection is null ? null : ManoeuvreReader.Read(manoeuvreSection);
        NumericsSettings numerics = root.Table("numerics") is Section n ? Numerics(n) : new NumericsSettings();
        TyreLifeSettings? tyreLife = root.Table("tyre_life")?.Fill(Blank.TyreLife);
        if (manoeuvre is not null)
        {
            CheckTether(manoeuvreSection!, manoeuvre, tetherSection, tether);
        }

        ShoveSettings shove = root.Table("shove")?.Fill(Blank.Shove) ?? Blank.Shove;
        IReadOnlyList<Section> wallSections = root.Tables("wall");
        List<WallSettings> walls = [.. wallSections.Select(WallReader.Read)];
        ContactSettings contact = root.Table("contact")?.Fill(Blank.Contact) ?? Blank.Contact;
        ManoeuvreSettings? other = opponentSection is null || manoeuvre is null ? null : ManoeuvreReader.ReadOpponent(opponentSection, manoeuvre);
        if (manoeuvre is not null)
        {
            CheckPartners(root, manoeuvreSection!, manoeuvre, opponentSection is not null, walls.Count > 0);
        }

        if (context.Errors > 0 || robot is null || manoeuvre is null || (opponentSection is not null && opponent is null))
        {
            return null;
        }

        var scenario = new ScenarioSettings
        {
            Name = name,
            Question = question,
            Ask = ask,
            Robot = robot,
            Floor = floor,
            Tether = tether,
            Manoeuvre = manoeuvre,
            Opponent = opponent is null ? null : new OpponentSettings(opponent, other!),
            Shove = shove,
            Walls = walls,
            Contact = contact,
            TyreLife = tyreLife,
            Numerics = numerics,
        };
        WallReader.Check(wallSections, scenario);
        return context.Errors > 0 ? null : scenario;
    }

    private static IReadOnlyList<string> Ask(Section root)
    {
        IReadOnlyList<TomlText> asked = root.Texts("ask") ?? [];
        foreach (TomlText key in asked.Where(k => root.Context.Drawn is null && !AskedKeys.All.Contains(k.Value)))
        {
            root.Context.Error(
                key.Place, $"no run gives \"{SourceFile.Clean(key.Value, 60)}\"",
                NearestWord.Advice(key.Value, AskedKeys.All) + "the keys are those of run --json, for example \"pull_plateau_n\"; src/docs/answers.md lists them");
        }

        return [.. asked.Select(k => k.Value).Distinct()];
    }

    private static void CheckPartners(Section root, Section at, ManoeuvreSettings manoeuvre, bool hasOpponent, bool hasWall)
    {
        (ManoeuvreTraits traits, string name) = (manoeuvre.Traits, manoeuvre.Traits.Name);
        if (traits.NeedsOpponent && !hasOpponent)
        {
            at.Context.Error(at.PlaceOf("kind"), $"a {name} needs an opponent", "add [opponent] with robot = \"robots/badger.toml\"");
        }
        else if (!traits.NeedsOpponent && hasOpponent)
        {
            at.Context.Error(at.PlaceOf("kind"), "an opponent takes part in a shove only", "write kind = \"shove\", or take [opponent] out");
        }

        if (traits.NeedsWall && !hasWall)
        {
            at.Context.Error(at.PlaceOf("kind"), $"a {name} needs a wall", "add [[wall]] with x1, y1, x2, y2");
        }

        if (!traits.NeedsOpponent && root.Has("shove"))
        {
            at.Context.Warning(root.PlaceOf("shove"), "[shove] has no effect in this kind of manoeuvre", "take it out");
        }

        if (hasOpponent && root.Has("tether"))
        {
            at.Context.Error(root.PlaceOf("tether"), "a shove has no tether", "take [tether] out");
        }
    }

    private static FloorSettings Floor(Section s)
    {
        _ = s.Text("shelf");
        return s.Fill(Blank.Floor) with { Patches = [.. s.Tables("patch").Select(Patch)] };
    }

    private static FloorPatch Patch(Section s)
    {
        FloorPatch patch = s.Fill(Blank.Patch);
        if (patch.MinX >= patch.MaxX || patch.MinY >= patch.MaxY)
        {
            s.Context.Error(s.Place, "this patch of floor has no area", "min_x must be below max_x, and min_y below max_y");
        }

        return patch;
    }

    private static TetherSettings Tether(Section s)
    {
        Section? hook = s.Table("hook");
        Section? anchor = s.Table("anchor");
        TetherSettings d = hook?.Fill(Blank.Tether) ?? Blank.Tether;
        d = s.Fill(anchor?.Fill(d) ?? d);
        return d with { AnchorSpeed = s.Curve("anchor_speed", MostSpeedPoints, 0.0, 600.0, -10.0, 10.0) ?? [], Cell = s.Table("cell")?.Fill(Blank.Cell) };
    }

    private static NumericsSettings Numerics(Section s)
    {
        string method = s.Text("method") ?? Blank.Numerics.Method;
        string[] names = [.. AdditiveTableau.All.Select(t => t.Name)];
        if (!names.Contains(method, StringComparer.Ordinal))
        {
            s.Context.Error(s.PlaceOf("method"), $"there is no method \"{SourceFile.Clean(method, 60)}\"", NearestWord.Advice(method, names) + "allowed: " + string.Join(", ", names));
        }

        bool isDouble = s.Choice("draw_precision") == 1;
        return s.Fill(Blank.Numerics with { Method = method, IsAskedFor = s.Has("method") || s.Has("tolerance"), DrawPrecision = isDouble ? Precision.Double : Precision.Single });
    }

    private static void CheckTether(Section at, ManoeuvreSettings manoeuvre, Section? section, TetherSettings? tether)
    {
        string name = manoeuvre.Traits.Name;
        if (manoeuvre.Traits.NeedsTether && section is null)
        {
            at.Context.Error(at.PlaceOf("kind"), $"a {name} needs a tether", "add [tether] with hook, anchor and stiffness");
        }
        else if (manoeuvre.Traits.IsDragged && section is not null && tether!.AnchorSpeed.Count == 0 && !section.Has("anchor_speed"))
        {
            at.Context.Error(section.Place, $"a {name} needs an anchor that moves", "add anchor_speed = [[\"0 s\", \"0 m/s\"], [\"1 s\", \"0.1 m/s\"]]");
        }
    }
}
