using PushSim.Analysis.Limits;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>The throttle of the hardest push, against what the force of a tyre that just holds allows, and against runs at a wall.</summary>
public class BestThrottleTests
{
    private static readonly TyreSettings s_falling = TestRobots.SoftTyre with { VerticalDamping = 8.0, StaticFriction = 1.0, KineticFriction = 0.7, SlipSpeed = 0.4, RollingResistance = 0.0 };

    // no more than mu_s m g, from statics, and near it: the renewal of the tread takes a few per cent
    [Fact]
    public void It_is_where_the_tyres_just_hold()
    {
        ScenarioSettings s = Wall(s_falling);
        BestThrottle best = BestThrottleFinder.Of(s)!;
        double most = s_falling.StaticFriction * s.Robot.Chassis.Mass * s.Floor.Gravity;
        Assert.InRange(best.Push / most, 0.9, 1.0);
        Assert.InRange(best.Throttle, 0.1, 0.8);
        Assert.InRange(best.Worth, best.WorthLow, best.WorthHigh);
    }

    // runs at that throttle and at full throttle differ by what is told
    [Fact]
    public void A_run_at_a_wall_gives_what_is_told()
    {
        ScenarioSettings s = Wall(s_falling);
        BestThrottle best = BestThrottleFinder.Of(s)!;
        double full = Push(s);
        double eased = Push(s with { Manoeuvre = s.Manoeuvre with { Commands = [new(0.1, 1.02 * best.Throttle, 0.0)] } });
        Assert.Equal(best.AskedPush, full, 0.05 * full);
        Assert.InRange((eased / full) - 1.0, 0.5 * best.Worth, 1.2 * best.Worth);
    }

    [Fact]
    public void Where_friction_does_not_fall_nothing_is_gained()
    {
        BestThrottle best = BestThrottleFinder.Of(Wall(s_falling with { KineticFriction = 1.0 }))!;
        Assert.InRange(best.WorthHigh, 0.0, 0.01);
    }

    private static double Push(ScenarioSettings s) => Simulator.Run(s).Trace.Contact!.Push.TakeLast(400).Average();

    private static ScenarioSettings Wall(TyreSettings tyre)
    {
        ScenarioSettings s = TestRobots.Launch();
        return s with
        {
            Robot = TestRobots.FourWheels(tyre),
            Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.WallPush, EndTime = 2.0, Commands = [new(0.1, 1.0, 0.0)] },
            Walls = [new(0.1, -0.5, 0.1, 0.5)],
        };
    }
}
