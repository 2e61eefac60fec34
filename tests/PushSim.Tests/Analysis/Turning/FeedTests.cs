using PushSim.Analysis.Turning;
using PushSim.Contact;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using PushSim.Words.Turns;
using Xunit;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>What feeds a growing swing: against robots that lack the cause, whose own modes are found without any of it.</summary>
public class FeedTests
{
    // A printed tyre under a light robot: its friction is the same at every slip speed, and it swings up all the same.
    private static readonly TyreSettings s_flat = TestRobots.SoftTyre with
    {
        StaticFriction = 0.55, KineticFriction = 0.55, BreakawayDeflection = 3e-6, BodyStiffness = 2.3e4, BodyDamping = 2.9, TreadMass = 5.5e-3, VerticalStiffness = 4.1e5,
        VerticalDamping = 2.0, RollingRenewal = 1250.0,
    };

    private static SteadyTurn Turn(TyreSettings tyre) => RandomTurns.Turn(TestRobots.Spot(High(TestRobots.FourWheels(tyre))))!;

    // its underside stays off the floor, however soft its springs are
    private static RobotSettings High(RobotSettings robot) => robot with { Outline = OutlineSettings.Box(robot.Chassis, 2.0, 2.1) };

    // all wheels of an even robot slide alike, so friction of that one value, on a tread as stiff, makes the same turn without the fall
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.15)]
    public void Without_the_fall_it_is_the_robot_whose_friction_does_not_fall(double exponent)
    {
        TyreSettings tyre = GrowthTests.Bouncy with { LoadExponent = exponent };
        SteadyTurn turn = Turn(tyre);
        TurnFeed feed = FeedFinder.Of(turn)!;
        double slip = turn.Rings[0].SlipSpeed / tyre.SlipSpeed;
        double here = tyre.KineticFriction + ((tyre.StaticFriction - tyre.KineticFriction) * Math.Exp(-slip * slip));
        SteadyTurn flat = Turn(tyre with { StaticFriction = here, KineticFriction = here, BreakawayDeflection = tyre.BreakawayDeflection * here / tyre.StaticFriction });
        Assert.True(turn.Growth > 0.0 && feed.WithoutFall < 0.0);
        Assert.Contains(flat.Modes, m => Math.Abs(m.Growth - feed.WithoutFall) < 1e-3 * Math.Abs(feed.WithoutFall));
    }

    // On springs a thousand times softer, without damping, a wheel keeps its load while the body moves by as much as a tread swings: its treads swing as
    // those of the robot as it is do with steady loads.
    [Fact]
    public void With_steady_loads_treads_swing_as_on_soft_springs()
    {
        SteadyTurn turn = Turn(s_flat);
        TurnFeed feed = FeedFinder.Of(turn)!;
        Assert.Equal(turn.Growth, feed.WithoutFall, 1e-6 * turn.Growth);
        Assert.True(turn.Growth > 0.0 && feed.WithSteadyLoad < 0.0);
        Assert.Equal(feed.WithSteadyLoad, feed.WithNeither, 1e-6 * Math.Abs(feed.WithNeither));

        TurnMode[] soft = [.. Turn(s_flat with { VerticalStiffness = 1e-3 * s_flat.VerticalStiffness, VerticalDamping = 0.0 }).Modes.Where(m => m.Frequency > 100.0)];
        IReadOnlyList<TurnMode> steady = TurnModes.Of(turn.Model, turn.Model.Jacobian(turn.State, isFlat: false, isLoadSteady: true));
        Assert.Equal(8, soft.Length);
        Assert.All(soft, s => Assert.True(steady.Min(m => Math.Abs(m.Growth - s.Growth)) < 0.01 * Math.Abs(s.Growth), $"{s.Growth} at {s.Frequency} Hz"));
    }

    // the model is left as it was
    [Fact]
    public void Looking_for_the_feed_changes_nothing()
    {
        SteadyTurn turn = Turn(GrowthTests.Bouncy with { LoadExponent = 0.1 });
        MathNet.Numerics.LinearAlgebra.Matrix<double> before = turn.Model.Jacobian(turn.State);
        Assert.Equal(FeedFinder.Of(turn), FeedFinder.Of(turn));
        Assert.Equal(before, turn.Model.Jacobian(turn.State));
        Assert.Null(FeedFinder.Of(Turn(TestRobots.SoftTyre)));
    }

    [Fact]
    public void Friction_that_does_not_fall_is_not_blamed()
    {
        RunResult run = TurnReview.Review(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(s_flat))));
        TurnResult r = run.Turning!;
        Assert.Contains(TurnExplanation.Of(r, run), l => l.StartsWith("The body's own swinging makes it:", StringComparison.Ordinal));
        Assert.Contains(TurnExplanation.Of(r, run), l => l.Contains("falling friction feeds no chatter", StringComparison.Ordinal));
    }

    // growth without the fall, with steady loads, with neither
    [Theory]
    [InlineData(-1.0, 2.0, -3.0, "Falling friction makes it")]
    [InlineData(7.0, -2.0, -3.0, "Falling friction does not make it: with friction that is the same at every slip speed it would still grow, doubling every 99 ms. The body's own swinging makes it")]
    [InlineData(-1.0, -2.0, -3.0, "It takes two causes")]
    [InlineData(7.0, 2.0, -3.0, "each enough alone: falling friction (doubling every 347 ms without the other), and that a tread")]
    [InlineData(7.0, 2.0, 3.0, "What else feeds it is not known")]
    public void Each_cause_is_told(double withoutFall, double steadyLoad, double neither, string words)
    {
        RunResult run = TurnReview.Review(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy))));
        IReadOnlyList<string> told = TurnExplanation.Of(run.Turning! with { Feed = new TurnFeed(withoutFall, steadyLoad, neither) }, run);
        Assert.Contains(told, l => l.Contains(words, StringComparison.Ordinal));
        Assert.Equal(withoutFall <= 0.0 || steadyLoad > 0.0, told.Any(l => l.StartsWith("What feeds a chatter", StringComparison.Ordinal)));
    }

    // two at one frequency are told as one, and of the others the fastest growing
    [Fact]
    public void One_more_growing_swing_is_told()
    {
        RunResult run = TurnReview.Review(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy))));
        TurnMode first = run.Turning!.Modes[0];
        TurnMode Swing(TurnPart part, double growth, double frequency) => new(part, growth, frequency, [(part, 1.0)]);
        IReadOnlyList<string> Told(params TurnMode[] more) => TurnExplanation.Of(run.Turning! with { Modes = [first, .. more] }, run);
        IReadOnlyList<string> told = Told(Swing(TurnPart.Ring, 5.0, 1.1 * first.Frequency), Swing(TurnPart.Roll, 2.1, 21.8), Swing(TurnPart.Pitch, 1.0, 30.0), Swing(TurnPart.Yaw, -1.0, 2.0));
        Assert.StartsWith("Another swing grows, too: roll at 21.8 Hz, doubling every 330 ms.", Assert.Single(told, l => l.StartsWith("Another swing", StringComparison.Ordinal)), StringComparison.Ordinal);
        Assert.DoesNotContain(Told(Swing(TurnPart.Ring, 5.0, 1.1 * first.Frequency), Swing(TurnPart.Drift, 1.0, 0.0), Swing(TurnPart.Roll, -1.0, 21.8)), l => l.StartsWith("Another swing", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.998, "margin 0.998, below 1 it buzzes: it does")]
    [InlineData(1.0004, "margin 1.0004, below 1 it buzzes: it is quiet")]
    [InlineData(0.93, "margin 0.93, below 1 it buzzes: it does")]
    public void A_margin_near_one_is_told_apart_from_it(double margin, string words)
    {
        RunResult run = TurnReview.Review(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy))));
        RingCheck ring = run.Turning!.Rings[0] with { Margin = margin };
        Assert.Contains(TurnExplanation.Of(run.Turning! with { Rings = [ring] }, run), l => l.Contains(words, StringComparison.Ordinal));
    }
}
