using PushSim.Surroundings;

namespace PushSim.Tests.Oracle;

/// <summary>
/// A cord that only pulls: k e (1 + d e') at least 0 for e above 0, along the straight line from hook to anchor in three
/// dimensions. Its energy is stored, so the arms are shifted: x + z_p theta, y - z_p phi.
/// </summary>
internal sealed class OracleTether
{
    private readonly TetherSettings _settings;
    private readonly double _freeLength;
    private readonly double _hookX;
    private readonly double _hookY;
    private readonly double _hookZ;
    private double _anchorX;

    public OracleTether(TetherSettings settings, OracleRobot robot)
    {
        _settings = settings;
        _anchorX = settings.AnchorX;
        _hookX = settings.HookX - robot.Settings.Chassis.CentreOfMassX;
        _hookY = settings.HookY - robot.Settings.Chassis.CentreOfMassY;
        _hookZ = settings.HookHeight - robot.Height;

        // Slack counts from the hook's stated height: the robot level, its tyres just touching. The model as written does not say;
        // with the tyres sunk an oblique cord would be longer by a few hundredths of a millimetre.
        (double z, double theta, double phi) = (robot.Z, robot.Theta, robot.Phi);
        robot.Z = robot.Theta = robot.Phi = 0.0;
        _freeLength = Line(robot).Length + settings.Slack;
        (robot.Z, robot.Theta, robot.Phi) = (z, theta, phi);
    }

    public double Force;

    public void Pull(OracleRobot robot, double t)
    {
        (double dx, double dy, double dz, double length) = Line(robot);
        double stretch = length - _freeLength;
        double c = Math.Cos(robot.Psi);
        double s = Math.Sin(robot.Psi);
        double armX = _hookX + (_hookZ * robot.Theta);
        double armY = _hookY - (_hookZ * robot.Phi);
        double vx = robot.U - (robot.R * armY) + (_hookZ * robot.ThetaRate);
        double vy = robot.V + (robot.R * armX) - (_hookZ * robot.PhiRate);
        double vz = robot.ZRate - (robot.ThetaRate * _hookX) + (robot.PhiRate * _hookY);

        // e' = (anchor velocity - hook velocity) along the line from hook to anchor
        double rate = ((AnchorSpeed(t) - ((vx * c) - (vy * s))) * dx / length) - (((vx * s) + (vy * c)) * dy / length) - (vz * dz / length);
        Force = stretch > 0.0 ? Math.Max(0.0, _settings.Stiffness * stretch * (1.0 + (_settings.Damping * rate))) : 0.0;
        double worldX = Force * dx / length;
        double worldY = Force * dy / length;
        double fx = (worldX * c) + (worldY * s);
        double fy = (worldY * c) - (worldX * s);
        double fz = Force * dz / length;

        // AddForce takes plain arms for every moment; only the yaw moment has the shifted ones.
        robot.AddForce(_hookX, _hookY, _hookZ, fx, fy, fz);
        robot.AddYawMoment(((armX - _hookX) * fy) - ((armY - _hookY) * fx));
    }

    public void Move(double t, double h) => _anchorX += h * AnchorSpeed(t);

    private double AnchorSpeed(double t)
    {
        IReadOnlyList<(double Time, double Speed)> table = _settings.AnchorSpeed;
        if (table.Count == 0)
        {
            return 0.0;
        }
        if (t <= table[0].Time)
        {
            return table[0].Speed;
        }
        for (int i = 1; i < table.Count; i++)
        {
            if (t <= table[i].Time)
            {
                double share = (t - table[i - 1].Time) / (table[i].Time - table[i - 1].Time);
                return table[i - 1].Speed + (share * (table[i].Speed - table[i - 1].Speed));
            }
        }
        return table[^1].Speed;
    }

    private (double X, double Y, double Z, double Length) Line(OracleRobot robot)
    {
        double c = Math.Cos(robot.Psi);
        double s = Math.Sin(robot.Psi);
        double armX = _hookX + (_hookZ * robot.Theta);
        double armY = _hookY - (_hookZ * robot.Phi);
        double dx = _anchorX - robot.X - (c * armX) + (s * armY);
        double dy = _settings.AnchorY - robot.Y - (s * armX) - (c * armY);
        double height = robot.Height + _hookZ + robot.Z - (robot.Theta * _hookX) + (robot.Phi * _hookY);
        double dz = _settings.AnchorHeight - height;
        return (dx, dy, dz, Math.Sqrt((dx * dx) + (dy * dy) + (dz * dz)));
    }
}
