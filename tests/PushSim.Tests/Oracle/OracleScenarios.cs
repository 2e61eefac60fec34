using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Tests.Oracle;

/// <summary>The scenarios in which engine and oracle are held against each other. Robots are invented.</summary>
internal static class OracleScenarios
{
    /// <summary>Engine numbers as refined here: tolerance 1e-7.</summary>
    public static ScenarioSettings Fine(ScenarioSettings scenario) => scenario with
    {
        Numerics = scenario.Numerics with { Tolerance = 1e-7, MaxEvaluationsPerSecond = 2e7 },
    };

    /// <summary>No rolling resistance: the speed omega_s over which it turns its sign is not in the model as written.</summary>
    private static TyreSettings NoRolling { get; } = TestRobots.SoftTyre with { RollingResistance = 0.0 };

    public static ScenarioSettings Launch { get; } = Fine(TestRobots.Scenario(TestRobots.FourWheels(), ManoeuvreKind.Launch, 1.0, 0.0, 1.5));

    /// <summary>With the usual damping of the gear friction, whose T_max and limit the model as written leaves open.</summary>
    public static ScenarioSettings Reversal { get; } = Timeline(
        ManoeuvreKind.Reversal, TestRobots.FourWheels(limit: 4.0), 1.2, 1.5, [new CommandPoint(0.1, 1.0, 0.0), new CommandPoint(0.4, -1.0, 0.0)]);

    public static ScenarioSettings UndampedReversal { get; } = Undamped(Reversal);

    public static ScenarioSettings Pull { get; } = Fine(TestRobots.Pull(WithHeat(TestRobots.FourWheels(NoRolling))) with
    {
        Manoeuvre = TestRobots.Pull().Manoeuvre with { EndTime = 2.0 },
    });

    public static ScenarioSettings Drag { get; } = Fine(TestRobots.Scenario(
        TestRobots.FourWheels(NoRolling, zero: ZeroCommand.Locked, hold: 0.5), ManoeuvreKind.DragTest, 0.0, 0.0, 1.5) with
    {
        Tether = new TetherSettings
        {
            HookX = 0.09, HookHeight = 0.03, AnchorX = 0.5, AnchorHeight = 0.05, Slack = 0.004, Stiffness = 4000.0,
            AnchorSpeed = [(0.0, 0.0), (0.2, 0.05), (1.0, 0.05), (1.2, 0.3)],
        },
    });

    public static ScenarioSettings Spot { get; } = Fine(TestRobots.Scenario(
        TestRobots.FourWheels(forward: 0.01), ManoeuvreKind.Spot, 0.0, 0.6, 1.5));

    public static ScenarioSettings Arc { get; } = Fine(TestRobots.Scenario(
        TestRobots.FourWheels(forward: -0.008), ManoeuvreKind.Arc, 0.5, 0.25, 1.5));

    public static ScenarioSettings SlopeHold { get; } = Fine(Sloped(
        TestRobots.Scenario(TestRobots.FourWheels(zero: ZeroCommand.Locked, hold: 0.5), ManoeuvreKind.Hold, 0.0, 0.0, 1.5)));

    public static ScenarioSettings SlopeBrake { get; } = Fine(Sloped(
        TestRobots.Scenario(TestRobots.FourWheels(NoRolling), ManoeuvreKind.Hold, 0.0, 0.0, 1.5)));

    public static ScenarioSettings SlopeCoast { get; } = Fine(Sloped(
        TestRobots.Scenario(TestRobots.FourWheels(NoRolling, TestRobots.Motor with { FrictionTorque = 0.0003 }, zero: ZeroCommand.Coast), ManoeuvreKind.Hold, 0.0, 0.0, 1.5)));

    public static ScenarioSettings Brake { get; } = Undamped(Timeline(
        ManoeuvreKind.Brake, TestRobots.FourWheels(NoRolling), 0.8, 1.8, [new CommandPoint(0.0, 1.0, 0.0), new CommandPoint(0.2, 0.0, 0.0)]));

    public static ScenarioSettings CoastDown { get; } = Undamped(Timeline(
        ManoeuvreKind.Brake, TestRobots.FourWheels(zero: ZeroCommand.Coast), 1.2, 1.8, [new CommandPoint(0.0, 1.0, 0.0), new CommandPoint(0.2, 0.0, 0.0)]));

    /// <summary>Left pair on one controller in parallel, right pair in series, each side's front wheels unloaded by the centre of mass far back.</summary>
    public static ScenarioSettings SharedWiring { get; } = Undamped(Timeline(
        ManoeuvreKind.Timeline, Shared(TestRobots.FourWheels(NoRolling, forward: -0.025)), 1.5, 0.0,
        [new CommandPoint(0.1, 0.7, 0.1), new CommandPoint(0.8, -0.4, -0.2), new CommandPoint(1.2, 0.0, 0.0)]));

    /// <summary>Parallel wiring in coast: circulating currents while the robot is turned by its momentum.</summary>
    public static ScenarioSettings ParallelCoast { get; } = Timeline(
        ManoeuvreKind.Timeline, AllParallel(TestRobots.FourWheels(NoRolling, zero: ZeroCommand.Coast)), 1.2, 0.0,
        [new CommandPoint(0.1, 0.5, 0.5), new CommandPoint(0.6, 0.0, 0.0)]);

    /// <summary>A lowered throttle, slew limit, no regeneration, brush drop and viscous friction.</summary>
    public static ScenarioSettings Options { get; } = Timeline(
        ManoeuvreKind.Timeline, WithOptions(TestRobots.FourWheels()), 1.5, 0.0,
        [new CommandPoint(0.02, 0.02, 0.0), new CommandPoint(0.05, 1.0, 0.02), new CommandPoint(0.7, 0.4, 0.0), new CommandPoint(1.1, 0.1, 0.0)]);

    /// <summary>Load dependence, friction rise, dust, wear, viscous friction, downforce, and a centre of mass off to the left.</summary>
    public static ScenarioSettings TyreOptions { get; } = Timeline(
        ManoeuvreKind.Timeline, WithTyreOptions(), 1.2, 0.3, [new CommandPoint(0.1, 0.8, 0.0), new CommandPoint(0.6, 0.2, 0.5)]) with
    {
        Floor = new FloorSettings { Dust = 1.0, FrictionScale = 0.9 },
    };

    /// <summary>Two of four drives have no motor: their wheels turn freely; deadband without slew limit, reaction delay, heading hold.</summary>
    public static ScenarioSettings FreeWheels { get; } = Timeline(
        ManoeuvreKind.Timeline, WithFreeFront(), 1.2, 0.0, [new CommandPoint(0.0, 0.02, 0.0), new CommandPoint(0.1, 0.8, 0.0)]) with
    {
        Floor = new FloorSettings { SlopeY = 0.1 },
    };

    /// <summary>Into a patch with less friction under the left wheels: the robot turns. The engine blends a patch's edges, the oracle does not.</summary>
    public static ScenarioSettings Patch { get; } = Timeline(
        ManoeuvreKind.Timeline, TestRobots.FourWheels(NoRolling), 1.0, 0.0, [new CommandPoint(0.0, 1.0, 0.0)]) with
    {
        Floor = new FloorSettings { Patches = [new FloorPatch(0.1, 0.4, 0.0, 1.0, 0.4)] },
    };

    public static ScenarioSettings Timeline(ManoeuvreKind kind, RobotSettings robot, double end, double speed, CommandPoint[] commands) => Fine(new()
    {
        Name = kind.ToString(),
        Robot = robot,
        Manoeuvre = new ManoeuvreSettings { Kind = kind, EndTime = end, Commands = commands, InitialSpeed = speed },
    });

    public static RobotSettings WithHeat(RobotSettings robot) => WithMotor(robot, TestRobots.Motor with
    {
        WindingToCaseThermalResistance = 8.0, CaseToAirThermalResistance = 20.0, WindingHeatCapacity = 0.6, CaseHeatCapacity = 6.0,
    });

    public static RobotSettings WithMotor(RobotSettings robot, MotorSettings motor) => robot with
    {
        Drives = [.. robot.Drives.Select(d => d with { Motors = [(motor, d.Motors[0].Ratio)] })],
    };

    /// <summary>Damping ratio of the gear friction's wind-up at zero: nothing is left to the reading of tau_s.</summary>
    public static ScenarioSettings Undamped(ScenarioSettings scenario) => scenario with
    {
        Robot = scenario.Robot with { Drives = [.. scenario.Robot.Drives.Select(d => d with { FrictionDamping = 0.0 })] },
    };

    private static RobotSettings WithTyreOptions()
    {
        RobotSettings robot = TestRobots.FourWheels(NoRolling with
        {
            LoadExponent = 0.1, FrictionRise = 0.02, FoulingDistance = 0.5, DustyFriction = 0.7, SpecificWear = 5e-10, ViscousFriction = 0.01,
        });
        return robot with
        {
            Chassis = robot.Chassis with { Downforce = 4.0, DownforceX = 0.01, DownforceY = -0.01, CentreOfMassY = 0.006 },
        };
    }

    private static RobotSettings WithFreeFront()
    {
        RobotSettings robot = TestRobots.FourWheels(NoRolling);
        return robot with
        {
            Drives = [.. robot.Drives.Select((d, i) => i < 2 ? d with { Motors = [] } : d)],
            Controllers = [.. robot.Controllers.Skip(2).Select(c => c with { Deadband = 0.03 })],
        };
    }

    private static ScenarioSettings Sloped(ScenarioSettings scenario) => scenario with
    {
        Floor = new FloorSettings { SlopeX = 0.2, SlopeY = 0.1 },
    };

    private static RobotSettings Shared(RobotSettings robot) => robot with
    {
        Controllers =
        [
            robot.Controllers[0] with { Name = "left", Motors = [(0, 0), (2, 0)], Wiring = Wiring.Parallel, CurrentLimit = 4.0 },
            robot.Controllers[1] with { Name = "right", Motors = [(1, 0), (3, 0)], Wiring = Wiring.Series, CurrentLimit = 3.0 },
        ],
    };

    private static RobotSettings AllParallel(RobotSettings robot) => robot with
    {
        Controllers =
        [
            robot.Controllers[0] with { Name = "left", Motors = [(0, 0), (2, 0)], Wiring = Wiring.Parallel, CurrentLimit = 6.0 },
            robot.Controllers[1] with { Name = "right", Motors = [(1, 0), (3, 0)], Wiring = Wiring.Parallel, CurrentLimit = 6.0 },
        ],
    };

    private static RobotSettings WithOptions(RobotSettings robot)
    {
        RobotSettings changed = WithMotor(robot, TestRobots.Motor with { BrushDrop = 0.4, ViscousFriction = 2e-7 });
        return changed with
        {
            Controllers = [.. changed.Controllers.Select(c => c with { SlewLimit = 8.0, Regeneration = false })],
        };
    }
}
