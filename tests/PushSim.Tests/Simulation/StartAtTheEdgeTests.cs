using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Starts at the edge of what can be stood on.</summary>
public class StartAtTheEdgeTests
{
    // three free wheels carry it, the only driven and held one nothing: that is a robot off the floor, not a fault of the start
    [Fact]
    public void A_held_wheel_that_carries_nothing_holds_nothing()
    {
        RobotSettings four = TestRobots.FourWheels(zero: ZeroCommand.Locked, hold: 1.0);
        ScenarioSettings hold = TestRobots.Scenario(
            four with
            {
                Chassis = four.Chassis with { CentreOfMassX = 0.033, CentreOfMassY = 0.045 },
                Drives = [four.Drives[3]],
                Controllers = [four.Controllers[3] with { Motors = [(0, 0)] }],
            },
            ManoeuvreKind.Hold,
            0.0,
            0.0,
            0.8);
        RunResult run = Simulator.Run(hold);
        Assert.Contains("wheel rear right carries nothing when the robot stands still", RunWords.Warnings(run));
        Assert.Equal(RunStatus.Tips, run.Status);
        Assert.StartsWith("has no driven wheel left on the floor at 0.5", RunWords.Cause(run.Stop), StringComparison.Ordinal);
    }

    // heat that flows into no capacity, which the reader should have refused: no stiff tyre's fault
    [Fact]
    public void Rates_that_are_not_finite_are_not_blamed_on_a_stiff_part()
    {
        MotorSettings motor = TestRobots.Motor with { WindingToCaseThermalResistance = 8.0 };
        RunResult run = Simulator.Run(TestRobots.Launch(TestRobots.FourWheels(motor: motor)));
        Assert.Equal((RunStatus.Failed, "a force, current or temperature is not finite at 0.000 s; report this scenario"), (run.Status, RunWords.Cause(run.Stop)));
    }

    // sin 50 deg each way is more than all of gravity
    [Fact]
    public void A_floor_that_leans_past_upright_is_named_as_the_cause()
    {
        double steep = 50.0 * Math.PI / 180.0;
        ScenarioSettings hold = TestRobots.Scenario(TestRobots.FourWheels(), ManoeuvreKind.Hold, 0.0, 0.0, 0.2);
        RunResult run = Simulator.Run(hold with { Floor = new FloorSettings { SlopeX = steep, SlopeY = steep } });
        Assert.Equal(RunStatus.Failed, run.Status);
        Assert.Contains("slope_x", RunWords.Cause(run.Stop), StringComparison.Ordinal);
    }
}
