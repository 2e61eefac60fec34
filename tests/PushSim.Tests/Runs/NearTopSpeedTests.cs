using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Runs;

public class NearTopSpeedTests
{
    // 11 V at the bus and the whole command: motors stand at 11 V over one winding each, two in series at 11 V over both
    [Theory]
    [InlineData(Wiring.Single, 0.9, false)]
    [InlineData(Wiring.Single, 0.2, true)]
    [InlineData(Wiring.Series, 0.45, false)]
    [InlineData(Wiring.Series, 0.1, true)]
    public void Motors_are_fast_where_they_take_little_of_their_stall_current(Wiring wiring, double ofOneWinding, bool isFast)
    {
        RobotSettings robot = TestRobots.FourWheels();
        if (wiring == Wiring.Series)
        {
            robot = robot with { Controllers = [robot.Controllers[0] with { Motors = [(0, 0), (2, 0)], Wiring = wiring }, robot.Controllers[1] with { Motors = [(1, 0), (3, 0)], Wiring = wiring }] };
        }

        double current = ofOneWinding * 11.0 / TestRobots.Motor.Resistance;
        RunHistory Made(Func<double, double> limiting, Func<double, double> amperes) => MadeHistory.Of(
            TestRobots.Launch(robot), [("limiting", limiting), .. robot.Drives.Select(d => ($"motor_{Slug.Of(d.Name)}_1_current_a", amperes))]);
        Assert.Equal(isFast, NearTopSpeed.Is(Made(_ => 0.0, _ => current), 0.0));

        // only what came since the touch, and while no controller limits, counts
        Assert.Equal(isFast, NearTopSpeed.Is(Made(_ => 0.0, t => t < 0.5 ? 1e6 : current), 0.5));
        Assert.Equal(isFast, NearTopSpeed.Is(Made(t => t < 0.5 ? 1.0 : 0.0, t => t < 0.5 ? 1e6 : current), double.NaN));
    }
}
