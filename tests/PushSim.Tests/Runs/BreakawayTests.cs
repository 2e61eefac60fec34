using PushSim.Binding;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>The breakaway of a pull is the tyres' and never the jerk of a tether that snaps taut.</summary>
public class BreakawayTests
{
    private const double Weight = 1.36 * 9.80665;

    // closed form: all wheels hold static friction times weight, here 1.0 x 13.34 N
    [Theory]
    [InlineData(ManoeuvreKind.PullTest, 1.0)]
    [InlineData(ManoeuvreKind.PullTest, 3.0)]
    [InlineData(ManoeuvreKind.PullTest, 10.0)]
    [InlineData(ManoeuvreKind.PullTest, 50.0)]
    [InlineData(ManoeuvreKind.DragTest, 0.0)]
    [InlineData(ManoeuvreKind.DragTest, 5.0)]
    [InlineData(ManoeuvreKind.DragTest, 20.0)]
    public void It_is_what_the_tyres_hold_or_none_with_the_reason(ManoeuvreKind kind, double slack)
    {
        RunResult run = Simulator.Run(Test(kind, 1e-3 * slack));
        RunAnswers a = run.Answers;
        if (a.PullBreakaway is double breakaway)
        {
            Assert.Equal(1.0 * Weight, breakaway, 0.02 * Weight);
        }
        else
        {
            Assert.Contains(run.Warnings, w => w is RunWarning.Jerk { HidesBreakaway: true });
        }

        // a jerk has a number of its own, and part of it was not held
        Assert.Equal(a.PullJerk is not null, run.Marks.Any(m => m.Kind == MarkKind.Jerk));
        Assert.True(a.PullJerk is null || a.PullJerk.Held < 0.98 * a.PullJerk.Force);
    }

    // 30 mm of slack at full throttle: the jerk is far above what the tyres hold
    [Fact]
    public void A_jerk_is_told_apart_and_hides_the_breakaway()
    {
        RunResult run = Simulator.Run(Test(ManoeuvreKind.PullTest, 0.03));
        Assert.True(run.Answers.PullJerk!.Force > 1.1 * Weight);
        Assert.Null(run.Answers.PullBreakaway);
    }

    // dragged from rest, the tyres' own force shows the breakaway under the jerk of 80 mm/s on 4 N/mm
    [Fact]
    public void A_drag_tells_both()
    {
        RunAnswers a = Simulator.Run(Test(ManoeuvreKind.DragTest, 0.005)).Answers;
        Assert.Equal(Weight, a.PullBreakaway!.Value, 0.02 * Weight);
        Assert.True(a.PullJerk!.Force > 1.05 * Weight);
    }

    // a quarter of the grip: the force rises to what the motors give, and no tyre lets go
    [Fact]
    public void Weak_motors_break_no_tyre_away()
    {
        ScenarioSettings pull = Test(ManoeuvreKind.PullTest, 0.0005);
        RobotSettings weak = TestRobots.FourWheels(limit: 0.25);
        RunAnswers a = Simulator.Run(pull with { Robot = weak }).Answers;
        Assert.True(a.PullPlateau < 0.6 * Weight);
        Assert.NotEqual(BindingKind.Tyre, a.LimitedBy);
        Assert.Null(a.PullBreakaway);
    }

    private static ScenarioSettings Test(ManoeuvreKind kind, double slack)
    {
        ScenarioSettings pull = TestRobots.Pull(TestRobots.FourWheels(zero: ZeroCommand.Locked, hold: 2.0));
        TetherSettings tether = pull.Tether! with { Slack = slack, Damping = 0.6 };
        return kind == ManoeuvreKind.PullTest ? pull with { Tether = tether } : pull with
        {
            Tether = tether with { HookX = 0.09, AnchorX = 0.5, AnchorSpeed = [(0.0, 0.0), (0.2, 0.0), (0.5, 0.08), (3.0, 0.08)] },
            Manoeuvre = new ManoeuvreSettings { Kind = kind, EndTime = 3.0, Commands = [] },
        };
    }
}
