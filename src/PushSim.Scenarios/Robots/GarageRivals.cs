using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Starters;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;

namespace PushSim.Scenarios.Robots;

/// <summary>
/// Opponents of the garage that are known by a glance: mass, wheels and motors, the rest as robots of that mass usually have it, with tolerances as wide as a glance is.
/// </summary>
internal static class GarageRivals
{
    private const string Key = "rival";
    private const string About = "about ";

    // Values that people give with a word of doubt.
    private static readonly string[] Guessed = ["mass", "wheel_diameter", "wheel_width", "top_speed", "grip"];

    // How far a glance is off: mass, wheels, gears, grip, winding (estimates; common sense, no source) [1].
    private const string OffMass = "10 %", OffWheel = "10 %", OffRatio = "25 %", OffWinding = "15 %", OffGrip = "25 %";

    /// <summary>Names of all of them.</summary>
    public static IEnumerable<string> Names(ReadContext context) => context.OfGarage(Key).Select((t, i) => PartNames.Label(t, i));

    /// <summary>The robot's tree of one of them; null if there is none of that name, or after a complaint.</summary>
    public static TomlTable? Tree(ReadContext context, string name)
    {
        TomlTable? rival = context.OfGarage(Key).FirstOrDefault(t => (t.Find("name")?.Value as TomlText)?.Value.Trim().Equals(name, StringComparison.OrdinalIgnoreCase) == true);
        return rival is null ? null : Tree(context, rival);
    }

    /// <summary>The robot's tree of its table; null after a complaint.</summary>
    public static TomlTable? Tree(ReadContext context, TomlTable rival)
    {
        foreach (TomlEntry e in rival.Entries.Where(e => e.Value is TomlText t && t.Value.TrimStart().StartsWith(About, StringComparison.OrdinalIgnoreCase) && Guessed.Contains(e.Key)).ToArray())
        {
            rival.Put(e with { Value = new TomlText(e.Value.Place, ((TomlText)e.Value).Value.TrimStart()[About.Length..].Trim()) });
        }

        (int errors, int inputs) = (context.Errors, context.Inputs.Count);
        var section = new Section(context, Key, rival);
        string name = section.Text("name") ?? "rival";
        double mass = section.Required("mass");
        int wheels = section.Whole("wheels", StarterDesign.DefaultWheels);
        double? diameter = section.Number("wheel_diameter");
        _ = section.Number("wheel_width");
        double? speed = section.Number("top_speed");
        double? grip = section.Number("grip");
        (string? motorWords, string? tyreWords) = (section.Text("motor"), section.Text("tyre"));
        _ = section.Text("note");

        // its values stand in the robot's own table
        context.Inputs.RemoveRange(inputs, context.Inputs.Count - inputs);
        if (wheels % 2 != 0)
        {
            context.Error(section.PlaceOf("wheels"), $"{wheels} driven wheels", "2, 4, 6 or 8");
        }

        if (context.Errors != errors)
        {
            return null;
        }

        ShelfPart? motor = StarterParts.MotorOf(motorWords, mass, wheels, out string wrong);
        if (motor is null)
        {
            context.Error(section.PlaceOf("motor"), wrong, "a class is enough, such as \"25 mm\"");
            return null;
        }

        ShelfPart? tyre = StarterParts.TyreOf(tyreWords, out wrong);
        if (tyre is null)
        {
            context.Error(section.PlaceOf("tyre"), wrong, "a word of its name is enough, such as \"silicone\"");
            return null;
        }

        var design = new StarterDesign(mass, wheels, motor, tyre);
        TomlTable robot = TomlTree.Parse(new Complaints(context.Options), new SourceFile(SourceFile.Clean(name, 60) + " (at a glance)", new StarterRobot(design, isLocked: false).Text()))!;
        Place place = rival.Place;
        robot.Put(new TomlEntry("name", place, new TomlText(place, name)));
        Loose(robot, "chassis", "mass", rival.Find("mass"), OffMass);
        TomlTable[] driven = [.. Tables(robot, "wheel").Where(w => w.Find("skid") is null)];
        foreach (TomlTable wheel in driven)
        {
            Loose(wheel, "diameter", rival.Find("wheel_diameter") ?? wheel.Find("diameter")!, OffWheel);
        }

        TomlTable cover = Tables(robot, "tyre").First();
        if (rival.Find("wheel_width") is { } w)
        {
            cover.Put(w with { Key = "width" });
        }

        double held = grip ?? tyre.Find("static_friction")?.Value ?? 0.8;
        double slides = held * ((tyre.Find("kinetic_friction")?.Value ?? 0.8) / (tyre.Find("static_friction")?.Value ?? 0.9));
        cover.Put(new TomlEntry("static_friction", place, new TomlText(place, rival.Find("grip")?.Value is TomlText { Value: var given } && HasTolerance(given) ? given : FormattableString.Invariant($"{held:0.###} ± {OffGrip}"))));
        cover.Put(new TomlEntry("kinetic_friction", place, new TomlText(place, FormattableString.Invariant($"{slides:0.###} ± {OffGrip}"))));
        TomlTable drive = Tables(robot, "motor").First();
        double own = motor.Find("gear_ratio")?.Value ?? design.Ratio ?? 1.0;
        double ratio = speed is double top ? StarterDesign.SpeedAtRatioOne(motor, diameter ?? design.Diameter) / top : own;
        drive.Put(new TomlEntry("gear_ratio", place, new TomlText(place, FormattableString.Invariant($"{ratio:0.##} ± {OffRatio}"))));
        if (motor.Find("resistance") is { Value: double ohm } && motor.Find("speed_constant") is not null)
        {
            drive.Put(new TomlEntry("resistance", place, new TomlText(place, FormattableString.Invariant($"{ohm:G4} ohm ± {OffWinding}"))));
        }

        return robot;
    }

    private static IEnumerable<TomlTable> Tables(TomlTable robot, string key) => ((TomlArray)robot.Find(key)!.Value).Items.OfType<TomlTable>();

    private static void Loose(TomlTable robot, string table, string key, TomlEntry? given, string off)
    {
        if (given is not null && robot.Find(table)?.Value is TomlTable part)
        {
            Loose(part, key, given, off);
        }
    }

    // a value with a tolerance of its own keeps it
    private static void Loose(TomlTable part, string key, TomlEntry given, string off)
    {
        if (given.Value is TomlText text)
        {
            string value = text.Value.Trim();
            part.Put(new TomlEntry(key, given.KeyPlace, new TomlText(text.Place, HasTolerance(value) ? value : $"{value} ± {off}")));
        }
    }

    private static bool HasTolerance(string text) => Quantity.Cut(text).Mark.Length > 0 || text.Contains("exact", StringComparison.Ordinal);
}
