using System.Text;
namespace PushSim.Scenarios.Starters;

/// <summary>The commented robot file of a design: parts from the shelf, sizes scaled.</summary>
public sealed class StarterRobot(StarterDesign design, bool isLocked)
{
    private readonly StringBuilder _text = new();

    /// <summary>The file's text.</summary>
    public string Text()
    {
        double s = design.Scale;
        Line($"""
            #:schema ./pushsim-robot.schema.json
            # A starter robot of the size usual for its mass, with parts from the shelf (pushsim shelf). The sizes are invented: weigh, measure and
            # read data sheets, and put your own in. Every quantity is a text with its unit; "0.9 ± 0.1" is a value with its tolerance. A value beside
            # shelf = "..." stands in place of the shelf's. Distances: x forward, y left, from a point of your choice in the middle of the robot.
            # What a key means, its range and default: pushsim explain KEY
            name = "{design.Name}"

            [chassis]
            mass = "{Grams(design.Mass)}"             # the whole robot, ready to drive
            length = "{Mm(160 * s)}"
            width = "{Mm(120 * s)}"
            height = "{Mm(45 * s)}"
            # Hang it from two corners, or balance it on an edge. Height is above the floor.
            centre_of_mass = {"{"} x = "0 mm", y = "0 mm", height = "{Mm(25 * s)}" {"}"}

            [[tyre]]
            name = "cover"
            shelf = "{design.Tyre.Name}"
            width = "{Mm(18 * s)}"
            tread_thickness = "{Mm(6 * s)}"

            """);
        Wheels(s);
        Line("[[motor]]\nname = \"motor\"");
        Line(design.Shop?.Lines(design.Motor.Name, design.NoLoad, design.RatioOfShop).TrimEnd() ?? $"shelf = \"{design.Motor.Name}\"");
        if (design.Ratio is double ratio)
        {
            Line($"gear_ratio = {Text($"{ratio:0}")}                # for about 2 m/s: the shelf's motor has no gears\ngear_efficiency = \"80 %\"");
        }

        Line("");
        Drives();
        Controllers();
        Line($"""
            [battery]
            shelf = "{design.Cell.Name}"
            cells = "{design.Cells}S"
            capacity = "{Text($"{1000.0 * design.Capacity:0}")} mAh"
            """);
        return _text.ToString();
    }

    private void Wheels(double s)
    {
        if (design.Wheels == 2)
        {
            Line($"""
                # The ball in front carries weight and does not drive.
                [[tyre]]
                name = "ball"
                shelf = "printed PLA"
                width = "{Mm(Math.Max(4.0, 4.0 * s))}"
                tread_thickness = "{Mm(2 * s)}"

                [[wheel]]
                name = "ball"
                x = "{Mm(60 * s)}"
                y = "0 mm"
                diameter = "{Mm(Math.Max(6.0, 12.0 * s))}"
                tyre = "ball"
                mass = "{Grams(Math.Max(0.002, 0.003 * s * s * s))}"
                skid = true

                """);
        }

        double mass = 0.024 * Math.Pow(design.Diameter / 0.050, 2) * s;
        foreach ((string name, double x, double y) in Places())
        {
            Line($"""
                [[wheel]]
                name = "{name}"
                x = "{Mm(x * s)}"
                y = "{Mm(y * s)}"
                diameter = "{Mm(1000 * design.Diameter)}"
                tyre = "cover"
                mass = "{Grams(Math.Max(0.002, mass))}"

                """);
        }
    }

    private IEnumerable<(string Name, double X, double Y)> Places()
    {
        (string Name, double X)[] rows = design.Wheels switch
        {
            2 => [("", -30.0)],
            4 => [("front ", 50.0), ("rear ", -50.0)],
            6 => [("front ", 50.0), ("middle ", 0.0), ("rear ", -50.0)],
            _ => [("front ", 54.0), ("second ", 18.0), ("third ", -18.0), ("rear ", -54.0)],
        };
        return rows.SelectMany(r => new[] { (r.Name + "left", r.X, 70.0), (r.Name + "right", r.X, -70.0) });
    }

    private void Drives()
    {
        double torque = 0.5 * Math.Pow(design.Scale, 4);
        Line(design.HasBelt ? "# A belt joins the wheels of a side, and two motors turn them." : "# What turns together: here each wheel has its own motor. With a belt, name two wheels in one drive.");
        foreach ((string name, string[] wheels, int motors) in DriveList())
        {
            Line($"""
                [[drive]]
                name = "{name}"
                wheels = [{Names(wheels)}]
                motors = [{Names(Enumerable.Repeat("motor", motors))}]
                """);
            Line(isLocked ? $"hold_torque = \"{Text($"{torque:G3}")} N m\"\n" : "");
        }
    }

    private IEnumerable<(string Name, string[] Wheels, int Motors)> DriveList() => design.HasBelt
        ? new[] { "left", "right" }.Select(side => (side, Places().Select(p => p.Name).Where(n => n.EndsWith(side, StringComparison.Ordinal)).ToArray(), design.MotorsOfSide))
        : Places().Select(p => (p.Name, new[] { p.Name }, 1));

    private void Controllers()
    {
        Line(design.IsBrushless ? "# A brushless motor needs a controller of its own." : "# One controller a side; its limit is that of its motors together.");
        foreach (string side in new[] { "left", "right" })
        {
            string[] motors = [.. DriveList().Where(d => d.Name.EndsWith(side, StringComparison.Ordinal)).SelectMany(d => d.Motors == 1 ? [d.Name] : Enumerable.Range(1, d.Motors).Select(k => $"{d.Name}/{k}"))];
            if (!design.IsBrushless)
            {
                Controller(side, side, motors);
                continue;
            }

            foreach (string motor in motors)
            {
                Controller(motor.Replace('/', ' '), side, [motor]);
            }
        }
    }

    private void Controller(string name, string side, string[] motors)
    {
        Line($"""
            [[controller]]
            name = "{name}"
            side = "{side}"
            drives = [{Names(motors)}]
            shelf = "{design.Controller.Name}"
            """);
        Line((motors.Length > 1 ? "wiring = \"parallel\"\n" : "") + $"zero_command = \"{(isLocked ? "locked" : "brake")}\"\n");
    }

    // the files have the same bytes on every system
    private void Line(string text) => _text.Append(text.ReplaceLineEndings("\n")).Append('\n');

    private static string Names(IEnumerable<string> names) => string.Join(", ", names.Select(n => $"\"{n}\""));

    private static string Mm(double mm) => Text($"{(Math.Abs(mm) < 20.0 ? Math.Round(mm, 1) : Math.Round(mm)):0.#} mm");

    private static string Grams(double kg) => Text($"{1000.0 * kg:G3} g") is var t && t.Contains('E', StringComparison.Ordinal) ? Text($"{1000.0 * kg:0} g") : t;

    private static string Text(FormattableString text) => text.ToString(CultureInfo.InvariantCulture);
}
