using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Tyres;

/// <summary>Friction sideways and the turning patch within a robot: mean distance of a patch's points, rest, ledger, symmetry. Numbers computed here.</summary>
public class PatchLawTests
{
    // 0.3826 of its side for a square (closed form (sqrt 2 + asinh 1)/6); a thin strip has a quarter of its length
    [Theory]
    [InlineData(0.02, 0.02, 0.3826)]
    [InlineData(0.02, 2e-6, 0.25)]
    public void Mean_distance_of_a_patch(double length, double width, double share) =>
        Assert.Equal(share * length, (TestRobots.SoftTyre with { PatchLength = length, PatchWidth = width }).SpinRadius, 5e-5 * length);

    private static RobotSettings Robot() => TestRobots.FourWheels(TestRobots.SoftTyre with { LateralFrictionRatio = 1.3, PatchWidth = 0.02, PatchLength = 0.015 });

    [Fact]
    public void A_turn_keeps_its_ledger()
    {
        RunResult run = Simulator.Run(TestRobots.Scenario(Robot(), ManoeuvreKind.Spot, 0.0, 0.7, 1.0, 0.1));
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.True(run.EnergyResidualRatio < 1e-5, $"{run.EnergyResidualRatio:E1}");
        Assert.All(run.Ledger.Where(e => e.Key is "tread_j" or "tyre_body_j"), e => Assert.True(e.Joule > 0.0));
    }

    [Fact]
    public void It_turns_slower_than_without()
    {
        double With(RobotSettings r) => Simulator.Run(TestRobots.Scenario(r, ManoeuvreKind.Spot, 0.0, 0.7, 1.0, 0.1)).Answers.EffectiveTrackRatio!.Value;
        Assert.True(With(Robot()) > With(TestRobots.FourWheels(TestRobots.SoftTyre)) + 0.05);
    }

    /// <summary>A turn to the right is the mirrored one to the left, to the bit.</summary>
    [Fact]
    public void Left_and_right_are_mirror_images()
    {
        RunResult left = Simulator.Run(TestRobots.Scenario(Robot(), ManoeuvreKind.Arc, 0.4, 0.3, 0.6, 0.05));
        RobotSettings robot = Robot();
        RobotSettings mirrored = robot with
        {
            Wheels = [.. robot.Wheels.Select(w => w with { Y = -w.Y })],
            Controllers = [.. robot.Controllers.Select(c => c with { Side = c.Side == CommandSide.Left ? CommandSide.Right : CommandSide.Left })],
        };
        RunResult right = Simulator.Run(TestRobots.Scenario(mirrored, ManoeuvreKind.Arc, 0.4, -0.3, 0.6, 0.05));
        Assert.Equal(left.Trace.Body.YawRate.Select(v => 0.0 - v), right.Trace.Body.YawRate.Select(v => 0.0 + v));
        Assert.Equal(left.Trace.Body.X, right.Trace.Body.X);
    }

    /// <summary>A robot that stands on a slope does not creep, whichever way it faces.</summary>
    [Fact]
    public void At_rest_it_stays()
    {
        ScenarioSettings s = TestRobots.Scenario(Robot(), ManoeuvreKind.Hold, 0.0, 0.0, 4.0, 0.1);
        RunResult run = Simulator.Run(s with { Floor = s.Floor with { SlopeX = 0.05, SlopeY = 0.1 }, Manoeuvre = s.Manoeuvre with { InitialHeading = 0.5 } });
        Series heading = run.Trace.Body.Heading, y = run.Trace.Body.Y;
        int middle = run.Time.Length / 2;
        Assert.True(Math.Abs(heading[^1] - heading[middle]) < 1e-6, $"{heading[^1] - heading[middle]:E1} rad");
        Assert.True(Math.Abs(y[^1] - y[middle]) < 1e-6, $"{y[^1] - y[middle]:E1} m");
    }

    /// <summary>Drives turned from outside take up their speeds, and their work closes the ledger.</summary>
    [Fact]
    public void Drives_turned_from_outside_are_in_the_ledger()
    {
        ScenarioSettings s = TestRobots.Scenario(Robot(), ManoeuvreKind.Hold, 0.0, 0.0, 1.5, 0.1);
        RobotSettings free = s.Robot with { Controllers = [], Battery = null, Drives = [.. s.Robot.Drives.Select(d => d with { Motors = [] })] };
        ScenarioSettings turned = s with { Robot = free, GivenSpeeds = [.. free.Drives.Select((_, d) => new GivenSpeed(d, [(0.0, 0.0), (0.5, d % 2 == 0 ? -10.0 : 20.0), (1.0, d % 2 == 0 ? -10.0 : 20.0)]))] };
        RunResult run = Simulator.Run(turned);
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.Equal(20.0 * free.Wheels[free.Drives[1].Wheels[0].Wheel].Radius, run.Trace.Wheels[1].SurfaceSpeed[^1], 1e-9);
        Assert.True(run.Ledger.Single(e => e.Key == "anchor_j").Joule > 0.1);
        Assert.True(run.EnergyResidualRatio < 1e-6, $"{run.EnergyResidualRatio:E1}");
        Assert.True(run.Trace.Body.YawRate[^1] > 0.5);
    }
}
