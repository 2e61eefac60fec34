using PushSim.Contact;

namespace PushSim.Tests.Oracle;

/// <summary>A convex outline in the floor's axes: of a robot, which moves, or of a wall, which does not.</summary>
internal sealed class OracleBody
{
    private readonly double[] _ownX;
    private readonly double[] _ownY;
    private readonly OracleRobot? _robot;
    private readonly double _sign;
    private double _cos = 1.0;
    private double _sin;

    /// <param name="robot">The robot.</param>
    /// <param name="turned">True for an opponent: its own floor frame is turned by half a turn.</param>
    public OracleBody(OracleRobot robot, bool turned)
    {
        OutlineSettings outline = robot.Settings.OutlineOrBox;
        _ownX = [.. outline.Corners.Select(c => c.X - robot.Settings.Chassis.CentreOfMassX)];
        _ownY = [.. outline.Corners.Select(c => c.Y - robot.Settings.Chassis.CentreOfMassY)];
        Faces = [.. outline.Faces];
        _robot = robot;
        _sign = turned ? -1.0 : 1.0;
        CornerX = new double[_ownX.Length];
        CornerY = new double[_ownX.Length];
    }

    public OracleBody(WallSettings wall)
    {
        _ownX = [.. wall.Corners().Select(c => c.X)];
        _ownY = [.. wall.Corners().Select(c => c.Y)];
        Faces = [.. wall.Corners().Select(_ => new FaceSettings(0.0, wall.Height))];
        CornerX = (double[])_ownX.Clone();
        CornerY = (double[])_ownY.Clone();
    }

    public double[] CornerX { get; }
    public double[] CornerY { get; }
    public FaceSettings[] Faces { get; }

    /// <summary>Corners from the present pose.</summary>
    public void Place()
    {
        if (_robot is null)
        {
            return;
        }
        _cos = _sign * Math.Cos(_robot.Psi);
        _sin = _sign * Math.Sin(_robot.Psi);
        for (int i = 0; i < _ownX.Length; i++)
        {
            CornerX[i] = (_sign * _robot.X) + (_cos * _ownX[i]) - (_sin * _ownY[i]);
            CornerY[i] = (_sign * _robot.Y) + (_sin * _ownX[i]) + (_cos * _ownY[i]);
        }
    }

    /// <summary>How far the body has risen at a floor point: z - x theta + y phi.</summary>
    public double Rise(double x, double y)
    {
        if (_robot is null)
        {
            return 0.0;
        }
        (double ownX, double ownY) = Own(x, y);
        return _robot.Z - (ownX * _robot.Theta) + (ownY * _robot.Phi);
    }

    /// <summary>
    /// How far a tilted body's point at a floor place and height has moved in plan: (z_p theta, -z_p phi), the shifted arms
    /// of the lever rule, so that the depth's rate is the velocity of the points. Floor axes.
    /// </summary>
    public (double X, double Y) Shift(double x, double y, double height)
    {
        if (_robot is null)
        {
            return (0.0, 0.0);
        }
        (double ownX, double ownY) = Own(x, y);
        double zp = Lever(ownX, ownY, height);
        double sx = zp * _robot.Theta;
        double sy = -zp * _robot.Phi;
        return ((_cos * sx) - (_sin * sy), (_sin * sx) + (_cos * sy));
    }

    /// <summary>Velocity of the body's point at a floor place and height, floor axes.</summary>
    public (double X, double Y, double Z) Velocity(double x, double y, double height)
    {
        if (_robot is null)
        {
            return (0.0, 0.0, 0.0);
        }
        (double ownX, double ownY) = Own(x, y);
        (double vx, double vy, double vz) = _robot.PointVelocity(ownX, ownY, Lever(ownX, ownY, height));
        return ((_cos * vx) - (_sin * vy), (_sin * vx) + (_cos * vy), vz);
    }

    /// <summary>A force in floor axes on the body at a floor place and height.</summary>
    public void Add(double x, double y, double height, double fx, double fy, double fz)
    {
        if (_robot is null)
        {
            return;
        }
        (double ownX, double ownY) = Own(x, y);
        _robot.AddForce(ownX, ownY, Lever(ownX, ownY, height), (_cos * fx) + (_sin * fy), (_cos * fy) - (_sin * fx), fz);
    }

    private (double X, double Y) Own(double x, double y)
    {
        double dx = x - (_sign * _robot!.X);
        double dy = y - (_sign * _robot.Y);
        return ((_cos * dx) + (_sin * dy), (_cos * dy) - (_sin * dx));
    }

    /// <summary>z_p of the body's point that now is at that height: height = h + z_p + z - x theta + y phi.</summary>
    private double Lever(double ownX, double ownY, double height) =>
        height - _robot!.Height - _robot.Z + (ownX * _robot.Theta) - (ownY * _robot.Phi);
}
