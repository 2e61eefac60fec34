using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Tests.Oracle;

/// <summary>Shoves and wall pushes in which engine and oracle are held against each other. Robots are invented.</summary>
internal static class TwoRobotScenarios
{
    /// <summary>Angle from the floor of a steep ramp, which presses more than it lifts [rad].</summary>
    public const double SteepAngle = 0.9;

    /// <summary>Angle from the floor of a flat ramp, which lifts wheels off [rad].</summary>
    public const double FlatAngle = 0.5;

    // No rolling resistance and no damping of the gear friction: the model as written leaves omega_s and T_max open.
    private static readonly TyreSettings s_tyre = TestRobots.SoftTyre with { RollingResistance = 0.0 };
    private static readonly TyreSettings s_slick = s_tyre with { Name = "slick", StaticFriction = 0.75, KineticFriction = 0.6 };

    // Soft and lossy, and met at a slow walk: with the usual stiffness the robots bounce off each other, and after a few
    // bounces no two methods agree.
    private static readonly ContactSettings s_contact = new() { Stiffness = 1e5, Restitution = PushSim.Contact.Restitution.Share(20.0, 1.0) };

    public static ScenarioSettings EqualShove { get; } = Shove(Robot(), Robot());

    public static ScenarioSettings UnequalShove { get; } = Shove(Robot(), Robot(s_slick));

    /// <summary>The first robot's nose is a ramp that slides under the second's front. The second is heavy in front and keeps its wheels down: hopping, small differences grow.</summary>
    public static ScenarioSettings Ramp { get; } = Shove(
        WithRamp(Robot(), 0.001, SteepAngle), Robot(forward: 0.015), throttle: 0.4, opponentThrottle: 0.25, end: 0.4);

    /// <summary>Two ramps: the lower tip gets under the other.</summary>
    public static ScenarioSettings RampAgainstRamp { get; } = Shove(
        WithRamp(Robot(), 0.002, SteepAngle), WithRamp(Robot(), 0.001, SteepAngle), throttle: 0.5, opponentThrottle: 0.3);

    public static ScenarioSettings OffCentre { get; } = Shove(Robot(), Robot(), offset: 0.03);

    public static ScenarioSettings Askew { get; } = Shove(Robot(), Robot(), heading: 0.15);

    /// <summary>A flat ramp under a light front: the opponent's front wheels leave the floor.</summary>
    public static ScenarioSettings LiftedWheel { get; } = Shove(
        WithRamp(Robot(), 0.001, FlatAngle), Robot(forward: -0.02), throttle: 0.3, opponentThrottle: 0.1, end: 0.3);

    /// <summary>Each side's motors in parallel on one controller, against single controllers.</summary>
    public static ScenarioSettings ParallelWiring { get; } = Shove(Paired(Robot(), Wiring.Parallel), Robot(s_slick));

    public static ScenarioSettings SeriesWiring { get; } = Shove(Paired(Robot(), Wiring.Series), Robot(s_slick));

    /// <summary>The opponent stands in brake and is pushed.</summary>
    public static ScenarioSettings PushedBrake { get; } = Shove(Robot(), Robot(), throttle: 0.6, opponentThrottle: 0.0);

    /// <summary>Met askew and off centre; the first steers much and soon, the second a little and eases off.</summary>
    public static ScenarioSettings Steered { get; } = Driven(
        Shove(Robot(), Robot(s_slick), offset: 0.02, heading: 0.1),
        new() { Steering = 3.0, SteeringLimit = 0.4, SteeringRate = 2.0, DeadTime = 0.06 },
        new() { Steering = 1.0, DeadTime = 0.1, EaseTo = 0.6, EaseAfter = 0.2, EaseRate = 2.0 });

    /// <summary>Light robots with tall faces, without friction up the faces and with it.</summary>
    public static ScenarioSettings TallFacesSlick { get; } = Tall(0.0);

    public static ScenarioSettings TallFaces { get; } = Tall(0.3);

    /// <summary>A low robot drives under a high one, up to its wheels; until the high one's front comes down again, whose instant moves with the oracle's step.</summary>
    public static ScenarioSettings LowUnderHigh { get; } = Shove(
        Cut(Robot(), 0.004, 0.02), Cut(Robot(), 0.035, 0.06), throttle: 0.4, opponentThrottle: 0.2, end: 0.5);

    /// <summary>Front wheels that stand out of short and narrow bodies meet, askew and with a part of their widths, and turn at different speeds.</summary>
    public static ScenarioSettings WheelOnWheel { get; } = Shove(Narrow(Robot()), Narrow(Robot(s_slick)), offset: 0.008, heading: 0.05, throttle: 0.3, opponentThrottle: 0.15, end: 0.25);

    public static ScenarioSettings WallPush { get; } = Walled(0.0, 0.092);

    public static ScenarioSettings WallAskew { get; } = Walled(0.2, 0.106);

    public static ScenarioSettings Shove(
        RobotSettings first, RobotSettings second, double offset = 0.0, double heading = 0.0, double end = 0.8,
        double throttle = 1.0, double opponentThrottle = 1.0) => OracleScenarios.Fine(new()
    {
        Name = "shove",
        Robot = first,
        Manoeuvre = Drive(ManoeuvreKind.Shove, throttle, heading, end),
        Opponent = new OpponentSettings(second, Drive(ManoeuvreKind.Shove, opponentThrottle, 0.0, end)),
        Shove = new ShoveSettings { Gap = 0.002, Offset = offset },
        Contact = s_contact,
    });

    /// <summary>The same shove with the robots' parts exchanged.</summary>
    public static ScenarioSettings Swapped(ScenarioSettings scenario) => scenario with
    {
        Robot = scenario.Opponent!.Robot,
        Manoeuvre = scenario.Opponent.Manoeuvre,
        Opponent = new OpponentSettings(scenario.Robot, scenario.Manoeuvre),
    };

    public static RobotSettings Robot(TyreSettings? tyre = null, double forward = 0.0)
    {
        RobotSettings robot = TestRobots.FourWheels(tyre ?? s_tyre, forward: forward);
        return robot with { Drives = [.. robot.Drives.Select(d => d with { FrictionDamping = 0.0 })] };
    }

    private static ScenarioSettings Tall(double friction)
    {
        ScenarioSettings s = Shove(Cut(Robot().WithMass(0.45), 0.004, 0.06), Cut(Robot().WithMass(0.6), 0.004, 0.06), throttle: 0.6, opponentThrottle: 0.6);
        return s with { Contact = s.Contact with { Friction = friction } };
    }

    // faces all round from low to high
    private static RobotSettings Cut(RobotSettings robot, double low, double high) => robot with { Outline = OutlineSettings.Box(robot.Chassis, low, high) };

    private static RobotSettings Narrow(RobotSettings robot) => robot with { Chassis = robot.Chassis with { Length = 0.15, Width = 0.1 } };

    private static ScenarioSettings Driven(ScenarioSettings scenario, DriverSettings first, DriverSettings second) => scenario with
    {
        Manoeuvre = scenario.Manoeuvre with { Driver = first },
        Opponent = scenario.Opponent! with { Manoeuvre = scenario.Opponent.Manoeuvre with { Driver = second } },
    };

    private static ManoeuvreSettings Drive(ManoeuvreKind kind, double throttle, double heading, double end) => new()
    {
        Kind = kind, EndTime = end, InitialHeading = heading, Commands = [new CommandPoint(0.02, 0.0, 0.0), new CommandPoint(0.42, throttle, 0.0, true)],
    };

    private static ScenarioSettings Walled(double heading, double wall) => OracleScenarios.Fine(new()
    {
        Name = "wall",
        Robot = Robot(),
        Manoeuvre = Drive(ManoeuvreKind.WallPush, 0.5, heading, 0.8),
        Contact = s_contact,
        Walls = [new WallSettings(wall, -0.5, wall, 0.5)],
    });

    private static RobotSettings WithRamp(RobotSettings robot, double tip, double angle)
    {
        ChassisSettings c = robot.Chassis;
        OutlineSettings box = OutlineSettings.Box(c, OutlineSettings.DefaultClearance, c.Height);
        return robot with
        {
            Outline = box with { Faces = [new FaceSettings(tip, 0.03, angle), .. box.Faces.Skip(1)] },
        };
    }

    private static RobotSettings Paired(RobotSettings robot, Wiring wiring) => robot with
    {
        Controllers =
        [
            robot.Controllers[0] with { Name = "left", Motors = [(0, 0), (2, 0)], Wiring = wiring, CurrentLimit = 4.0 },
            robot.Controllers[1] with { Name = "right", Motors = [(1, 0), (3, 0)], Wiring = wiring, CurrentLimit = 4.0 },
        ],
    };
}
