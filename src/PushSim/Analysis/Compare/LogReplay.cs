using PushSim.Powertrain;
using PushSim.Simulation;

namespace PushSim.Analysis.Compare;

/// <summary>A scenario driven as a log tells: by its commands, each held until the next row; or by the measured speeds of its wheels, straight between the rows, with the motors taken out, so
/// that what turns the wheels is work from outside.</summary>
public static class LogReplay
{
    /// <summary>The scenario driven by the commands of a log.</summary>
    public static ScenarioSettings ByCommands(ScenarioSettings scenario, ChannelLog log)
    {
        List<CommandPoint> points = [];
        for (int i = 0; i < log.Time.Length; i++)
        {
            (double throttle, double turn) = CommandAt(log, i);
            if (double.IsFinite(throttle + turn) && (points.Count == 0 || points[^1].Throttle != throttle || points[^1].Turn != turn))
            {
                points.Add(new CommandPoint(log.Time[i], throttle, turn));
            }
        }

        return scenario with { Manoeuvre = Manoeuvre(scenario, log) with { Commands = points } };
    }

    /// <summary>The scenario whose wheels turn as those of a log.</summary>
    public static ScenarioSettings ByWheels(ScenarioSettings scenario, ChannelLog log)
    {
        RobotSettings robot = scenario.Robot;
        List<GivenSpeed> given = [];
        for (int d = 0; d < robot.Drives.Count; d++)
        {
            DriveSettings drive = robot.Drives[d];
            Channel wheels = log.Wheels(SideOf(robot, drive))!;
            double scale = DrivePer(wheels.Kind, robot, drive);
            (double, double)[] points = [.. log.Time.Zip(wheels.Values).Where(p => double.IsFinite(p.Second)).Select(p => (p.First, scale * p.Second))];
            if (drive.Motors.Count > 0 && points.Length > 0)
            {
                given.Add(new GivenSpeed(d, points));
            }
        }

        return scenario with
        {
            Robot = robot with { Controllers = [], Battery = null, Drives = [.. robot.Drives.Select(d => d with { Motors = [] })] },
            Manoeuvre = Manoeuvre(scenario, log) with { Commands = [] },
            GivenSpeeds = given,
        };
    }

    /// <summary>The side that a drive's first wheel stands on.</summary>
    internal static CommandSide SideOf(RobotSettings robot, DriveSettings drive) => robot.Wheels[drive.Wheels[0].Wheel].Y > robot.Chassis.CentreOfMassY ? CommandSide.Left : CommandSide.Right;

    /// <summary>Drive speed per value of a channel of wheels [rad/s per its unit].</summary>
    internal static double DrivePer(ChannelKind kind, RobotSettings robot, DriveSettings drive)
    {
        (int wheel, double ratio) = drive.Wheels[0];
        return kind switch
        {
            ChannelKind.SideSpeed => 1.0 / (ratio * robot.Wheels[wheel].Radius),
            ChannelKind.WheelSpin => 1.0 / ratio,
            _ => 1.0 / (drive.Motors.Count > 0 ? drive.Motors[0].Ratio : 1.0),
        };
    }

    // it begins as fast as the log does, and the driver of the file has no part in it
    private static ManoeuvreSettings Manoeuvre(ScenarioSettings scenario, ChannelLog log) => scenario.Manoeuvre with
    {
        EndTime = log.Time[^1],
        Driver = new DriverSettings(),
        InitialSpeed = StartSpeed(scenario.Robot, log),
    };

    private static double StartSpeed(RobotSettings robot, ChannelLog log)
    {
        if (log.Of(ChannelKind.Speed) is { } speed && double.IsFinite(speed.Values[0]))
        {
            return speed.Values[0];
        }

        double sum = 0.0;
        foreach (CommandSide side in new[] { CommandSide.Left, CommandSide.Right })
        {
            DriveSettings? drive = robot.Drives.FirstOrDefault(d => d.Motors.Count > 0 && SideOf(robot, d) == side);
            if (drive is null || log.Wheels(side) is not { } wheels || !double.IsFinite(wheels.Values[0]))
            {
                return 0.0;
            }

            sum += 0.5 * wheels.Values[0] * DrivePer(wheels.Kind, robot, drive) / DrivePer(ChannelKind.SideSpeed, robot, drive);
        }

        return sum;
    }

    private static (double Throttle, double Turn) CommandAt(ChannelLog log, int i)
    {
        double left = At(ChannelKind.SideCommand, CommandSide.Left), right = At(ChannelKind.SideCommand, CommandSide.Right);
        return double.IsFinite(left + right) ? (0.5 * (left + right), 0.5 * (right - left))
            : (Or0(At(ChannelKind.Throttle, null)), Or0(At(ChannelKind.Turn, null)));

        double At(ChannelKind kind, CommandSide? side) => log.Of(kind, side)?.Values[i] ?? double.NaN;

        double Or0(double v) => double.IsFinite(v) ? Math.Clamp(v, -1.0, 1.0) : 0.0;
    }
}
