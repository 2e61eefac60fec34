using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>What a verdict says of who steered: past 30 degrees, and by whose driver. Sentences of our own.</summary>
public class SteeringWordsTests
{
    [Theory]
    [InlineData(0.5, 0.0, 0.52, 0.1, "")]
    [InlineData(0.5, 0.5, 0.53, 0.1, " Both drivers steer, but wheels that slide hardly turn a robot.")]
    [InlineData(0.5, 0.5, 0.1, -0.53, " Both drivers steer, but wheels that slide hardly turn a robot.")]
    [InlineData(0.0, 0.0, -0.53, 0.0, " Nobody steers here: real drivers would turn back (driver.steering).")]
    [InlineData(0.5, 0.0, 1.0, 1.0, " Only the driver of left steers.")]
    [InlineData(0.0, 0.5, 1.0, 1.0, " Only the driver of right steers.")]
    public void Who_steered_is_told_past_thirty_degrees(double first, double second, double turned, double other, string expected)
    {
        RobotSettings robot = TestRobots.FourWheels();
        ScenarioSettings s = TestRobots.Shove(robot with { Name = "left" }, robot with { Name = "right" }, end: 0.05);
        s = s with
        {
            Manoeuvre = s.Manoeuvre with { Driver = new DriverSettings { Steering = first } },
            Opponent = s.Opponent! with { Manoeuvre = s.Manoeuvre with { Driver = new DriverSettings { Steering = second } } },
        };
        ShoveOutcome outcome = Simulator.Run(s).Shove! with { TurnedAside = (turned, other) };
        Assert.Equal(expected, ShoveVerdict.Steering(s, outcome));
    }
}
