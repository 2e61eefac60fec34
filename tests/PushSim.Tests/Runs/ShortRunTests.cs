using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Runs that say less than others: those of one sample, and those whose battery fails.</summary>
public class ShortRunTests
{
    [Fact]
    public void A_load_cell_shows_nothing_of_a_single_sample()
    {
        ScenarioSettings pull = TestRobots.Pull();
        RunResult run = Simulator.Run(pull with
        {
            Manoeuvre = pull.Manoeuvre with { EndTime = 0.01 },
            Tether = pull.Tether! with { Cell = new LoadCellSettings() },
            Numerics = pull.Numerics with { SampleRate = 50.0 },
        });
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.Single(run.Time);
        Assert.Empty(run.CellReadings);
    }

    // 5 ohm behind motors of some ohm: with full throttle from a standstill no bus voltage above half of that at rest feeds them
    [Fact]
    public void A_run_whose_battery_fails_tells_neither_answers_nor_energy()
    {
        ScenarioSettings launch = TestRobots.Launch();
        RunResult run = Simulator.Run(launch with { Robot = launch.Robot with { Battery = launch.Robot.Battery! with { Resistance = 5.0 } } });
        Assert.Equal(RunStatus.Failed, run.Status);
        Assert.Contains("cannot deliver", RunWords.Cause(run.Stop));
        Assert.Empty(run.Ledger);
        Assert.Null(run.Answers.TopSpeed);
        Assert.NotEmpty(Simulator.Run(launch).Ledger);
    }
}
