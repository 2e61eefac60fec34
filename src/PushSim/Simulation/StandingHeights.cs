using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Surroundings;

namespace PushSim.Simulation;

/// <summary>
/// Heights of an outline as a builder measures them on the robot that stands on a level floor, and as the body has them. The body's are counted from level on tyres that just touch; standing, it has sunk into
/// its tyres by the static balance (<see cref="StaticState"/>), so what is measured under a point x, y is less by the sink there: s = -(heave - pitch x + roll y).
/// </summary>
public static class StandingHeights
{
    /// <summary>The robot with the heights of its body, from heights measured on the standing robot: of upright faces by the sink in the middle of the outline, of a ramp's tip by that under the tip.</summary>
    /// <param name="robot">The robot, heights of its outline as measured; unchanged where it does not stand.</param>
    public static RobotSettings OfBody(RobotSettings robot) => Moved(robot, 1.0);

    /// <summary>The robot with the heights that a builder measures on it as it stands, from those of its body: the way back from <see cref="OfBody"/>.</summary>
    /// <param name="robot">The robot; unchanged where it does not stand.</param>
    public static RobotSettings AsMeasured(RobotSettings robot) => Moved(robot, -1.0);

    private static RobotSettings Moved(RobotSettings robot, double sign)
    {
        if (Standing(robot) is not { } at)
        {
            return robot;
        }

        OutlineSettings outline = robot.OutlineOrBox;
        double middle = Sink(robot, at, (outline.Corners.Min(c => c.X) + outline.Corners.Max(c => c.X)) / 2.0, (outline.Corners.Min(c => c.Y) + outline.Corners.Max(c => c.Y)) / 2.0);
        FaceSettings[] faces =
        [
            .. outline.Faces.Select((f, i) => Raised(f, sign * (f.RampAngle is null ? middle : SinkOfFace(robot, outline, at, i)))),
        ];
        return robot with { Outline = outline with { Faces = faces } };
    }

    /// <summary>How much the middle of each face's lower edge sinks as the robot is set down on a level floor [m]; empty where it does not stand.</summary>
    /// <param name="robot">The robot, heights of its outline those of the body.</param>
    public static double[] Sinks(RobotSettings robot) => Standing(robot) is not { } at ? [] : [.. robot.OutlineOrBox.Faces.Select((_, i) => SinkOfFace(robot, robot.OutlineOrBox, at, i))];

    private static (double Heave, double Pitch, double Roll)? Standing(RobotSettings robot) => StaticState.OnLevelFloor(robot, new FloorSettings().Gravity);

    private static FaceSettings Raised(FaceSettings f, double by) => f with { LowerEdge = f.LowerEdge + by, UpperEdge = f.UpperEdge + by };

    private static double SinkOfFace(RobotSettings robot, OutlineSettings outline, (double Heave, double Pitch, double Roll) at, int face)
    {
        (double X, double Y) a = outline.Corners[face];
        (double X, double Y) b = outline.Corners[(face + 1) % outline.Corners.Count];
        return Sink(robot, at, (a.X + b.X) / 2.0, (a.Y + b.Y) / 2.0);
    }

    private static double Sink(RobotSettings robot, (double Heave, double Pitch, double Roll) at, double x, double y)
    {
        ChassisSettings c = robot.Chassis;
        return -(at.Heave - (at.Pitch * (x - c.CentreOfMassX)) + (at.Roll * (y - c.CentreOfMassY)));
    }
}
