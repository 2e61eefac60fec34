using PushSim.Simulation;

namespace PushSim.Tests.Oracle;

/// <summary>A scenario, stepped plainly from its start to its end.</summary>
internal sealed class OracleRun
{
    private readonly ScenarioSettings _scenario;
    private readonly OracleRobot[] _robots;
    private readonly OracleTether? _tether;
    private readonly OracleBody[] _bodies;
    private readonly OracleContact[] _contacts;
    private readonly OracleFloor[] _floors;
    private readonly OracleRecord[] _records;
    private readonly double _sample;

    private OracleRun(ScenarioSettings scenario, bool limitedGearDamping)
    {
        _scenario = scenario;
        _sample = 1.0 / scenario.Numerics.SampleRate;
        var first = new OracleRobot(scenario.Robot, scenario.Manoeuvre, scenario.Floor, false, limitedGearDamping);
        _tether = scenario.Tether is null ? null : new OracleTether(scenario.Tether, first);
        _robots = [first];
        if (scenario.Opponent is { } opponent)
        {
            _robots = [first, new OracleRobot(opponent.Robot, opponent.Manoeuvre, scenario.Floor, true, limitedGearDamping)];
            foreach (OracleRobot robot in _robots)
            {
                StandApart(robot, scenario.Shove);
            }
            (_robots[0].Other, _robots[1].Other) = (_robots[1], _robots[0]);
        }
        OracleBody[] moving = [.. _robots.Select((r, i) => new OracleBody(r, i > 0))];
        OracleBody[] walls = [.. scenario.Walls.Select(w => new OracleBody(w))];
        _bodies = moving;
        foreach (OracleBody wall in walls)
        {
            wall.Place();
        }
        _floors = [.. moving.Select((b, i) => new OracleFloor(_robots[i].Settings.OutlineOrBox.Underside, b))];
        _contacts =
        [
            .. _robots.Length > 1 ? [new OracleContact(scenario.Contact, moving[0], moving[1])] : Array.Empty<OracleContact>(),
            .. moving.SelectMany(_ => walls, (b, w) => new OracleContact(scenario.Contact, w, b)),
        ];
        int samples = (int)Math.Round(scenario.Manoeuvre.EndTime / _sample);
        _records = [.. _robots.Select(_ => new OracleRecord(samples + 1))];
    }

    /// <summary>Runs a scenario of one robot and records it.</summary>
    /// <param name="scenario">The scenario.</param>
    /// <param name="step">Fixed step, a whole part of the sampling time [s].</param>
    /// <param name="limitedGearDamping">See <see cref="OracleDrive.LimitedDamping"/>.</param>
    public static OracleRecord One(ScenarioSettings scenario, double step, bool limitedGearDamping = false) =>
        All(scenario, step, limitedGearDamping)[0];

    /// <summary>Runs a scenario and records every robot, each in its own floor frame. A shove ends when a robot is over its line.</summary>
    public static OracleRecord[] All(ScenarioSettings scenario, double step, bool limitedGearDamping = false)
    {
        var run = new OracleRun(scenario, limitedGearDamping);
        run.Go(step);
        return run._records;
    }

    /// <summary>Outlines half the gap behind floor x = 0, each in its own frame; own centre line half the offset to the right.</summary>
    private static void StandApart(OracleRobot robot, ShoveSettings shove)
    {
        double c = Math.Cos(robot.Psi);
        double s = Math.Sin(robot.Psi);
        double front = robot.Settings.OutlineOrBox.Corners.Max(p => (c * p.X) - (s * p.Y));
        foreach (PushSim.Tyres.WheelSettings w in robot.Settings.Wheels)
        {
            foreach (double side in new[] { -0.5, 0.5 })
            {
                front = Math.Max(front, (c * (w.X + w.Radius)) - (s * (w.Y + (side * robot.Settings.WidthOf(w)))));
            }
        }
        double originX = (-0.5 * shove.Gap) - front;
        double originY = -0.5 * shove.Offset;
        robot.X = originX + (c * robot.Settings.Chassis.CentreOfMassX) - (s * robot.Settings.Chassis.CentreOfMassY);
        robot.Y = originY + (s * robot.Settings.Chassis.CentreOfMassX) + (c * robot.Settings.Chassis.CentreOfMassY);
    }

    private void Go(double step)
    {
        int inner = (int)Math.Round(_sample / step);
        double h = _sample / inner;
        double[] startX = [.. _robots.Select(r => r.X)];
        int samples = (int)Math.Round(_scenario.Manoeuvre.EndTime / _sample);
        for (int k = 0; k < samples; k++)
        {
            for (int j = 0; j < inner; j++)
            {
                Step((k * _sample) + (j * h), h, k == 0 && j == 0);
            }

            // After the step: at a jump of the command the values are those before it, as in the engine's history.
            Record((k + 1) * _sample);
            for (int i = 0; i < _robots.Length && _robots.Length > 1; i++)
            {
                if (_robots[i].X < startX[i] - _scenario.Shove.Line)
                {
                    return;
                }
            }
        }
    }

    private void Step(double t, double h, bool first)
    {
        foreach (OracleRobot robot in _robots)
        {
            robot.Act(t, h);
        }
        _tether?.Pull(_robots[0], t);
        foreach (OracleBody body in _bodies)
        {
            body.Place();
        }
        foreach (OracleContact contact in _contacts)
        {
            contact.Push(h);
        }
        foreach (OracleFloor floor in _floors)
        {
            floor.Push(h);
        }
        if (first)
        {
            Record(0.0);
        }
        foreach (OracleRobot robot in _robots)
        {
            robot.Move(h);
        }
        _tether?.Move(t, h);
    }

    private void Record(double t)
    {
        double push = _contacts.Sum(c => Math.Sqrt((c.ForceX * c.ForceX) + (c.ForceY * c.ForceY)));
        double lift = _contacts.Sum(c => c.ForceZ);
        for (int i = 0; i < _robots.Length; i++)
        {
            _records[i].Add(t, _robots[i], i == 0 ? _tether?.Force ?? 0.0 : 0.0, push, i == 0 && _robots.Length > 1 ? -lift : lift);
        }
    }
}
