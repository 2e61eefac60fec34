using PushSim.Plotting.Report;

namespace PushSim.Workbench.Designs;

/// <summary>A robot's shape to scale. Sizes that no file knows (tyre widths, motors, pack, controllers) are drawn at usual ones, since the drawing is there to be clicked.</summary>
internal static class RobotDrawing
{
    private const double Mm = 1e3;

    // Half a tyre's width in radii, as the replay draws it [1].
    private const double TyreWidth = 0.64;

    // Usual small parts, as shares of the body [1].
    private const double PackLength = 0.3;
    private const double PackWidth = 0.22;
    private const double ControllerLength = 0.14;
    private const double ControllerWidth = 0.12;

    /// <summary>The drawing.</summary>
    public static DrawingMessage Of(RobotSettings robot)
    {
        (double x0, double y0) = (robot.Chassis.CentreOfMassX, robot.Chassis.CentreOfMassY);
        IReadOnlyList<(double X, double Y)> corners = robot.OutlineOrBox.Corners;
        double front = corners.Max(c => c.X);
        (double length, double width) = (front - corners.Min(c => c.X), corners.Max(c => c.Y) - corners.Min(c => c.Y));
        BoxMessage[] wheels = [.. robot.Wheels.Select(w => new BoxMessage(Place(w.X - x0), Place(w.Y - y0), Place(2.0 * w.Radius), Place(TyreWidth * w.Radius)))];
        int[] driven = [.. robot.DrivenWheels.Distinct()];
        double motor = 0.3 * width;
        BoxMessage[] motors = [.. driven.Select(i => robot.Wheels[i]).Select(w => new BoxMessage(Place(w.X - x0), Place((0.5 * Math.Sign(w.Y) * (width - motor)) - y0), Place(0.9 * w.Radius), Place(motor)))];
        BoxMessage? pack = robot.Battery is null ? null : new BoxMessage(Place(-x0), Place(-y0), Place(PackLength * length), Place(PackWidth * width));
        BoxMessage[] controllers =
        [
            .. robot.Controllers.Select((c, i) => new BoxMessage(
                Place((-0.33 * length) - x0), Place(((robot.Controllers.Count > 1 ? 0.18 * (1 - (2.0 * i / (robot.Controllers.Count - 1))) : 0.0) * width) - y0), Place(ControllerLength * length), Place(ControllerWidth * width))),
        ];
        double[][] nose = [.. corners.Where(c => c.X > front - 1e-6).OrderBy(c => c.Y).Select(c => new[] { Place(c.X - x0), Place(c.Y - y0) })];
        double low = robot.OutlineOrBox.Faces.Min(f => f.LowerEdge);
        double high = Math.Max(robot.Chassis.Height, low + 0.01);
        return new DrawingMessage(
            new TopMessage([.. corners.Select(c => new[] { Place(c.X - x0), Place(c.Y - y0) })], wheels, motors, pack, controllers, nose, [0.0, 0.0]),
            new SideMessage(
                [.. SideOutline.Of(robot).Select(c => new[] { Place(c.X - x0), Place(c.Z) })],
                [.. robot.Wheels.DistinctBy(w => (Place(w.X), Place(w.Radius))).Select(w => new DiscMessage(Place(w.X - x0), Place(w.Radius + w.Height), Place(w.Radius)))],
                [.. driven.Select(i => robot.Wheels[i]).DistinctBy(w => Place(w.X)).Select(w => new DiscMessage(Place(w.X - x0), Place(w.Radius + w.Height), Place(0.45 * w.Radius)))],
                pack is null ? null : new SideBoxMessage(Place(-x0), Place(0.5 * (low + high)), Place(PackLength * length), Place(0.35 * (high - low))),
                [.. SideOutline.Front(robot).Select(c => new[] { Place(c.X - x0), Place(c.Z) })],
                [0.0, Place(robot.Chassis.CentreOfMassHeight)]));
    }

    private static double Place(double metre) => Math.Round(metre * Mm, 2);
}
