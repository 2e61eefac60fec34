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
        Quantity("opponent", "initial_speed", Dimension.Speed, -50, 50, "Forward speed at the start.", "0 m/s", "0 m/s").Usual(-5, 5),
        Quantity("opponent", "heading", Dimension.Angle, -400 * Degree, 400 * Degree, "Heading at the start against looking straight at the first robot.", "5 deg", "0 deg").Usual(-90 * Degree, 90 * Degree),
        Tables("opponent", "points", "Timeline of its commands in rising time, in place of throttle and turn."),
        Quantity("opponent.points", "time", Dimension.Time, 0, 600, "When.", "0.5 s", required: true).Usual(0, 30),
        Number("opponent.points", "throttle", -1, 1, "Forward command.", "1.0", "0").Usual(-1, 1),
        Number("opponent.points", "turn", -1, 1, "Turn command, positive turns left.", "0.0", "0").Usual(-1, 1),
        Flag("opponent.points", "ramp", "Reached by a straight line from the point before.", "false"),

        .. Driving("manoeuvre"),

        Quantity("shove", "gap", Dimension.Length, 0, 10, "Distance of the two outlines at the start.", "100 mm", "100 mm").Usual(0, 2),
        Quantity("shove", "offset", Dimension.Length, -3, 3, "How far the opponent stands to the left of the first robot's centre line.", "0 mm", "0 mm").Usual(-0.3, 0.3),
        Quantity("shove", "line", Dimension.Length, 0.01, 100, "A robot pushed back this far behind its start has lost.", "0.5 m", "0.5 m").Usual(0.05, 2),
        Quantity("shove", "deciding_ground", Dimension.Length, 0, 10, "Ground gained that wins a shove which ends by time.", "20 mm", "20 mm").Usual(0.005, 0.2),

        Quantity("wall", "x1", Dimension.Length, -1000, 1000, "First end, floor x; robots meet the wall from the left of the line to its second end.", "0.3 m", required: true).Usual(-5, 5),
        Quantity("wall", "y1", Dimension.Length, -1000, 1000, "First end, floor y.", "-0.5 m", required: true).Usual(-5, 5),
        Quantity("wall", "x2", Dimension.Length, -1000, 1000, "Second end, floor x.", "0.3 m", required: true).Usual(-5, 5),
        Quantity("wall", "y2", Dimension.Length, -1000, 1000, "Second end, floor y.", "0.5 m", required: true).Usual(-5, 5),
        Quantity("wall", "height", Dimension.Length, 1e-3, 10, "Height of its upper edge above the floor.", "100 mm", "100 mm").Usual(0.01, 0.5),
        Quantity("wall", "thickness", Dimension.Length, 1e-3, 10, "Its thickness, to the right of the line.", "100 mm", "100 mm").Usual(0.005, 0.5),

        Quantity("contact", "stiffness", Dimension.Pressure, 1e4, 1e9, "Force per length of the overlap and per depth.", "1 N/mm2", "1 N/mm2").Usual(1e5, 1e8),
        Quantity("contact", "damping", Dimension.InverseSpeed, 0, 100, "Damping as share of the force per closing speed.", "5 s/m", "5 s/m").Usual(0.2, 20),
        Number("contact", "friction", 0, 5, "Friction between the bodies, along faces and up a ramp.", "0.3", "0.3").Usual(0.05, 1.2),
        Quantity("contact", "friction_deflection", Dimension.Length, 1e-6, 0.02, "Shear at which that friction slides.", "0.5 mm", "0.5 mm").Usual(1e-5, 0.003),
    ];

    private static KeyDefinition[] Driving(string section) =>
    [
        Quantity(section, "reaction_delay", Dimension.Time, 0, 60, "All commands come later by this.", "0.2 s", "0 s").Usual(0, 1),
        Quantity(section, "heading_hold", Dimension.InverseAngle, 0, 100, "Turn command per angle off the heading at the start; 0 is off.", "2 1/rad", "0 1/rad").Usual(0, 20),
        Quantity(section, "heading_lag", Dimension.Time, 1e-3, 10, "Time constant of heading hold.", "50 ms", "50 ms").Usual(0.005, 1),
    ];
}
