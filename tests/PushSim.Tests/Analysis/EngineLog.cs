using MathNet.Numerics.Distributions;
using PushSim.Analysis.Fit;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Tests.Analysis;

/// <summary>
/// Pulls that the engine makes with a known tyre, read by an invented cheap cell: what a builder has in hand for a fit. The robot file that goes with them is off as files are: motors by
/// their usual tolerance, slip speed by a factor that lies within two in 95 of 100.
/// </summary>
/// <param name="Test">The test as the builder's file has it, with a tyre that is only guessed.</param>
/// <param name="Truth">The true tyre.</param>
/// <param name="Traces">One log a pull.</param>
/// <param name="IsOfTyre">Whether the tyre sets the pulls, not the motors.</param>
internal sealed record EngineLog(ScenarioSettings Test, TyreSettings Truth, IReadOnlyList<ForceTrace> Traces, bool IsOfTyre)
{
    // Two standard deviations of a factor within two [1].
    private const double SlipSpeedFactor = 2.0;

    // Shares of what the pulls of a case are asked for: throttle and readings a second [1], [1/s].
    private static readonly double[] s_throttlesInDevelopment = [0.5, 0.7, 1.0];
    private static readonly double[] s_ratesInDevelopment = [10.0, 40.0, 80.0];
    private static readonly double[] s_throttlesKept = [0.45, 0.6, 0.85, 0.95];
    private static readonly double[] s_ratesKept = [12.5, 25.0, 60.0, 100.0];

    public double Throttle => Test.Manoeuvre.GreatestThrottle;

    public LoadCellSettings Cell => Test.Tether!.Cell!;

    /// <summary>A case.</summary>
    /// <param name="seed">Its seed.</param>
    /// <param name="isKept">Whether throttles and rates are those that were not used in development.</param>
    public static EngineLog Make(int seed, bool isKept)
    {
        var random = new Random(seed);
        double U(double a, double b) => a + ((b - a) * random.NextDouble());
        double Around(double middle, double factor) => middle * Math.Pow(factor, (2.0 * random.NextDouble()) - 1.0);
        double Normal1() => Normal.Sample(random, 0.0, 1.0);
        double Pick(double[] of) => of[random.Next(of.Length)];
        double throttle = Pick(isKept ? s_throttlesKept : s_throttlesInDevelopment);
        double kinetic = U(0.35, 1.1);
        TyreSettings truth = TestRobots.SoftTyre with
        {
            KineticFriction = kinetic,
            StaticFriction = kinetic * U(1.05, 1.4),
            SlipSpeed = Around(0.3, 3.0),
            BodyStiffness = 2500.0 * Math.Pow(1.5, 0.5 * Normal1()),
            BodyDamping = 4.0 * Math.Pow(1.5, 0.5 * Normal1()),
            VerticalDamping = 8.0,
            RollingRenewal = 75.0 * Math.Pow(1.5, 0.5 * Normal1()),
        };
        double mass = Around(1.2, 2.5);
        double weight = mass * 9.80665;
        double stall = U(1.15, 4.0) * truth.StaticFriction * weight;
        bool isOfTyre = stall > truth.StaticFriction * weight;
        RobotSettings robot = Pulling(TestRobots.FourWheels(TestRobots.SoftTyre, height: 0.028).WithMass(mass), stall, throttle);
        TyreSettings guess = TestRobots.SoftTyre with { VerticalDamping = 8.0, BodyDamping = 4.0, RollingRenewal = 75.0, SlipSpeed = truth.SlipSpeed * Math.Pow(SlipSpeedFactor, 0.5 * Normal1()) };
        double ramp = U(0.6, 3.0);
        int pulls = random.Next(3) == 0 ? 1 : random.Next(3, 7);
        double scatter = U(0.003, 0.03);
        ScenarioSettings test = TestRobots.Pull(With(robot, guess)) with
        {
            Tether = TestRobots.Pull().Tether! with
            {
                Damping = U(0.5, 2.0),
                Slack = 0.001,
                Stiffness = Around(3000.0, 2.0),
                Cell = new LoadCellSettings { Rate = Pick(isKept ? s_ratesKept : s_ratesInDevelopment), FilterTime = random.Next(2) == 0 ? 0.0 : U(0.003, 0.03), Noise = U(0.002, 0.02) * weight / 10.0, Resolution = Pick([0.001, 0.005, 0.01]), Tare = U(-0.5, 0.5) },
            },
            Manoeuvre = new ManoeuvreSettings
            {
                Kind = ManoeuvreKind.PullTest,
                EndTime = 1.0 + ramp + 3.2,
                Commands = [new CommandPoint(1.0, 0.0, 0.0), new CommandPoint(1.0 + ramp, throttle, 0.0, true), new CommandPoint(1.0 + ramp + 2.0, -0.3, 0.0), new CommandPoint(1.2 + ramp + 2.0, 0.0, 0.0)],
            },
        };
        RobotSettings real = Real(robot, Normal1);
        List<ForceTrace> traces = [];
        for (int p = 0; p < pulls; p++)
        {
            double own = 1.0 + (pulls == 1 ? 0.0 : scatter * Normal1());
            double edge = 1.0 + (pulls == 1 ? 0.0 : 0.5 * scatter * Normal1());
            TyreSettings tyre = truth with { StaticFriction = own * edge * truth.StaticFriction, KineticFriction = own * truth.KineticFriction };
            LoadCellSettings cell = test.Tether!.Cell! with { Seed = (ulong)random.Next() };
            RunResult run = Simulator.Run(test with { Robot = With(real, tyre), Tether = test.Tether with { Cell = cell } });
            traces.Add(new ForceTrace { Time = [.. run.CellReadings.Select(r => r.Time)], Force = [.. run.CellReadings.Select(r => r.Force)] });
        }

        return new EngineLog(test, truth, traces, isOfTyre);
    }

    // motors whose stall, at this throttle, is about that force at the floor
    private static RobotSettings Pulling(RobotSettings robot, double stall, double throttle)
    {
        double scale = stall / StallForce.Of(robot, throttle)!.Force;
        MotorSettings Stronger(MotorSettings m) => m with { Resistance = m.Resistance / scale, FrictionTorque = m.FrictionTorque * scale, RotorInertia = m.RotorInertia * scale };
        return robot with
        {
            Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (Stronger(m.Motor), m.Ratio))] })],
            Controllers = [.. robot.Controllers.Select(c => c with { CurrentLimit = 5.0 * scale, OnResistance = c.OnResistance / scale })],
            Battery = robot.Battery! with { Resistance = robot.Battery.Resistance / scale },
        };
    }

    // the robot on the floor: its motors are off by what motors of a kind are, all alike
    private static RobotSettings Real(RobotSettings file, Func<double> normal)
    {
        double resistance = 1.0 + (0.05 * normal());
        double constant = 1.0 + (0.025 * normal());
        return file with { Drives = [.. file.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (m.Motor with { Resistance = resistance * m.Motor.Resistance, TorqueConstant = constant * m.Motor.TorqueConstant }, m.Ratio))] })] };
    }

    private static RobotSettings With(RobotSettings robot, TyreSettings tyre) => robot with { Wheels = [.. robot.Wheels.Select(w => w with { Tyre = tyre })] };
}
