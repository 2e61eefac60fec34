using PushSim.Surroundings;

namespace PushSim.Tests.Oracle;

/// <summary>
/// A cord that only pulls: k e (1 + d e') at least 0 for e above 0, along the straight line from hook to anchor in three
/// dimensions.
/// </summary>
internal sealed class OracleTether
{
    private readonly TetherSettings _settings;
    private readonly double _freeLength;
    private readonly Vector _hook;
    private double _anchorX;

    public OracleTether(TetherSettings settings, OracleRobot robot)
    {
        _settings = settings;
        _anchorX = settings.AnchorX;
        _hook = new Vector(
            settings.HookX - robot.Settings.Chassis.CentreOfMassX, settings.HookY - robot.Settings.Chassis.CentreOfMassY, settings.HookHeight - robot.Height);

        // Slack counts from the hook's stated height: the robot level, its tyres just touching. The model as written does not say;
        // with the tyres sunk an oblique cord would be longer by a few hundredths of a millimetre.
        (double c, double s) = (Math.Cos(robot.Psi), Math.Sin(robot.Psi));
        Vector level = new(robot.X + (c * _hook.X) - (s * _hook.Y), robot.Y + (s * _hook.X) + (c * _hook.Y), settings.HookHeight);
        _freeLength = (Anchor - level).Length + settings.Slack;
    }

    public double Force;

    public void Pull(OracleRobot robot, double t)
    {
        Vector at = robot.Point(_hook);
        Vector line = Anchor - at;
        double stretch = line.Length - _freeLength;

        // e' = (anchor velocity - hook velocity) along the line from hook to anchor
        Vector along = (1.0 / line.Length) * line;
        double rate = (new Vector(AnchorSpeed(t), 0.0, 0.0) - robot.Velocity(at)).Dot(along);
        Force = stretch > 0.0 ? Math.Max(0.0, _settings.Stiffness * stretch * (1.0 + (_settings.Damping * rate))) : 0.0;
        robot.Push(at, Force * along);
    }

    private Vector Anchor => new(_anchorX, _settings.AnchorY, _settings.AnchorHeight);

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
}
