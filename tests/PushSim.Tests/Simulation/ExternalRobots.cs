using PushSim.Chassis;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Invented machines, bare enough that a textbook formula holds for them, and ways to run them.</summary>
internal static class ExternalRobots
{
    public const double Volts = 12.0;

    /// <summary>A source without resistance that never runs down.</summary>
    public static BatterySettings Source(double volts, double resistance = 0.0) => new()
    {
        Cells = 1, CellVoltage = [(0.0, volts)], Resistance = resistance, Capacity = 1e12,
    };

    /// <summary>One friction coefficient at any slip speed, plain bristle, no renewal by rolling.</summary>
    public static TyreSettings Coulomb(double friction) => new()
    {
        Name = "plain", StaticFriction = friction, KineticFriction = friction, PlainFriction = true, RollingRenewal = 0.0,
        BodyStiffness = 2500.0, BodyDamping = 2.0, TreadMass = 0.004, VerticalStiffness = 9000.0,
    };

    /// <summary>Four wheels at the corners; origin of the plan midway between the axles.</summary>
    public static RobotSettings FourCorners(
        ChassisSettings chassis, TyreSettings tyre, double wheelbase, double track, double radius, double spinInertia,
        MotorSettings? frontMotor, MotorSettings? rearMotor, double limit = double.PositiveInfinity, bool isSkid = false)
    {
        (string Name, double X, double Y, MotorSettings? Motor)[] places =
        [
            ("front left", wheelbase / 2, track / 2, frontMotor), ("front right", wheelbase / 2, -track / 2, frontMotor),
            ("rear left", -wheelbase / 2, track / 2, rearMotor), ("rear right", -wheelbase / 2, -track / 2, rearMotor),
        ];
        int[] driven = [.. Enumerable.Range(0, 4).Where(i => places[i].Motor is not null)];
        return new RobotSettings
        {
            Name = "Corners",
            Chassis = chassis,
            Wheels = [.. places.Select(p => new WheelSettings
            {
                Name = p.Name, X = p.X, Y = p.Y, Radius = radius, SpinInertia = spinInertia, Tyre = tyre, IsSkid = isSkid,
            })],
            Drives = [.. driven.Select(i => new DriveSettings { Name = places[i].Name, Wheels = [(i, 1.0)], Motors = [(places[i].Motor!, 1.0)] })],
            Controllers = [.. driven.Select((i, d) => new ControllerSettings
            {
                Name = places[i].Name, Motors = [(d, 0)], Side = places[i].Y > 0 ? CommandSide.Left : CommandSide.Right, CurrentLimit = limit,
            })],
            Battery = driven.Length > 0 ? Source(Volts) : null,
        };
    }

    /// <summary>A motor that turns a wheel directly: no-load rim speed [m/s] and stall force at the rim [N] at 12 V.</summary>
    public static MotorSettings WheelMotor(double radius, double noLoadSpeed, double stallForce)
    {
        double constant = Volts * radius / noLoadSpeed;
        return new MotorSettings { Name = "direct", TorqueConstant = constant, Resistance = Volts * constant / (stallForce * radius) };
    }

    public static ChassisSettings Body(double mass, double height, double forward = 0.0, double size = 0.2) => new()
    {
        Mass = mass, CentreOfMassHeight = height, CentreOfMassX = forward, Length = size, Width = 0.8 * size, Height = 0.3 * size,
    };

    /// <summary>A motor alone: four skids carry the body, the wheel on the motor's drive presses on the floor with next to nothing.</summary>
    public static RobotSettings Bench(DriveSettings drive, double inertia, double volts, double resistance = 0.0, double limit = double.PositiveInfinity)
    {
        RobotSettings stand = FourCorners(Body(1.0, 0.03), Coulomb(0.8), 0.1, 0.1, 0.03, 1e-5, null, null, isSkid: true);
        TyreSettings air = Coulomb(0.8) with { Name = "air", VerticalStiffness = 1e-9, TreadMass = 1e-6, BodyStiffness = 1.0, BodyDamping = 1e-3 };
        return stand with
        {
            Wheels = [.. stand.Wheels, new WheelSettings { Name = "flywheel", X = 0.0, Y = 0.0, Radius = 1e-4, SpinInertia = inertia, Tyre = air }],
            Drives = [drive with { Wheels = [(4, 1.0)] }],
            Controllers = [new ControllerSettings { Name = "bench", Motors = [(0, 0)], Side = CommandSide.Left, CurrentLimit = limit }],
            Battery = Source(volts, resistance),
        };
    }

    public static ScenarioSettings Scenario(
        RobotSettings robot, double end, double throttle = 0.0, double turn = 0.0, double speed = 0.0, double gravity = 9.81,
        double tolerance = 1e-6) => new()
    {
        Name = "outside check",
        Robot = robot,
        Floor = new FloorSettings { Gravity = gravity },
        Manoeuvre = new ManoeuvreSettings
        {
            Kind = throttle == 0.0 && turn != 0.0 ? ManoeuvreKind.Spot : ManoeuvreKind.Timeline, EndTime = end, InitialSpeed = speed,
            Commands = throttle == 0.0 && turn == 0.0 ? [] : [new CommandPoint(0.0, throttle, turn)],
        },
        Numerics = new NumericsSettings { Tolerance = tolerance },
    };

    /// <summary>Runs and insists that the end was reached.</summary>
    public static RunResult Run(ScenarioSettings scenario)
    {
        RunResult result = Simulator.Run(scenario);
        Assert.True(result.Status == RunStatus.Finished, RunWords.Cause(result.Stop) + RunWords.Verdict(result));
        return result;
    }

    /// <summary>Value of a series at a sampled time.</summary>
    public static double At(this RunResult result, Func<Trace, Series> what, double time) =>
        what(result.Trace)[(int)Math.Round(time * result.Scenario.Numerics.SampleRate)];

    /// <summary>Integrates from a changed start state; returns samples of (time, state).</summary>
    public static List<(double T, double[] Y)> RunFrom(ScenarioSettings scenario, Action<RobotSystem, double[]> change, double sampleStep)
    {
        scenario = scenario with { Robot = ModelBuilder.InCanonicalOrder(scenario.Robot) };
        var system = new RobotSystem(scenario);
        double[] y = system.InitialState();
        change(system, y);
        var integration = new SingleRun<RobotSystem>(system, AdditiveTableau.ByName(scenario.Numerics.Method));
        var settings = new IntegrationSettings
        {
            RelativeTolerance = scenario.Numerics.Tolerance,
            AbsoluteTolerances = system.AbsoluteTolerances(scenario.Numerics.Tolerance),
            MaximumStep = 0.05,
        };
        var sampler = new Sampler(sampleStep, [.. y]);
        IntegrationOutcome report = integration.Run(0.0, scenario.Manoeuvre.EndTime, y, system.Breakpoints, settings, sampler);
        Assert.Equal(IntegrationStatus.Completed, report.Status);
        return sampler.Samples;
    }

    private sealed class Sampler(double step, double[] y0) : IStepObserver
    {
        public List<(double T, double[] Y)> Samples { get; } = [(0.0, y0)];

        public StepDecision OnStep(DenseOutput dense)
        {
            while (Samples.Count * step <= dense.T1 * (1.0 + 1e-14))
            {
                double[] y = new double[y0.Length];
                dense.Evaluate(Math.Min(Samples.Count * step, dense.T1), y);
                Samples.Add((Samples.Count * step, y));
            }

            return StepDecision.Continue;
        }
    }
}
