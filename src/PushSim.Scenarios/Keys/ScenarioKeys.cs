using PushSim.Scenarios.Units;
using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>The keys of a scenario file.</summary>
internal static class ScenarioKeys
{
    public static readonly KeyDefinition[] All =
    [
        Text("scenario", "question", "The question that the scenario answers, one sentence.", "How fast is it off the line?"),
        Texts("scenario", "ask", "What the verdict must tell, by the keys of `run --json` (src/docs/answers.md).", "[\"pull_plateau_n\", \"peak_battery_current_a\"]", "what is usual for the manoeuvre") with { Choices = AskedKeys.All },
        Text("scenario", "robot", "The robot's file, in this file's folder or below.", "robots/mole.toml", required: true),
        Table("scenario", "floor", "The floor."),
        Table("scenario", "tether", "A cord from the robot through a load cell to an anchor."),
        Table("scenario", "manoeuvre", "What the robot is told to do.", required: true),
        Table("scenario", "numerics", "How the equations are solved."),
        Texts("scenario", "include", "Files in this file's folder or below whose tables are added to this one; own values stand.", "[\"floors/plywood.toml\"]"),
        new("scenario", "override", KeyKind.Overrides, "Values of the robot set anew for this scenario, by their path.") { Example = "\"tyre.soft.static_friction\" = 0.9" },
        Table("scenario", "opponent", "A second robot, facing the first."),
        Table("scenario", "shove", "How a shove starts and who wins it."),
        Tables("scenario", "wall", "A wall that stands on the floor."),
        Table("scenario", "contact", "What contacts are made of."),
        Table("scenario", "tyre_life", "What is asked about wear and dust over many runs."),
        Tables("scenario", "variant", "The same scenario with other values: run, limits and odds compare the file as it is with each of them."),
        Table("scenario", "measured", "A log of a real pull, laid over the simulated one."),

        Number("floor", "friction", 0.01, 10, "Multiple of every tyre's friction.", "1.0", Own).Usual(0.3, 1.5).Of(Blank.Floor, t => t.FrictionScale, (t, v) => t with { FrictionScale = v }),
        Number("floor", "dust", 0, 100, "How fast dust fouls the tyres; 0 is clean, 1 their own fouling distance.", "0", Own).Usual(0, 5).Of(Blank.Floor, t => t.Dust, (t, v) => t with { Dust = v }),
        Number("floor", "abrasiveness", 0, 10, "Abrasiveness against the sheet of the standard wear test; dry roads have 0.005 to 0.03.", "0.005", Own).Usual(0, 0.05).Of(Blank.Floor, t => t.Abrasiveness, (t, v) => t with { Abrasiveness = v }),
        Quantity("floor", "slope_x", Dimension.Angle, -70 * Degree, 70 * Degree, "Slope, positive when the board rises towards +x.", "12 deg", Own).Usual(-35 * Degree, 35 * Degree).Of(Blank.Floor, t => t.SlopeX, (t, v) => t with { SlopeX = v }),
        Quantity("floor", "slope_y", Dimension.Angle, -70 * Degree, 70 * Degree, "Slope, positive when the board rises towards +y.", "0 deg", Own).Usual(-35 * Degree, 35 * Degree).Of(Blank.Floor, t => t.SlopeY, (t, v) => t with { SlopeY = v }),
        Quantity("floor", "air_temperature", Dimension.Temperature, -40, 80, "Air temperature.", "20 °C", Own).Usual(0, 40).Of(Blank.Floor, t => t.AirTemperature, (t, v) => t with { AirTemperature = v }),
        Tables("floor", "patch", "A rectangle of floor with its own friction."),
        Text("floor", "shelf", "Floor of the parts shelf (pushsim shelf lists them); gives every value that the floor does not give itself.", "bare plywood", "none"),

        Quantity("floor.patch", "min_x", Dimension.Length, -1000, 1000, "Lower x edge.", "1 m", required: true).Usual(-10, 10).Of(Blank.Patch, t => t.MinX, (t, v) => t with { MinX = v }),
        Quantity("floor.patch", "max_x", Dimension.Length, -1000, 1000, "Upper x edge.", "1.5 m", required: true).Usual(-10, 10).Of(Blank.Patch, t => t.MaxX, (t, v) => t with { MaxX = v }),
        Quantity("floor.patch", "min_y", Dimension.Length, -1000, 1000, "Lower y edge.", "-0.5 m", required: true).Usual(-10, 10).Of(Blank.Patch, t => t.MinY, (t, v) => t with { MinY = v }),
        Quantity("floor.patch", "max_y", Dimension.Length, -1000, 1000, "Upper y edge.", "0.5 m", required: true).Usual(-10, 10).Of(Blank.Patch, t => t.MaxY, (t, v) => t with { MaxY = v }),
        Number("floor.patch", "friction", 0.01, 10, "Multiple of every tyre's friction on it.", "0.5", required: true).Usual(0.1, 2).Of(Blank.Patch, t => t.FrictionScale, (t, v) => t with { FrictionScale = v }),

        Table("tether", "hook", "Hook on the robot: x forward, y left, height above the floor.", required: true),
        Table("tether", "anchor", "Anchor at the start, on the floor: x, y, height.", required: true),
        Quantity("tether", "slack", Dimension.Length, 0, 10, "Free length less the distance from hook to anchor at the start; the more, the harder the jerk when it goes taut.", "10 mm", Own).Usual(0, 0.2).Of(Blank.Tether, t => t.Slack, (t, v) => t with { Slack = v }),
        Quantity("tether", "stiffness", Dimension.Stiffness, 1, 1e7, "Stiffness of cord and cell together.", "8 N/mm", required: true).Usual(500, 100000).Of(Blank.Tether, t => t.Stiffness, (t, v) => t with { Stiffness = v }),
        Quantity("tether", "damping", Dimension.InverseSpeed, 0, 100, "Damping as share of the force per stretch speed; a cord takes a few per cent of each swing.", "0.5 s/m", Own).Usual(0.005, 2).Of(Blank.Tether, t => t.Damping, (t, v) => t with { Damping = v }),
        Curve("tether", "anchor_speed", Dimension.Time, Dimension.Speed, "Anchor speed along x against time, straight between points.", "[[\"0 s\", \"0 m/s\"], [\"1 s\", \"0.1 m/s\"]]", "the anchor stands"),
        Table("tether", "cell", "The load cell's read-out."),

        Quantity("tether.hook", "x", Dimension.Length, -3, 3, "Forward of the plan's origin.", "-90 mm", required: true).Usual(-0.4, 0.4).Of(Blank.Tether, t => t.HookX, (t, v) => t with { HookX = v }),
        Quantity("tether.hook", "y", Dimension.Length, -3, 3, "Left of the plan's origin.", "0 mm", Own).Usual(-0.3, 0.3).Of(Blank.Tether, t => t.HookY, (t, v) => t with { HookY = v }),
        Quantity("tether.hook", "height", Dimension.Length, 0, 3, "Above the floor.", "25 mm", required: true).Usual(0.002, 0.2).Of(Blank.Tether, t => t.HookHeight, (t, v) => t with { HookHeight = v }),

        Quantity("tether.anchor", "x", Dimension.Length, -100, 100, "Floor x.", "-0.5 m", required: true).Usual(-5, 5).Of(Blank.Tether, t => t.AnchorX, (t, v) => t with { AnchorX = v }),
        Quantity("tether.anchor", "y", Dimension.Length, -100, 100, "Floor y.", "0 mm", Own).Usual(-5, 5).Of(Blank.Tether, t => t.AnchorY, (t, v) => t with { AnchorY = v }),
        Quantity("tether.anchor", "height", Dimension.Length, 0, 10, "Above the floor.", "25 mm", required: true).Usual(0, 0.5).Of(Blank.Tether, t => t.AnchorHeight, (t, v) => t with { AnchorHeight = v }),

        Quantity("tether.cell", "rate", Dimension.Frequency, 0.1, 1e5, "Readings per second.", "80 Hz", Own).Usual(5, 5000).Of(Blank.Cell, t => t.Rate, (t, v) => t with { Rate = v }),
        Quantity("tether.cell", "filter_time", Dimension.Time, 0, 10, "Time constant of its filter.", "20 ms", "no filter").Usual(0, 0.5).Of(Blank.Cell, t => t.FilterTime, (t, v) => t with { FilterTime = v }),
        Quantity("tether.cell", "resolution", Dimension.Force, 0, 1000, "Readings are rounded to this.", "0.01 N", "no rounding").Usual(0, 0.5).Of(Blank.Cell, t => t.Resolution, (t, v) => t with { Resolution = v }),
        Quantity("tether.cell", "noise", Dimension.Force, 0, 1000, "Standard deviation of its noise.", "0.02 N", Own).Usual(0, 0.5).Of(Blank.Cell, t => t.Noise, (t, v) => t with { Noise = v }),
        Quantity("tether.cell", "tare", Dimension.Force, -1000, 1000, "Constant part of every reading.", "0 N", Own).Usual(-5, 5).Of(Blank.Cell, t => t.Tare, (t, v) => t with { Tare = v }),
        Whole("tether.cell", "seed", 0, int.MaxValue, "Seed of the noise.", "1", Own).Of(Blank.Cell, t => t.Seed, (t, v) => t with { Seed = (ulong)v }),

        Choice("manoeuvre", "kind", [.. ManoeuvreWord.All.Select(w => w.Word)], "What is done.", required: true),
        Number("manoeuvre", "throttle", -1, 1, "Forward command.", "1.0", "1 where the kind drives forward, 0.5 in an arc").Usual(-1, 1),
        Number("manoeuvre", "turn", -1, 1, "Turn command, positive turns left.", "0.5", $"0, required for a {ManoeuvreWord.Names(w => w.Traits.Family == ManoeuvreFamily.Turn)}").Usual(-1, 1),
        Quantity("manoeuvre", "start", Dimension.Time, 0, 600, "When the first command comes.", "0.1 s", "0.1 s").Usual(0, 5),
        Quantity("manoeuvre", "ramp", Dimension.Time, 0, 600, "Time that a command takes to build up.", "0.5 s", "0 s").Usual(0, 5),
        Quantity("manoeuvre", "end", Dimension.Time, 0.01, 600, "When the run ends.", "2 s", $"3 s in a {ManoeuvreWord.Names(w => w.Traits.Family == ManoeuvreFamily.Push)}, else it must be given").Usual(0.3, 30).Apart(Blank.Manoeuvre, t => t.EndTime, (t, v) => t with { EndTime = v }),
        Quantity("manoeuvre", "initial_speed", Dimension.Speed, -50, 50, "Forward speed at the start, wheels rolling along.", "1.5 m/s", Own).Usual(-6, 6).Of(Blank.Manoeuvre, t => t.InitialSpeed, (t, v) => t with { InitialSpeed = v }),
        Quantity("manoeuvre", "heading", Dimension.Angle, -400 * Degree, 400 * Degree, "Heading at the start, positive counter-clockwise from floor x.", "0 deg", Own).Usual(-180 * Degree, 180 * Degree).Of(Blank.Manoeuvre, t => t.InitialHeading, (t, v) => t with { InitialHeading = v }),
        Quantity("manoeuvre", "reverse_at", Dimension.Time, 0, 600, $"In a {ManoeuvreWord.Names(w => w.Second is not null)}: when the second command comes.", "1.2 s").Usual(0, 20),
        Tables("manoeuvre", "points", $"In a {ManoeuvreWord.Names(w => w.Takes("points"))}: the commands in rising time."),
        Table("manoeuvre", "driver", "Who drives it: reaction, steering, easing off."),

        .. Driver("manoeuvre.driver"),

        .. Points("manoeuvre.points"),

        Text("numerics", "method", "Name of the integration method. Drawn matches take ARK3(2) at 0.003 unless method or tolerance is given.", "ARK3(2)", "ARK4(3)"),
        Number("numerics", "tolerance", 1e-12, 0.1, "Relative tolerance.", "0.001", Own).Usual(1e-08, 0.01).Of(Blank.Numerics, t => t.Tolerance, (t, v) => t with { Tolerance = v }),
        Choice("numerics", "draw_precision", ["single", "double"], "Number type of drawn matches. A file that gives method or tolerance gets doubles.", "single"),
        Quantity("numerics", "sample_rate", Dimension.Frequency, 1, 1e5, "History samples per second.", "1 kHz", Own).Usual(100, 20000).Of(Blank.Numerics, t => t.SampleRate, (t, v) => t with { SampleRate = v }),

        Text("opponent", "robot", "The opponent's file, in this file's folder or below.", "robots/badger.toml", required: true),
        new("opponent", "override", KeyKind.Overrides, "Values of the opponent set anew for this scenario, by their path.") { Example = "\"chassis.mass\" = \"1200 g\"" },
        Number("opponent", "throttle", -1, 1, "Forward command, towards the first robot.", "1.0", "1").Usual(-1, 1),
        Number("opponent", "turn", -1, 1, "Turn command, positive turns left.", "0", "0").Usual(-1, 1),
        Quantity("opponent", "start", Dimension.Time, 0, 600, "When its command comes.", "0.1 s", "0.1 s").Usual(0, 5),
        Quantity("opponent", "ramp", Dimension.Time, 0, 600, "Time that its command takes to build up.", "0.2 s", "0 s").Usual(0, 5),
        Quantity("opponent", "initial_speed", Dimension.Speed, -50, 50, "Forward speed at the start.", "0 m/s", Own).Usual(-5, 5).Of(Blank.Manoeuvre, t => t.InitialSpeed, (t, v) => t with { InitialSpeed = v }),
        Quantity("opponent", "heading", Dimension.Angle, -400 * Degree, 400 * Degree, "Heading at the start against looking straight at the first robot.", "5 deg", Own).Usual(-90 * Degree, 90 * Degree).Of(Blank.Manoeuvre, t => t.InitialHeading, (t, v) => t with { InitialHeading = v }),
        Tables("opponent", "points", "Timeline of its commands in rising time, in place of throttle and turn."),
        Table("opponent", "driver", "Who drives it: reaction, steering, easing off."),

        .. Driver("opponent.driver"),

        .. Points("opponent.points"),

        Quantity("shove", "gap", Dimension.Length, 0, 10, "Distance of the two outlines at the start.", "100 mm", Own).Usual(0, 2).Of(Blank.Shove, t => t.Gap, (t, v) => t with { Gap = v }),
        Quantity("shove", "offset", Dimension.Length, -3, 3, "How far the opponent stands to the left of the first robot's centre line.", "0 mm", Own).Usual(-0.3, 0.3).Of(Blank.Shove, t => t.Offset, (t, v) => t with { Offset = v }),
        Quantity("shove", "line", Dimension.Length, 0.01, 100, "A robot pushed back this far behind its start has lost.", "0.5 m", Own).Usual(0.05, 2).Of(Blank.Shove, t => t.Line, (t, v) => t with { Line = v }),
        Quantity("shove", "deciding_ground", Dimension.Length, 0, 10, "Ground gained that wins a shove which ends by time.", "20 mm", Own).Usual(0.005, 0.2).Of(Blank.Shove, t => t.DecidingGround, (t, v) => t with { DecidingGround = v }),

        Quantity("wall", "x1", Dimension.Length, -1000, 1000, "First end, floor x; robots meet the wall from the left of the line to its second end.", "0.3 m", required: true).Usual(-5, 5).Of(Blank.Wall, t => t.X1, (t, v) => t with { X1 = v }),
        Quantity("wall", "y1", Dimension.Length, -1000, 1000, "First end, floor y.", "-0.5 m", required: true).Usual(-5, 5).Of(Blank.Wall, t => t.Y1, (t, v) => t with { Y1 = v }),
        Quantity("wall", "x2", Dimension.Length, -1000, 1000, "Second end, floor x.", "0.3 m", required: true).Usual(-5, 5).Of(Blank.Wall, t => t.X2, (t, v) => t with { X2 = v }),
        Quantity("wall", "y2", Dimension.Length, -1000, 1000, "Second end, floor y.", "0.5 m", required: true).Usual(-5, 5).Of(Blank.Wall, t => t.Y2, (t, v) => t with { Y2 = v }),
        Quantity("wall", "height", Dimension.Length, 1e-3, 10, "Height of its upper edge above the floor.", "100 mm", Own).Usual(0.01, 0.5).Of(Blank.Wall, t => t.Height, (t, v) => t with { Height = v }),
        Quantity("wall", "thickness", Dimension.Length, 1e-3, 10, "Its thickness, to the right of the line.", "100 mm", Own).Usual(0.005, 0.5).Of(Blank.Wall, t => t.Thickness, (t, v) => t with { Thickness = v }),

        Quantity("contact", "stiffness", Dimension.Pressure, 1e4, 1e9, "Force per length of the overlap and per depth.", "1 N/mm2", Own).Usual(1e5, 1e8).Of(Blank.Contact, t => t.Stiffness, (t, v) => t with { Stiffness = v }),
        Number("contact", "restitution", 0.02, 1, "Share of the closing speed that comes back from a bump at 1 m/s; slower bumps give back more.", "0.2", Own).Usual(0.05, 0.9).Of(Blank.Contact, t => t.Restitution, (t, v) => t with { Restitution = v }),
        Number("contact", "friction", 0, 5, "Friction between the bodies, along faces and up a ramp.", "0.3", Own).Usual(0.05, 1.2).Of(Blank.Contact, t => t.Friction, (t, v) => t with { Friction = v }),
        Quantity("contact", "friction_deflection", Dimension.Length, 1e-6, 0.02, "Shear at which that friction slides.", "0.5 mm", Own).Usual(1e-5, 0.003).Of(Blank.Contact, t => t.FrictionDeflection, (t, v) => t with { FrictionDeflection = v }),
        Quantity("contact", "friction_memory", Dimension.Time, 0, 100, "Time in which friction of upright faces on each other forgets a bump; 0: never.", "0.1 s", Own).Usual(0.02, 1).Of(Blank.Contact, t => t.FrictionMemory, (t, v) => t with { FrictionMemory = v }),

        Quantity("tyre_life", "match", Dimension.Time, 0.1, 1e5, "How long this manoeuvre goes on in one match.", "60 s", Own).Usual(1, 600).Of(Blank.TyreLife, t => t.MatchTime, (t, v) => t with { MatchTime = v }),
        Whole("tyre_life", "runs", 1, 1000, "Runs looked at, each starting with the dust of the last.", "10", Own).Usual(1, 100).Of(Blank.TyreLife, t => t.Runs, (t, v) => t with { Runs = (int)v }),
        Whole("tyre_life", "clean_every", 0, 1000, "Runs from one cleaning of the tyres to the next; 0 is never.", "5", Own).Usual(0, 100).Of(Blank.TyreLife, t => t.CleanEvery, (t, v) => t with { CleanEvery = (int)v }),
        Number("tyre_life", "cleaning", 0, 1, "Share of the dust that a cleaning takes off.", "\"90 %\"", Own).Usual(0, 1).Of(Blank.TyreLife, t => t.CleaningShare, (t, v) => t with { CleaningShare = v }),
        Number("tyre_life", "grip_loss", 0.001, 0.99, "Loss of grip whose run is looked for, as a share of the clean tyre's.", "\"20 %\"", Own).Usual(0.02, 0.8).Of(Blank.TyreLife, t => t.GripLoss, (t, v) => t with { GripLoss = v }),

        Text("variant", "name", "What sentences and tables call it.", "dull cover", required: true),
        new("variant", "set", KeyKind.Overrides, "Values of scenario, robot or opponent set anew, by their path; * stands for every name.") { Example = "\"tyre.soft.body_damping\" = \"3 N s/m\"", IsRequired = true },

        Text("measured", "file", "The log as CSV, in this file's folder or below.", "logs/soft-tyre.csv", required: true),
        Text("measured", "force_unit", "Unit of its force where its header names none.", "gf", "by the header"),
        Text("measured", "time_unit", "Unit of its time where its header names none.", "ms", "by the header, else guessed"),
        Quantity("measured", "shift", Dimension.Time, -1e6, 1e6, "Added to its times; without it the first pulls of both are laid on each other where they reach half their sliding force.", "0.4 s").Usual(-600, 600),
    ];

    private static KeyDefinition[] Driver(string section) =>
    [
        Quantity(section, "reaction", Dimension.Time, 0, 60, "From the signal to the hand: all commands come later by this.", "0.2 s", Own).Usual(0, 1).Of(Blank.Driver, t => t.ReactionDelay, (t, v) => t with { ReactionDelay = v }),
        Quantity(section, "steering", Dimension.InverseAngle, 0, 20, "Turn command per angle between the nose and the line of sight to the opponent; 0: nobody steers.", "0.5 1/rad", "0.5 1/rad in a shove, else 0 1/rad").Usual(0, 3).Of(Blank.Driver, t => t.Steering, (t, v) => t with { Steering = v }),
        Number(section, "steering_limit", 0, 1, "Greatest turn command of steering.", "0.3", Own).Usual(0.05, 1).Of(Blank.Driver, t => t.SteeringLimit, (t, v) => t with { SteeringLimit = v }),
        Quantity(section, "steering_rate", Dimension.Frequency, 0.01, 100, "How fast steering changes the turn command at most; 2 Hz goes from 0 to full in half a second.", "2 Hz", Own).Usual(0.5, 20).Of(Blank.Driver, t => t.SteeringRate, (t, v) => t with { SteeringRate = v }),
        Quantity(section, "dead_time", Dimension.Time, 0.02, 2, "From what the driver sees to the stick, while steering.", "0.2 s", Own).Usual(0.1, 0.5).Of(Blank.Driver, t => t.DeadTime, (t, v) => t with { DeadTime = v }),
        Number(section, "ease_to", 0, 1, "Share of the commanded throttle that a driver keeps who gains no ground; 1: the driver never eases off.", "\"60 %\"", Own).Usual(0.2, 1).Of(Blank.Driver, t => t.EaseTo, (t, v) => t with { EaseTo = v }),
        Quantity(section, "ease_after", Dimension.Time, 0.05, 60, "Time without ground gained after which the driver eases off.", "0.5 s", Own).Usual(0.2, 3).Of(Blank.Driver, t => t.EaseAfter, (t, v) => t with { EaseAfter = v }),
        Quantity(section, "ease_rate", Dimension.Frequency, 0.01, 100, "How fast the throttle goes there; 1 Hz takes a second from full to none.", "1 Hz", Own).Usual(0.2, 10).Of(Blank.Driver, t => t.EaseRate, (t, v) => t with { EaseRate = v }),
        Quantity(section, "heading_hold", Dimension.InverseAngle, 0, 100, "Turn command per angle off the heading at the start, by the controller's own aid; 0 is off.", "2 1/rad", Own).Usual(0, 20).Of(Blank.Driver, t => t.HeadingHold, (t, v) => t with { HeadingHold = v }),
        Quantity(section, "heading_lag", Dimension.Time, 1e-3, 10, "Time constant of heading hold.", "50 ms", Own).Usual(0.005, 1).Of(Blank.Driver, t => t.HeadingLag, (t, v) => t with { HeadingLag = v }),
    ];

    private static KeyDefinition[] Points(string section) =>
    [
        Quantity(section, "time", Dimension.Time, 0, 600, "When.", "0.5 s", required: true).Usual(0, 30).Of(Blank.Point, t => t.Time, (t, v) => t with { Time = v }),
        Number(section, "throttle", -1, 1, "Forward command.", "1.0", Own).Usual(-1, 1).Of(Blank.Point, t => t.Throttle, (t, v) => t with { Throttle = v }),
        Number(section, "turn", -1, 1, "Turn command, positive turns left.", "0.0", Own).Usual(-1, 1).Of(Blank.Point, t => t.Turn, (t, v) => t with { Turn = v }),
        Flag(section, "ramp", "Reached by a straight line from the point before.", Own).OfFlag(Blank.Point, t => t.Ramp, (t, v) => t with { Ramp = v }),
    ];
}
