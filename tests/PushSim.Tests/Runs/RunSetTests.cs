using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Recorded runs in lanes against the same runs alone: to the bit, by the same integrator of one lane. Checked against the project's own scalar path, whose outside checks are its own.</summary>
public class RunSetTests
{
    // other numbers, another structure in between, one in single precision, one that cannot start, one that runs out of work
    private static readonly ScenarioSettings[] s_runs = Runs();

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Runs_in_lanes_have_the_bits_of_each_alone(int threads)
    {
        var together = new RunResult?[s_runs.Length];
        RunSet.Run(s_runs.Length, i => s_runs[i], (i, r) => together[i] = r, threads, WorkBudget.Endless(), inLanes: true);
        for (int i = 0; i < s_runs.Length; i++)
        {
            RunResult alone = Simulator.Run(s_runs[i]);
            RunResult own = together[i]!;
            Assert.Equal((alone.Status, alone.RhsEvaluations, alone.Steps, alone.RejectedSteps, alone.EnergyResidualRatio), (own.Status, own.RhsEvaluations, own.Steps, own.RejectedSteps, own.EnergyResidualRatio));
            Assert.Equal(alone.Stop?.Kind, own.Stop?.Kind);
            Assert.Equal(alone.Time.Values.ToArray(), own.Time.Values.ToArray());
            Series[] series = [.. alone.Trace.All];
            Assert.All(series.Zip(own.Trace.All), pair => Assert.Equal(pair.First.Values.ToArray(), pair.Second.Values.ToArray()));
            Assert.Equal(alone.Answers with { Binding = null }, own.Answers with { Binding = null });
        }

        Assert.Equal(2, together.Count(r => r!.Status == RunStatus.Failed));
    }

    [Theory]
    [InlineData(false)]
    [InlineData(true)]
    public void Together_they_have_no_more_than_the_work(bool inLanes)
    {
        ScenarioSettings[] few = s_runs[..3];
        long all = few.Sum(s => Simulator.Run(s).RhsEvaluations);
        var enough = new WorkBudget(all);
        RunSet.Run(few.Length, i => few[i], (_, _) => { }, 1, enough, inLanes);
        Assert.Equal(all, enough.Done);
        Assert.Throws<OutOfWorkException>(() => RunSet.Run(few.Length, i => few[i], (_, _) => { }, 1, new WorkBudget(all - 1), inLanes));
        Assert.Throws<OutOfWorkException>(() => RunSet.Run(few.Length, i => few[i], (_, _) => { }, 1, new WorkBudget(100), inLanes));
    }

    private static ScenarioSettings[] Runs()
    {
        ScenarioSettings launch = TestRobots.Launch() with { Numerics = new NumericsSettings { SampleRate = 200.0 } };
        ScenarioSettings shove = TestRobots.Shove(TestRobots.FourWheels().WithMass(1.6), TestRobots.FourWheels()) with { Numerics = launch.Numerics };
        ScenarioSettings spot = TestRobots.Spot() with { Numerics = launch.Numerics };
        return
        [
            .. Enumerable.Range(0, 3).Select(i => launch with { Robot = launch.Robot.WithMass(1.2 + (0.1 * i)) }),
            shove,
            .. Enumerable.Range(0, 7).Select(i => spot with { Robot = spot.Robot.WithMass(1.2 + (0.1 * i)) }),
            launch with { Numerics = launch.Numerics with { Precision = Precision.Single } },
            launch with { Robot = launch.Robot with { Chassis = launch.Robot.Chassis with { CentreOfMassX = 5.0 } } },
            shove with { Shove = shove.Shove with { Offset = 0.01 } },
            launch with { Numerics = launch.Numerics with { Tolerance = 1e-12, MaxEvaluationsPerSecond = 1.0 }, Manoeuvre = launch.Manoeuvre with { EndTime = 60.0 } },
        ];
    }
}
