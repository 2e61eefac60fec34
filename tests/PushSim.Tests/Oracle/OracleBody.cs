using PushSim.Contact;

namespace PushSim.Tests.Oracle;

/// <summary>
/// What touches: a robot's outline as convex solids, an upright prism and a wedge for each ramp, or a wall's. Places and velocities in the
/// first robot's floor frame; an opponent's own frame is that one turned by half a turn.
/// </summary>
internal sealed class OracleBody
{
    private readonly OracleRobot? _robot;
    private readonly double _sign;

    /// <summary>Width of a wheel [m].</summary>
    public double WidthOf(PushSim.Tyres.WheelSettings wheel) => _robot!.Settings.WidthOf(wheel);

    /// <param name="robot">The robot.</param>
    /// <param name="turned">True for an opponent.</param>
    public OracleBody(OracleRobot robot, bool turned)
    {
        OutlineSettings outline = robot.Settings.OutlineOrBox;
        (double cx, double cy) = (robot.Settings.Chassis.CentreOfMassX, robot.Settings.Chassis.CentreOfMassY);
        Solids = OracleSolid.Of([.. outline.Corners.Select(c => (c.X - cx, c.Y - cy))], outline.Faces, robot.Height);
        (_robot, _sign) = (robot, turned ? -1.0 : 1.0);
    }

    public OracleBody(WallSettings wall)
    {
        Solids = OracleSolid.Of([.. wall.Corners().Select(c => (c.X, c.Y))], [.. wall.Corners().Select(_ => new FaceSettings(0.0, wall.Height))], 0.0);
        _sign = 1.0;
    }

    public IReadOnlyList<OracleSolid> Solids { get; }

    public IReadOnlyList<PushSim.Tyres.WheelSettings> Wheels => _robot?.Settings.Wheels ?? [];

    /// <summary>Hub and axle of a wheel, from right to left.</summary>
    public (Vector Hub, Vector Axle) Wheel(int index)
    {
        OracleWheel w = _robot!.Wheels[index];
        return (Turn(_robot.Point(new Vector(w.X, w.Y, w.Radius + w.Rise - _robot.Height))), Turn(_robot.Direction(new Vector(0.0, 1.0, 0.0))));
    }

    /// <summary>Turning of a wheel against the body.</summary>
    public double Spin(int wheel) => _robot!.Spin(wheel);

    /// <summary>Lets a moment about a wheel's axle act for a step.</summary>
    public void Turn(int wheel, double h, double torque) => _robot!.TurnWheel(wheel, h, torque);

    /// <summary>Corners and normals from the present pose.</summary>
    public void Place()
    {
        Vector Of(double x, double y, double z) => Turn(_robot is null ? new(x, y, z) : _robot.Direction(new(x, y, z)));
        Vector at = _robot is null ? default : Turn(_robot.Point(default));
        (Vector x, Vector y, Vector z) = (Of(1.0, 0.0, 0.0), Of(0.0, 1.0, 0.0), Of(0.0, 0.0, 1.0));
        foreach (OracleSolid solid in Solids)
        {
            solid.Place(at, x, y, z);
        }
    }

    public Vector Velocity(Vector at) => _robot is null ? default : Turn(_robot.Velocity(Turn(at)));

    public void Push(Vector at, Vector force) => _robot?.Push(Turn(at), Turn(force));

    private Vector Turn(Vector v) => new(_sign * v.X, _sign * v.Y, v.Z);
}
