using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>Hard tyres as they are, with nothing softened: quiet pulls, launches and turns, and what they cost (computed here, against a run at 1e-6).</summary>
public class HardTyreTests
{
    // the ring of tread on body alone would ask for steps of 0.1 ms, sqrt(k_c/m_t) = 5800 rad/s
    private static readonly TyreSettings s_hard = TestRobots.SoftTyre with
    {
        StaticFriction = 0.35, KineticFriction = 0.25, BreakawayDeflection = 0.1e-3, BodyStiffness = 1e5, BodyDamping = 6.0, TreadMass = 0.003,
        VerticalStiffness = 8e4,
    };

    private static (RunResult Usual, RunAnswers Fine) Both(ScenarioSettings s, double tolerance = 1e-4) =>
        (Simulator.Run(s with { Numerics = s.Numerics with { Tolerance = tolerance } }), Simulator.Run(s with { Numerics = s.Numerics with { Tolerance = 1e-6 } }).Answers);

    [Fact]
    public void Launch_is_that_of_a_fine_run()
    {
        (RunResult usual, RunAnswers fine) = Both(TestRobots.Launch(TestRobots.FourWheels(s_hard)));
        Assert.Equal(fine.TopSpeed!.Value, usual.Answers.TopSpeed!.Value, 0.001 * fine.TopSpeed.Value);
        Assert.Equal(fine.TimeTo90PercentSpeed!.Value, usual.Answers.TimeTo90PercentSpeed!.Value, 0.001 * fine.TimeTo90PercentSpeed.Value);
        Assert.InRange(usual.RhsEvaluations, 0, 20_000);
    }

    // at the usual 1e-4 the plateau is 0.18 % off, and of four finer tolerances none is by more than 0.02 %
    [Fact]
    public void Pull_at_a_third_of_the_usual_tolerance_is_that_of_a_fine_run_and_quiet()
    {
        (RunResult usual, RunAnswers fine) = Both(TestRobots.Pull(TestRobots.FourWheels(s_hard)), 3e-5);
        Assert.Equal(fine.PullPlateau!.Value, usual.Answers.PullPlateau!.Value, 0.001 * fine.PullPlateau.Value);
        Assert.Null(usual.Answers.Chatter);
        Assert.DoesNotContain(usual.Warnings, w => w is RunWarning.Bouncing);
    }

    [Fact]
    public void Turn_is_that_of_a_fine_run()
    {
        (RunResult usual, RunAnswers fine) = Both(TestRobots.Spot(TestRobots.FourWheels(s_hard)));
        Assert.Equal(fine.YawRate!.Value, usual.Answers.YawRate!.Value, 0.001 * Math.Abs(fine.YawRate.Value));
        Assert.Equal(fine.ScrubMoment!.Value, usual.Answers.ScrubMoment!.Value, 0.002 * fine.ScrubMoment.Value);
    }
}
