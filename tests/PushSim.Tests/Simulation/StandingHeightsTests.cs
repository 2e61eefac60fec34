using PushSim.Contact;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Heights of an outline as measured on the standing robot.</summary>
public class StandingHeightsTests
{
    // four equal tyres under the centre of mass sink by m g/(4 k), from statics
    [Fact]
    public void A_level_robot_is_raised_by_its_sink()
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre);
        double sink = robot.Chassis.Mass * 9.80665 / (4.0 * TestRobots.SoftTyre.VerticalStiffness);
        RobotSettings body = StandingHeights.OfBody(robot);
        foreach ((FaceSettings measured, FaceSettings own) in robot.OutlineOrBox.Faces.Zip(body.OutlineOrBox.Faces))
        {
            Assert.Equal(measured.LowerEdge + sink, own.LowerEdge, 1e-9);
            Assert.Equal(measured.UpperEdge + sink, own.UpperEdge, 1e-9);
        }
    }

    // the engine's own standing state puts the tip where it was measured; 1 micrometre for the small angles of the conversion
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.02)]
    public void The_tip_of_the_standing_robot_is_where_it_was_measured(double forward)
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre, forward: forward);
        OutlineSettings box = robot.OutlineOrBox;
        robot = robot with { Outline = box with { Faces = [new FaceSettings(0.001, 0.03, 0.5), .. box.Faces.Skip(1)] } };
        RobotSettings body = StandingHeights.OfBody(robot);
        RunResult rest = Simulator.Run(TestRobots.Launch() with { Robot = body, Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.Hold, Commands = [], EndTime = 0.05 } });
        OutlineSettings outline = rest.Scenario.Robot.OutlineOrBox;
        double x = outline.Corners[0].X - rest.Scenario.Robot.Chassis.CentreOfMassX;
        Assert.Equal(0.001, outline.Faces[0].LowerEdge + rest.Trace.Body.Heave[0] - (x * rest.Trace.Body.Pitch[0]), 1e-6);
    }

    [Theory]
    [InlineData(0.0012, true)]
    [InlineData(0.004, false)]
    public void A_small_difference_of_tips_is_told_as_undecided(double other, bool isTold)
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });
        RunResult run = Simulator.Run(TestRobots.Shove(Ramp(robot, 0.001), Ramp(robot, other), end: 0.5, gap: 0.02));
        Assert.Equal(isTold, run.Warnings.OfType<RunWarning.TipsUndecided>().Any());
    }

    private static RobotSettings Ramp(RobotSettings robot, double tip)
    {
        OutlineSettings box = robot.OutlineOrBox;
        return StandingHeights.OfBody(robot with { Outline = box with { Faces = [new FaceSettings(tip, 0.03, 0.6), .. box.Faces.Skip(1)] } });
    }
}
