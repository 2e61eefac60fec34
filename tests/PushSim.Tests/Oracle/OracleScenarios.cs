using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Surroundings;

namespace PushSim.Tests.Oracle;

/// <summary>The scenarios in which engine and oracle are held against each other. Robots are invented.</summary>
internal static class OracleScenarios
{
    /// <summary>Engine numbers as refined here: tolerance 1e-7, no cap on the ring frequency.</summary>
    public static ScenarioSettings Fine(ScenarioSettings scenario) => scenario with
    {
        Numerics = scenario.Numerics with { Tolerance = 1e-7, RingFrequencyCap = double.PositiveInfinity, MaxEvaluationsPerSecond = 2e7 },
    };

    public static ScenarioSettings Launch { get; } = Fine(TestRobots.Scenario(TestRobots.FourWheels(), ManoeuvreKind.Launch, 1.0, 0.0, 1.5));

    public static ScenarioSettings Reversal { get; } = Timeline(
        ManoeuvreKind.Reversal, TestRobots.FourWheels(limit: 4.0), 1.2, 1.5, [new CommandPoint(0.1, 1.0, 0.0), new CommandPoint(0.4, -1.0, 0.0)]);

    public static ScenarioSettings Pull { get; } = Fine(TestRobots.Pull(WithHeat(TestRobots.FourWheels())) with
    {
        Manoeuvre = TestRobots.Pull().Manoeuvre with { EndTime = 2.0 },
    });

    public static ScenarioSettings Drag { get; } = Fine(TestRobots.Scenario(
        TestRobots.FourWheels(zero: ZeroCommand.Locked, hold: 0.5), ManoeuvreKind.DragTest, 0.0, 0.0, 1.5) with
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
        TestRobots.Scenario(TestRobots.FourWheels(), ManoeuvreKind.Hold, 0.0, 0.0, 1.5)));

    public static ScenarioSettings SlopeCoast { get; } = Fine(Sloped(
        TestRobots.Scenario(TestRobots.FourWheels(zero: ZeroCommand.Coast), ManoeuvreKind.Hold, 0.0, 0.0, 1.5)));

    public static ScenarioSettings Brake { get; } = Timeline(
        ManoeuvreKind.Brake, TestRobots.FourWheels(), 0.8, 1.8, [new CommandPoint(0.0, 1.0, 0.0), new CommandPoint(0.2, 0.0, 0.0)]);

    public static ScenarioSettings CoastDown { get; } = Timeline(
        ManoeuvreKind.Brake, TestRobots.FourWheels(zero: ZeroCommand.Coast), 1.2, 1.8, [new CommandPoint(0.0, 1.0, 0.0), new CommandPoint(0.2, 0.0, 0.0)]);

    /// <summary>Left pair on one controller in parallel, right pair in series, each side's front wheels unloaded by the centre of mass far back.</summary>
    public static ScenarioSettings SharedWiring { get; } = Timeline(
        ManoeuvreKind.Timeline, Shared(TestRobots.FourWheels(forward: -0.025)), 1.5, 0.0,
        [new CommandPoint(0.1, 0.7, 0.1), new CommandPoint(0.8, -0.4, -0.2), new CommandPoint(1.2, 0.0, 0.0)]);

    /// <summary>Parallel wiring in coast: circulating currents while the robot is turned by its momentum.</summary>
    public static ScenarioSettings ParallelCoast { get; } = Timeline(
        ManoeuvreKind.Timeline, AllParallel(TestRobots.FourWheels(zero: ZeroCommand.Coast)), 1.2, 0.0,
        [new CommandPoint(0.1, 0.5, 0.5), new CommandPoint(0.6, 0.0, 0.0)]);

    /// <summary>A lowered throttle, slew limit, deadband, no regeneration, brush drop and viscous friction.</summary>
    public static ScenarioSettings Options { get; } = Timeline(
        ManoeuvreKind.Timeline, WithOptions(TestRobots.FourWheels()), 1.5, 0.0,
        [new CommandPoint(0.05, 1.0, 0.02), new CommandPoint(0.7, 0.4, 0.0), new CommandPoint(1.1, 0.02, 0.0)]);

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
            Controllers = [.. changed.Controllers.Select(c => c with { SlewLimit = 8.0, Deadband = 0.03, Regeneration = false })],
        };
    }
}
