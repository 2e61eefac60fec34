using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>The cap on a hard tyre's ring frequency moves neither pull nor launch nor turn (computed here, against no cap).</summary>
public class RingCapTests
{
    private static readonly TyreSettings s_hard = TestRobots.SoftTyre with
    {
        StaticFriction = 0.35, KineticFriction = 0.25, BreakawayDeflection = 0.1e-3, CarcassStiffness = 1e5, CarcassDamping = 6.0, TreadMass = 0.003,
        VerticalStiffness = 8e4,
    };

    private static (RunAnswers Capped, RunAnswers Free) Both(ScenarioSettings s) =>
        (Simulator.Run(s).Answers, Simulator.Run(s with { Numerics = s.Numerics with { RingFrequencyCap = double.PositiveInfinity } }).Answers);

    [Fact]
    public void It_acts_and_is_said()
    {
        RunResult run = Simulator.Run(TestRobots.Launch(TestRobots.FourWheels(s_hard)));
        Assert.Contains(run.Warnings, w => w.Contains("softened", StringComparison.Ordinal));
        Assert.DoesNotContain(Simulator.Run(TestRobots.Launch()).Warnings, w => w.Contains("softened", StringComparison.Ordinal));
    }

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
