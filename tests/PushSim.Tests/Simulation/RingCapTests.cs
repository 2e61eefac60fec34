using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>The cap on a hard tyre's ring frequency moves neither pull nor launch nor turn (computed here, against no cap).</summary>
public class RingCapTests
{
    private static readonly TyreSettings s_hard = TestRobots.SoftTyre with
    {
        StaticFriction = 0.35, KineticFriction = 0.25, BreakawayDeflection = 0.1e-3, BodyStiffness = 1e5, BodyDamping = 6.0, TreadMass = 0.003,
        VerticalStiffness = 8e4,
    };

    private static (RunAnswers Capped, RunAnswers Free) Both(ScenarioSettings s) =>
        (Simulator.Run(s).Answers, Simulator.Run(s with { Numerics = s.Numerics with { RingFrequencyCap = double.PositiveInfinity } }).Answers);

    // where chatter is asked about or told of, once for all tyres; elsewhere it moves nothing
    [Fact]
    public void It_acts_and_is_said_where_it_can_matter()
    {
        RobotSettings robot = TestRobots.FourWheels(s_hard);
        Assert.StartsWith("tyre soft is so hard that its tread could buzz faster than 477 Hz", Assert.Single(Told(TestRobots.Spot(robot))), StringComparison.Ordinal);
        robot = robot with { Wheels = [.. robot.Wheels.Select((w, i) => w with { Tyre = w.Tyre with { Name = i < 2 ? "front" : "rear" } })] };
        Assert.StartsWith("tyres front and rear are so hard", Assert.Single(Told(TestRobots.Spot(robot))), StringComparison.Ordinal);
        Assert.Empty(Told(TestRobots.Spot()));
        Assert.Empty(Told(TestRobots.Launch(robot)));

        // a pull that chatters says so, and then this as well
        ScenarioSettings pull = TestRobots.Pull(TestRobots.FourWheels(s_hard with { StaticFriction = 0.6, BodyDamping = 0.1 }));
        RunResult run = Simulator.Run(pull);
        Assert.NotNull(run.Answers.Chatter);
        Assert.Single(Told(run));
    }

    private static IEnumerable<string> Told(ScenarioSettings s) => Told(Simulator.Run(s));

    private static IEnumerable<string> Told(RunResult run) => RunWords.Warnings(run).Where(w => w.Contains("so hard", StringComparison.Ordinal));

    [Fact]
    public void Launch_does_not_move()
    {
        (RunAnswers capped, RunAnswers free) = Both(TestRobots.Launch(TestRobots.FourWheels(s_hard)));
        Assert.Equal(free.TopSpeed!.Value, capped.TopSpeed!.Value, 0.01 * free.TopSpeed.Value);
        Assert.Equal(free.TimeTo90PercentSpeed!.Value, capped.TimeTo90PercentSpeed!.Value, 0.01 * free.TimeTo90PercentSpeed.Value);
        Assert.Equal(free.LimitedBy, capped.LimitedBy);
    }

    [Fact]
    public void Pull_does_not_move()
    {
        (RunAnswers capped, RunAnswers free) = Both(TestRobots.Pull(TestRobots.FourWheels(s_hard)));
        Assert.Equal(free.PullPlateau!.Value, capped.PullPlateau!.Value, 0.01 * free.PullPlateau.Value);
        Assert.Equal(free.LimitedBy, capped.LimitedBy);
    }

    [Fact]
    public void Turn_does_not_move()
    {
        (RunAnswers capped, RunAnswers free) = Both(TestRobots.Spot(TestRobots.FourWheels(s_hard)));
        Assert.Equal(free.YawRate!.Value, capped.YawRate!.Value, 0.01 * Math.Abs(free.YawRate.Value));
        Assert.Equal(free.ScrubMoment!.Value, capped.ScrubMoment!.Value, 0.01 * free.ScrubMoment.Value);
    }
}
