namespace PushSim.Simulation;

/// <summary>Where a robot's centre of mass stands at the start, in its own floor frame.</summary>
/// <param name="X">Floor x of the centre of mass [m].</param>
/// <param name="Y">Floor y of the centre of mass [m].</param>
/// <param name="Heading">Heading, positive counter-clockwise from floor x [rad].</param>
public readonly record struct StartPose(double X, double Y, double Heading)
{
    /// <summary>Start of one of two robots: half the gap and half the offset from the middle between them, by the same numbers for both; alone
    /// it starts in the origin.</summary>
    /// <param name="robot">The robot.</param>
    /// <param name="heading">Its heading in its own frame [rad].</param>
    /// <param name="shove">Gap and offset; null for a robot alone.</param>
    public static StartPose Of(RobotSettings robot, double heading, ShoveSettings? shove)
    {
        if (shove is null)
        {
            return new StartPose(0.0, 0.0, heading);
        }

        (double sine, double cosine) = Math.SinCos(heading);
        double reach = Math.Max(
            robot.OutlineOrBox.Corners.Max(c => (cosine * c.X) - (sine * c.Y)),
            robot.Wheels.Max(w => (cosine * w.X) - (sine * w.Y) + (Math.Abs(cosine) * w.Radius) + (0.5 * Math.Abs(sine) * robot.WidthOf(w))));
        double x = robot.Chassis.CentreOfMassX;
        double y = robot.Chassis.CentreOfMassY;
        return new StartPose(
            (-0.5 * shove.Gap) - reach + ((cosine * x) - (sine * y)),
            (-0.5 * shove.Offset) + ((sine * x) + (cosine * y)),
            heading);
    }

    /// <summary>Corners of the robot's outline in its own floor frame [m].</summary>
    public (double X, double Y)[] Corners(RobotSettings robot)
    {
        (double sine, double cosine) = Math.SinCos(Heading);
        (double x0, double y0) = (X, Y);
        return [.. robot.OutlineOrBox.Corners.Select(c =>
        {
            double x = c.X - robot.Chassis.CentreOfMassX;
            double y = c.Y - robot.Chassis.CentreOfMassY;
            return (x0 + (cosine * x) - (sine * y), y0 + (sine * x) + (cosine * y));
        })];
    }
}
