using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Runs that end before a second sample.</summary>
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
}
