using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Runs;

public class PackWarningTests
{
    // a pack of 0.45 A h: 50 times what would empty it in an hour is 22.5 A
    [Theory]
    [InlineData(53.1, 0.060, true)]
    [InlineData(53.1, 0.040, false)]
    [InlineData(22.0, 0.600, false)]
    public void A_current_that_no_usual_pack_gives_is_warned_of(double amperes, double seconds, bool isWarned)
    {
        ScenarioSettings scenario = TestRobots.Launch();
        RunHistory history = MadeHistory.Of(scenario, ("battery_current_a", t => t >= 0.3 && t <= 0.3 + seconds ? amperes : 2.0));
        List<string> warnings = [.. RunWarnings.Of(new RobotSystem(scenario), history).Where(w => w is RunWarning.HardOnPack).Select(WarningWords.Of)];
        Assert.Equal(isWarned ? ["the battery gives up to 53.1 A, which is 118 times what would empty it in an hour; ask the maker whether the pack may"] : [], warnings);
    }

    // two short ones are no long one, and a run tells what its history shows
    [Fact]
    public void Only_one_stretch_counts_and_a_run_warns()
    {
        ScenarioSettings scenario = TestRobots.Launch();
        RunHistory twice = MadeHistory.Of(scenario, ("battery_current_a", t => t is (>= 0.3 and <= 0.34) or (>= 0.4 and <= 0.44) ? 60.0 : 2.0));
        Assert.DoesNotContain(RunWarnings.Of(new RobotSystem(scenario), twice), w => w is RunWarning.HardOnPack);
        RobotSettings small = scenario.Robot with { Battery = scenario.Robot.Battery! with { Capacity = 0.02 * 3600.0 } };
        RunResult run = Simulator.Run(TestRobots.Pull(small));
        Assert.True(run.Trace.Battery!.Current.Max() > 1.0);
        Assert.Contains(run.Warnings, w => w is RunWarning.HardOnPack);
        Assert.DoesNotContain(Simulator.Run(TestRobots.Pull()).Warnings, w => w is RunWarning.HardOnPack);
    }
}
