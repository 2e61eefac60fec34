using PushSim.Contact;
using PushSim.Simulation;

namespace PushSim.Plotting.Report;

/// <summary>A robot's body seen from its right: between clearance and top, with its ramps at nose and tail.</summary>
public static class SideOutline
{
    /// <summary>Corners (x forward, z up from the floor) from the plan's origin, from nose to tail and back [m].</summary>
    public static IReadOnlyList<(double X, double Z)> Of(RobotSettings robot)
    {
        IReadOnlyList<(double X, double Y)> corners = robot.OutlineOrBox.Corners;
        return [.. Nose(robot, corners.Max(c => c.X), 1), .. Nose(robot, corners.Min(c => c.X), -1).Reverse()];
    }

    /// <summary>The front alone, the lower end first [m].</summary>
    public static IReadOnlyList<(double X, double Z)> Front(RobotSettings robot) => [.. Nose(robot, robot.OutlineOrBox.Corners.Max(c => c.X), 1)];

    private static IEnumerable<(double X, double Z)> Nose(RobotSettings robot, double x, int way)
    {
        IReadOnlyList<(double X, double Y)> corners = robot.OutlineOrBox.Corners;
        IReadOnlyList<FaceSettings> faces = robot.OutlineOrBox.Faces;
        double low = faces.Min(f => f.LowerEdge);
        double top = Math.Max(robot.Chassis.Height, faces.Max(f => f.UpperEdge));
        int face = Enumerable.Range(0, corners.Count).FirstOrDefault(i => Math.Abs(corners[i].X - x) < 1e-6 && Math.Abs(corners[(i + 1) % corners.Count].X - x) < 1e-6, -1);
        if (face < 0 || faces[face].RampAngle is not double slope)
        {
            return [(x, low), (x, top)];
        }

        FaceSettings ramp = faces[face];
        double behind = x - (way * (ramp.UpperEdge - ramp.LowerEdge) / Math.Tan(slope));
        return [(behind, low), (x, ramp.LowerEdge), (behind, ramp.UpperEdge), (behind, top)];
    }
}
