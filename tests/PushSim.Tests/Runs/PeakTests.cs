using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Peaks of a run, with moment and limit. Own checks.</summary>
public class PeakTests
{
    [Theory]
    [InlineData(Precision.Double)]
    [InlineData(Precision.Single)]
    public void Peaks_do_not_hang_on_the_sample_rate(Precision precision)
    {
        RobotPeaks At(double rate)
        {
            ScenarioSettings s = TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels(), end: 0.4);
            return Simulator.Run(s with { Numerics = s.Numerics with { SampleRate = rate, Precision = precision } }).Answers.Peaks;
        }

        RobotPeaks peaks = At(100.0);
        Assert.Equal(peaks, At(1000.0));
        Assert.True(peaks.MotorCurrent!.Value.Value > 0.0 && peaks.WheelLoad!.Value.Value > 0.0);
    }

    // V/(R + R_on) of a motor at rest under the battery's voltage there, the moment the command comes: i (R + R_on) = V
    [Fact]
    public void The_inrush_of_a_start_is_seen_at_the_moment_of_the_command()
    {
        ScenarioSettings s = TestRobots.Launch(TestRobots.FourWheels());
        RunResult run = Simulator.Run(s with { Numerics = s.Numerics with { SampleRate = 40.0 } });
        (RobotSettings robot, Peak peak) = (run.Scenario.Robot, run.Answers.Peaks.MotorCurrent!.Value);
        ControllerSettings controller = robot.Controllers[0];
        MotorSettings motor = robot.Drives[controller.Motors[0].Drive].Motors[controller.Motors[0].Motor].Motor;
        Assert.Equal(run.Scenario.Manoeuvre.FirstCommand!.Value, peak.Time, 1e-9);
        Assert.Equal(run.Answers.Peaks.BatteryVoltage!.Value.Time, peak.Time);
        Assert.Equal(run.Answers.LowestBatteryVoltage!.Value / (motor.Resistance + controller.OnResistance), peak.Value, 1e-6 * peak.Value);
    }

    // a limit of 2 A holds the motors of a launch to 2 A each; no limit: none is told
    [Fact]
    public void The_limit_is_that_of_the_controller()
    {
        Peak limited = Simulator.Run(TestRobots.Launch(TestRobots.FourWheels(limit: 2.0))).Answers.Peaks.MotorCurrent!.Value;
        Assert.Equal(2.0, limited.Limit!.Value, 1e-9);
        Assert.Equal(2.0, limited.Value, 1e-6);
        Assert.Null(Simulator.Run(TestRobots.Launch(TestRobots.FourWheels(limit: double.PositiveInfinity))).Answers.Peaks.MotorCurrent!.Value.Limit);
    }

    // a match and its recorded run tell the same peaks
    [Fact]
    public void A_match_tells_the_peaks_of_its_run()
    {
        ScenarioSettings s = RandomMatches.Of(3, end: 0.22);
        MatchOutcome match = MatchBatch.RunAlone(0, s);
        RunResult run = Simulator.Run(s);
        Assert.Equal(run.Answers.PeakBatteryCurrent, match.First.PeakBatteryCurrent);
        Assert.Equal(run.Answers.LowestBatteryVoltage, match.First.LowestVoltage);
    }
}
