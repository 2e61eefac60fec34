using PushSim.Scenarios.Units;
using static PushSim.Scenarios.Keys.KeyTable;

namespace PushSim.Scenarios.Keys;

/// <summary>The keys of what touches: outlines in robot files; opponent, shove, walls and contact in scenarios.</summary>
internal static class ShoveKeys
{
    public static readonly KeyDefinition[] All =
    [
        Quantity("outline", "clearance", Dimension.Length, 0, 1, "Height of the lower edge of all upright faces above the floor.", "4 mm", "4 mm").Usual(0, 0.03),
        Quantity("outline", "top", Dimension.Length, 1e-3, 3, "Height of the upper edge of all faces.", "45 mm", "the height of the body box").Usual(0.015, 0.3),
        Tables("outline", "corner", "3 to 8 corners from above, convex, counter-clockwise; without them the body box."),
        Tables("outline", "ramp", "A face that slopes, to get under the other."),

        Quantity("outline.corner", "x", Dimension.Length, -3, 3, "Forward of the plan's origin.", "85 mm", required: true).Usual(-0.4, 0.4),
        Quantity("outline.corner", "y", Dimension.Length, -3, 3, "Left of the plan's origin.", "60 mm", required: true).Usual(-0.4, 0.4),

        Choice("outline.ramp", "side", ["front", "rear", "left", "right"], "The face that looks most to this side.", required: true),
        Quantity("outline.ramp", "tip", Dimension.Length, 0, 1, "Height of its tip above the floor.", "1 mm", required: true).Usual(0, 0.01),
        Quantity("outline.ramp", "angle", Dimension.Angle, 2.5 * Degree, 86 * Degree, "Its angle from the floor.", "25 deg", required: true).Usual(10 * Degree, 70 * Degree),
        Quantity("outline.ramp", "top", Dimension.Length, 1e-3, 3, "Height at which its slope ends.", "40 mm", "the outline's top").Usual(0.005, 0.2),

        Table("scenario", "opponent", "A second robot, facing the first."),
        Table("scenario", "shove", "How a shove starts and who wins it."),
        Tables("scenario", "wall", "A wall that stands on the floor."),
        Table("scenario", "contact", "What contacts are made of."),

        Text("opponent", "robot", "The opponent's file, in this file's folder or below.", "robots/badger.toml", required: true),
        new("opponent", "override", KeyKind.Overrides, "Values of the opponent set anew for this scenario, by their path.") { Example = "\"chassis.mass\" = \"1200 g\"" },
        .. Driving("opponent"),
        Number("opponent", "throttle", -1, 1, "Forward command, towards the first robot.", "1.0", "1").Usual(-1, 1),
        Number("opponent", "turn", -1, 1, "Turn command, positive turns left.", "0", "0").Usual(-1, 1),
        Quantity("opponent", "start", Dimension.Time, 0, 600, "When its command comes.", "0.1 s", "0.1 s").Usual(0, 5),
        Quantity("opponent", "ramp", Dimension.Time, 0, 600, "Time that its command takes to build up.", "0.2 s", "0 s").Usual(0, 5),
        Quantity("opponent", "initial_speed", Dimension.Speed, -50, 50, "Forward speed at the start.", "0 m/s", Own).Usual(-5, 5).Of(Blank.Manoeuvre, t => t.InitialSpeed, (t, v) => t with { InitialSpeed = v }),
        Quantity("opponent", "heading", Dimension.Angle, -400 * Degree, 400 * Degree, "Heading at the start against looking straight at the first robot.", "5 deg", Own).Usual(-90 * Degree, 90 * Degree).Of(Blank.Manoeuvre, t => t.InitialHeading, (t, v) => t with { InitialHeading = v }),
        Tables("opponent", "points", "Timeline of its commands in rising time, in place of throttle and turn."),
        Quantity("opponent.points", "time", Dimension.Time, 0, 600, "When.", "0.5 s", required: true).Usual(0, 30).Of(Blank.Point, t => t.Time, (t, v) => t with { Time = v }),
        Number("opponent.points", "throttle", -1, 1, "Forward command.", "1.0", Own).Usual(-1, 1).Of(Blank.Point, t => t.Throttle, (t, v) => t with { Throttle = v }),
        Number("opponent.points", "turn", -1, 1, "Turn command, positive turns left.", "0.0", Own).Usual(-1, 1).Of(Blank.Point, t => t.Turn, (t, v) => t with { Turn = v }),
        Flag("opponent.points", "ramp", "Reached by a straight line from the point before.", Own).OfFlag(Blank.Point, t => t.Ramp, (t, v) => t with { Ramp = v }),

        .. Driving("manoeuvre"),

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
        Quantity("contact", "damping", Dimension.InverseSpeed, 0, 100, "Damping as share of the force per closing speed.", "5 s/m", Own).Usual(0.2, 20).Of(Blank.Contact, t => t.Damping, (t, v) => t with { Damping = v }),
        Number("contact", "friction", 0, 5, "Friction between the bodies, along faces and up a ramp.", "0.3", Own).Usual(0.05, 1.2).Of(Blank.Contact, t => t.Friction, (t, v) => t with { Friction = v }),
        Quantity("contact", "friction_deflection", Dimension.Length, 1e-6, 0.02, "Shear at which that friction slides.", "0.5 mm", Own).Usual(1e-5, 0.003).Of(Blank.Contact, t => t.FrictionDeflection, (t, v) => t with { FrictionDeflection = v }),
    ];

    private static KeyDefinition[] Driving(string section) =>
    [
        Quantity(section, "reaction_delay", Dimension.Time, 0, 60, "All commands come later by this.", "0.2 s", Own).Usual(0, 1).Of(Blank.Driver, t => t.ReactionDelay, (t, v) => t with { ReactionDelay = v }),
        Quantity(section, "heading_hold", Dimension.InverseAngle, 0, 100, "Turn command per angle off the heading at the start; 0 is off.", "2 1/rad", Own).Usual(0, 20).Of(Blank.Driver, t => t.HeadingHold, (t, v) => t with { HeadingHold = v }),
        Quantity(section, "heading_lag", Dimension.Time, 1e-3, 10, "Time constant of heading hold.", "50 ms", Own).Usual(0.005, 1).Of(Blank.Driver, t => t.HeadingLag, (t, v) => t with { HeadingLag = v }),
    ];
}
