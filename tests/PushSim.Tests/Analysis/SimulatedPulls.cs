using MathNet.Numerics.Distributions;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;

namespace PushSim.Tests.Analysis;

/// <summary>A log of several pulls that the engine made with a known tyre: scatter from pull to pull, noise, tare, a clock of its own.</summary>
/// <param name="Scenario">The test, with a tyre that is only guessed.</param>
/// <param name="Tyre">The true tyre.</param>
/// <param name="Trace">The log.</param>
internal sealed record SimulatedPulls(ScenarioSettings Scenario, TyreSettings Tyre, ForceTrace Trace)
{
    private const double Slack = 1.5;

    public static SimulatedPulls Make(int seed, int pulls, bool isDrag = false)
    {
        var random = new Random(seed);
        double Around(double middle, double factor) => middle * Math.Pow(factor, (2.0 * random.NextDouble()) - 1.0);
        TyreSettings guess = TestRobots.SoftTyre;
        double kinetic = Around(0.8, 1.4);
        TyreSettings tyre = guess with
        {
            KineticFriction = kinetic, StaticFriction = kinetic * Around(1.25, 1.15), SlipSpeed = Around(0.3, 2.0), BodyStiffness = Around(2500.0, 1.5), BodyDamping = Around(2.0, 1.5),
        };
        ScenarioSettings pull = TestRobots.Pull(TestRobots.FourWheels(guess));
        ScenarioSettings test = pull with
        {
            Numerics = pull.Numerics with { Tolerance = 1e-6 },
            Tether = pull.Tether! with { Damping = 0.6, Cell = new LoadCellSettings { Rate = 80.0, FilterTime = 0.01, Resolution = 0.005, Noise = Around(0.02, 1.5) } },
        };
        test = isDrag ? Dragged(test) : test;
        List<(double Time, double Force)> log = [];
        double now = 0.0;
        for (int p = 0; p < pulls; p++)
        {
            double scatter = 1.0 + (0.01 * Normal.Sample(random, 0.0, 1.0));
            TyreSettings own = tyre with { StaticFriction = scatter * tyre.StaticFriction, KineticFriction = scatter * tyre.KineticFriction };
            RobotSettings robot = test.Robot with { Wheels = [.. test.Robot.Wheels.Select(w => w with { Tyre = own })] };
            LoadCellSettings cell = test.Tether!.Cell! with { Tare = 0.3, Seed = (ulong)random.Next() };
            RunResult run = Simulator.Run(test with { Robot = robot, Tether = test.Tether with { Cell = cell } });
            AddSlack(random.NextDouble() / cell.Rate);
            log.AddRange(run.CellReadings.Select(r => (now + r.Time, r.Force)));
            now += run.Time[^1];
            AddSlack(0.0);

            void AddSlack(double phase)
            {
                double n = Slack * cell.Rate;
                log.AddRange(Enumerable.Range(1, (int)n).Select(i => (now + (i / cell.Rate), Math.Round((cell.Tare + Normal.Sample(random, 0.0, cell.Noise)) / cell.Resolution) * cell.Resolution)));
                now += Slack + phase + (1.0 / cell.Rate);
            }
        }

        return new SimulatedPulls(test, tyre, new ForceTrace { Time = [.. log.Select(r => r.Time)], Force = [.. log.Select(r => r.Force)] });
    }

    // the anchor moves off slowly ahead of the robot, whose drives stand
    private static ScenarioSettings Dragged(ScenarioSettings pull) => pull with
    {
        Tether = pull.Tether! with { HookX = 0.09, AnchorX = 0.5, AnchorSpeed = [(0.0, 0.0), (0.2, 0.0), (0.4, 0.02)] },
        Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.DragTest, EndTime = 3.0, Commands = [] },
    };
}
