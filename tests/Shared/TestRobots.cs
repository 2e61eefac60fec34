using PushSim.Chassis;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Tests;

/// <summary>Invented robots and scenarios that tests and benchmarks share.</summary>
internal static class TestRobots
{
    public static TyreSettings SoftTyre { get; } = new()
    {
        Name = "soft",
        StaticFriction = 1.0,
        KineticFriction = 0.8,
        SlipSpeed = 0.5,
        BreakawayDeflection = 0.4e-3,
        BodyStiffness = 2500.0,
        BodyDamping = 2.0,
        TreadMass = 0.004,
        VerticalStiffness = 9000.0,
        VerticalDamping = 2.0,
        RollingRenewal = 120.0,
        RollingResistance = 0.02,
    };

    public static MotorSettings Motor { get; } = new()
    {
        Name = "gearmotor",
        TorqueConstant = 0.008,
        Resistance = 2.5,
        FrictionTorque = 0.0008,
        RotorInertia = 2.5e-7,
    };

    public static BatterySettings Battery { get; } = new()
    {
        Cells = 3,
        CellVoltage = [(0.0, 3.3), (0.1, 3.7), (0.5, 3.85), (1.0, 4.2)],
        Resistance = 0.12,
        Capacity = 0.45 * 3600.0,
    };

    public static RobotSettings FourWheels(
        TyreSettings? tyre = null, MotorSettings? motor = null, double efficiency = 0.8, double limit = 5.0,
        double wheelbase = 0.11, double track = 0.15, double height = 0.028, double ratio = 20.0, double radius = 0.028,
        ZeroCommand zero = ZeroCommand.Brake, double hold = 0.0, double forward = 0.0)
    {
        tyre ??= SoftTyre;
        motor ??= Motor;
        (string, double, double)[] places =
        [
            ("front left", wheelbase / 2, track / 2), ("front right", wheelbase / 2, -track / 2),
            ("rear left", -wheelbase / 2, track / 2), ("rear right", -wheelbase / 2, -track / 2),
        ];
        return new RobotSettings
        {
            Name = "Testmole",
            Chassis = new ChassisSettings
            {
                Mass = 1.36, Length = 0.18, Width = 0.16, Height = 0.06, CentreOfMassHeight = height, CentreOfMassX = forward,
            },
            Wheels = [.. places.Select(p => new WheelSettings
            {
                Name = p.Item1, X = p.Item2, Y = p.Item3, Radius = radius, SpinInertia = 1.2e-5, Tyre = tyre,
            })],
            Drives = [.. places.Select((p, i) => new DriveSettings
            {
                Name = p.Item1, Wheels = [(i, 1.0)], Motors = [(motor, ratio)], GearEfficiency = efficiency, HoldTorque = hold,
            })],
            Controllers = [.. places.Select((p, i) => new ControllerSettings
            {
                Name = p.Item1, Motors = [(i, 0)], Side = p.Item3 > 0 ? CommandSide.Left : CommandSide.Right,
                CurrentLimit = limit, OnResistance = 0.05, ZeroCommand = zero,
            })],
            Battery = Battery,
        };
    }

    public static ScenarioSettings Scenario(
        RobotSettings robot, ManoeuvreKind kind, double throttle, double turn, double end, double start = 0.1) => new()
    {
        Name = kind.ToString(),
        Robot = robot,
        Manoeuvre = new ManoeuvreSettings
        {
            Kind = kind,
            EndTime = end,
            Commands = throttle == 0.0 && turn == 0.0 ? [] : [new CommandPoint(start, throttle, turn)],
        },
    };

    public static ScenarioSettings Launch(RobotSettings? robot = null) => Scenario(robot ?? FourWheels(), ManoeuvreKind.Launch, 1.0, 0.0, 3.0);

    public static ScenarioSettings Spot(RobotSettings? robot = null, double turn = 0.6) => Scenario(robot ?? FourWheels(), ManoeuvreKind.Spot, 0.0, turn, 3.0);

    public static ScenarioSettings Pull(RobotSettings? robot = null) => Scenario(robot ?? FourWheels(), ManoeuvreKind.PullTest, 0.0, 0.0, 3.0) with
    {
        Manoeuvre = new ManoeuvreSettings
        {
            Kind = ManoeuvreKind.PullTest, EndTime = 3.0, Commands = [new CommandPoint(0.1, 0.0, 0.0), new CommandPoint(1.1, 1.0, 0.0, true)],
        },
        Tether = new TetherSettings { HookX = -0.09, HookHeight = 0.03, AnchorX = -0.5, AnchorHeight = 0.03, Slack = 0.005, Stiffness = 4000.0 },
    };

    /// <summary>Two robots that drive at each other at full throttle.</summary>
    public static ScenarioSettings Shove(RobotSettings first, RobotSettings opponent, double end = 3.0, double gap = 0.05, double offset = 0.0)
    {
        ScenarioSettings s = Scenario(first, ManoeuvreKind.Shove, 1.0, 0.0, end);
        return s with { Opponent = new OpponentSettings(opponent, s.Manoeuvre), Shove = new ShoveSettings { Gap = gap, Offset = offset } };
    }

    /// <summary>The robot with another mass; inertias follow from the body box.</summary>
    public static RobotSettings WithMass(this RobotSettings robot, double mass) =>
        robot with { Chassis = robot.Chassis with { Mass = mass } };
}
