using PushSim.Contact;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Scenes;

/// <summary>The walls of a scenario, and that no robot starts inside one.</summary>
internal static class WallReader
{
    public static WallSettings Read(Section s)
    {
        WallSettings wall = s.Fill(Blank.Wall);
        if (double.Hypot(wall.X2 - wall.X1, wall.Y2 - wall.Y1) < 1e-3)
        {
            s.Context.Error(s.Place, "this wall has no length", "its ends must be apart");
        }

        return wall;
    }

    /// <summary>Complains about every robot that would start inside a wall.</summary>
    public static void Check(IReadOnlyList<Section> sections, ScenarioSettings scenario)
    {
        ShoveSettings? shove = scenario.Opponent is null ? null : scenario.Shove;
        CheckRobot(scenario.Robot, scenario.Manoeuvre, 1.0);
        if (scenario.Opponent is OpponentSettings other)
        {
            CheckRobot(other.Robot, other.Manoeuvre, -1.0);
        }

        void CheckRobot(RobotSettings robot, ManoeuvreSettings manoeuvre, double frame)
        {
            (double X, double Y)[] corners = [.. StartPose.Of(robot, manoeuvre.InitialHeading, shove).Corners(robot).Select(c => (frame * c.X, frame * c.Y))];
            for (int i = 0; i < sections.Count; i++)
            {
                if (!AreApart(corners, scenario.Walls[i].Corners()))
                {
                    sections[i].Context.Error(sections[i].Place, $"robot \"{robot.Name}\" starts inside this wall", "move the wall; the robot starts with its centre of mass in the origin, in a shove half the gap beside it");
                }
            }
        }
    }

    // Two convex outlines are apart if a line along one of their edges parts them.
    private static bool AreApart((double X, double Y)[] a, (double X, double Y)[] b) => HasParting(a, b) || HasParting(b, a);

    private static bool HasParting((double X, double Y)[] a, (double X, double Y)[] b)
    {
        for (int i = 0; i < a.Length; i++)
        {
            (double X, double Y) p = a[i];
            (double X, double Y) q = a[(i + 1) % a.Length];
            if (b.All(c => ((q.X - p.X) * (c.Y - p.Y)) - ((q.Y - p.Y) * (c.X - p.X)) <= 0.0))
            {
                return true;
            }
        }

        return false;
    }
}
