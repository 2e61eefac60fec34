using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Verdicts of robots that lack what the usual sentence names.</summary>
public class VerdictTests
{
    private static readonly RobotSettings Whole = TestRobots.FourWheels();

    // downhill, pushed along or at rest: no limit is named where there is no motor
    [Theory]
    [InlineData(ManoeuvreKind.Launch, 0.1)]
    [InlineData(ManoeuvreKind.Brake, 0.0)]
    public void A_robot_that_nothing_drives_has_no_limit(ManoeuvreKind kind, double slope)
    {
        RobotSettings robot = Whole with { Drives = [.. Whole.Drives.Select(d => d with { Motors = [] })], Controllers = [], Battery = null };
        ScenarioSettings s = TestRobots.Scenario(robot, kind, 0.0, 0.0, 2.0);
        RunResult run = Simulator.Run(s with { Floor = s.Floor with { SlopeX = -slope }, Manoeuvre = s.Manoeuvre with { InitialSpeed = kind == ManoeuvreKind.Brake ? 0.1 : 0.0 } });
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.Null(run.Answers.LimitedBy);
        Assert.Contains(kind == ManoeuvreKind.Launch ? "reaches" : "stand", run.Verdict);
        Assert.DoesNotContain("limit", run.Verdict);
    }
}
