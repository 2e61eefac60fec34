using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Words.Runs;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Verdicts of robots that lack what the usual sentence names.</summary>
public class VerdictTests
{
    private static readonly RobotSettings Whole = TestRobots.FourWheels();

    private static readonly RobotSettings Undriven = Whole with { Drives = [.. Whole.Drives.Select(d => d with { Motors = [] })], Controllers = [], Battery = null };

    // downhill, pushed along or at rest: no limit is named where there is no motor
    [Theory]
    [InlineData(ManoeuvreKind.Launch, 0.1)]
    [InlineData(ManoeuvreKind.Brake, 0.0)]
    public void A_robot_that_nothing_drives_has_no_limit(ManoeuvreKind kind, double slope)
    {
        ScenarioSettings s = TestRobots.Scenario(Undriven, kind, 0.0, 0.0, 2.0);
        RunResult run = Simulator.Run(s with { Floor = s.Floor with { SlopeX = -slope }, Manoeuvre = s.Manoeuvre with { InitialSpeed = kind == ManoeuvreKind.Brake ? 0.1 : 0.0 } });
        Assert.Equal(RunStatus.Finished, run.Status);
        Assert.Null(run.Answers.LimitedBy);
        Assert.Contains(kind == ManoeuvreKind.Launch ? "Testmole, which has no motors, rolls and reaches" : "stand", RunWords.Verdict(run));
        Assert.DoesNotContain("limit", RunWords.Verdict(run));
    }

    // a card tells a frequency once
    [Fact]
    public void What_the_answer_tells_of_chatter_is_not_told_again()
    {
        var buzzes = new ChatterVerdict(ChatterKind.Buzzes) { Frequency = 193.0, Feed = ChatterFeed.Friction };
        Assert.Equal("It turns. Falling friction feeds the chatter.", ChatterWords.Behind("gopher turns. Its tyres chatter at 193 Hz.", "It turns. Its tyres chatter at about 193 Hz, fed by falling friction.", buzzes));
        Assert.Equal("Its tyres leave the floor. Falling friction feeds the chatter.", ChatterWords.Behind("Its tyres chatter at 193 Hz.", "Its tyres chatter at about 193 Hz and leave the floor, fed by falling friction.", buzzes));
        Assert.Equal("Its tyres chatter at about 193 Hz, fed by falling friction.", ChatterWords.Behind("gopher turns.", "Its tyres chatter at about 193 Hz, fed by falling friction.", buzzes));
    }

    [Fact]
    public void A_robot_without_motors_does_not_get_off_the_line()
    {
        RunResult run = Simulator.Run(TestRobots.Launch(Undriven));
        Assert.Equal("Testmole, which has no motors, does not move forward.", RunWords.Verdict(run));
        Assert.Null(run.Answers.TimeTo90PercentSpeed);
    }

    [Theory]
    [InlineData(ManoeuvreKind.PullTest, "Testmole, which has no motors, never tightens the tether.")]
    [InlineData(ManoeuvreKind.Spot, "Testmole, which has no motors, cannot turn.")]
    [InlineData(ManoeuvreKind.WallPush, "Testmole, which has no motors, never touches the wall.")]
    public void What_a_robot_without_motors_cannot_do_is_put_down_to_that(ManoeuvreKind kind, string sentence) =>
        Assert.Equal(sentence, RunVerdict.Of(TestRobots.Scenario(Undriven, kind, 0.0, 0.0, 1.0), RunStatus.Finished, "", new RunAnswers()));

    public static TheoryData<ManoeuvreKind> Kinds => [.. Enum.GetValues<ManoeuvreKind>()];

    // one of its own family, said of nothing that another family is asked
    [Theory]
    [MemberData(nameof(Kinds))]
    public void Each_kind_has_its_row_and_a_sentence(ManoeuvreKind kind)
    {
        ManoeuvreTraits traits = ManoeuvreTraits.Of(kind);
        Assert.Equal(kind, traits.Kind);
        string said = traits.Family switch
        {
            ManoeuvreFamily.Drive => "move forward",
            ManoeuvreFamily.Stop => "come to a stand",
            ManoeuvreFamily.Pull => "tightens the tether",
            ManoeuvreFamily.Turn => "turn",
            ManoeuvreFamily.Hold => "stays where it is",
            _ => traits.NeedsWall ? "touches the wall" : "move forward",
        };
        Assert.Contains(said, Of(kind, new RunAnswers { Travel = 0.0 }));
    }

    // 1 N is 1000/9.80665 gf; 1 rad/s is 57.3 deg/s. Computed here.
    [Theory]
    [InlineData(ManoeuvreKind.PullTest, "Testmole pulls 5.00 N (510 gf) steadily after a peak of 6.00 N; the tyres set the limit; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.DragTest, "Testmole holds 6.00 N (612 gf) before it breaks away and 5.00 N while sliding; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.Spot, "Testmole turns at 2.00 rad/s (115 deg/s) to the left; scrub costs it a factor of 1.500 in turning rate; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.Arc, "Testmole turns at 2.00 rad/s (115 deg/s) to the left; scrub costs it a factor of 1.500 in turning rate; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.Brake, "Testmole comes to a stand within 0.230 m; the tyres set the limit; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.Reversal, "Testmole comes to a stand within 0.230 m; the tyres set the limit; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.WallPush, "Testmole pushes the wall with 7.00 N (714 gf) after a peak of 9.00 N; the tyres set the limit; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.Hold, "Testmole moves 0.012 m; its tyres chatter at about 31 Hz.")]
    [InlineData(ManoeuvreKind.Launch, "Testmole reaches 1.20 m/s, 90 % of it 0.400 s after the command; the tyres set the limit on the way; its tyres chatter at about 31 Hz.")]
    public void Each_manoeuvre_has_its_sentence(ManoeuvreKind kind, string sentence) =>
        Assert.Equal(sentence, Of(kind, new RunAnswers
        {
            PullBreakaway = 6.0, PullPlateau = 5.0, Binding = BindingShares.Of(BindingKind.Tyre), TopSpeed = 1.2, TimeTo90PercentSpeed = 0.4, StopDistance = 0.23, YawRate = 2.0,
            EffectiveTrackRatio = 1.5, Chatter = 31.2, PushPeak = 9.0, PushPlateau = 7.0, Travel = 0.012,
        }));

    [Theory]
    [InlineData(ManoeuvreKind.PullTest, "Testmole never tightens the tether.")]
    [InlineData(ManoeuvreKind.DragTest, "Testmole never tightens the tether.")]
    [InlineData(ManoeuvreKind.Spot, "Testmole cannot turn; the lifted wheels set the limit.")]
    [InlineData(ManoeuvreKind.Brake, "Testmole does not come to a stand before the end.")]
    [InlineData(ManoeuvreKind.WallPush, "Testmole never touches the wall.")]
    [InlineData(ManoeuvreKind.Launch, "Testmole does not move forward.")]
    public void Each_manoeuvre_has_a_sentence_for_what_did_not_come_about(ManoeuvreKind kind, string sentence) =>
        Assert.Equal(sentence, Of(kind, new RunAnswers { Binding = BindingShares.Of(BindingKind.Lifted), TopSpeed = 0.0 }));

    [Fact]
    public void Small_things_are_left_out_of_the_sentence()
    {
        Assert.Equal(
            "Testmole pulls 5.00 N (510 gf) on average, bouncing on the tether after a jerk of 9.00 N.",
            Of(ManoeuvreKind.PullTest, new RunAnswers { PullPlateau = 5.0, PullJerk = new TetherJerk(9.0, 5.0), IsBouncing = true, Binding = BindingShares.Of(BindingKind.Motor) }));
        Assert.Equal(
            "Testmole holds 5.00 N while sliding; the tether jerks with 9.00 N.", Of(ManoeuvreKind.DragTest, new RunAnswers { PullPlateau = 5.0, PullJerk = new TetherJerk(9.0, 6.0) }));
        Assert.Equal(
            "Testmole holds 6.00 N (612 gf) before it breaks away and 5.00 N while sliding; the tether jerks with 9.00 N.",
            Of(ManoeuvreKind.DragTest, new RunAnswers { PullPlateau = 5.0, PullBreakaway = 6.0, PullJerk = new TetherJerk(9.0, 6.0) }));
        Assert.Equal("Testmole pulls 5.00 N (510 gf) steadily.", Of(ManoeuvreKind.PullTest, new RunAnswers { PullPlateau = 5.0, PullJerk = new TetherJerk(4.0, 2.0) }));
        Assert.Equal("Testmole pulls 5.00 N (510 gf) steadily.", Of(ManoeuvreKind.PullTest, new RunAnswers { PullPlateau = 5.0, PullBreakaway = 5.0 }));
        Assert.Equal("Testmole stays where it is (moved 0 m).", Of(ManoeuvreKind.Hold, new RunAnswers { Travel = 0.9e-6 }));
        Assert.Equal("Testmole moves 0.000001 m.", Of(ManoeuvreKind.Hold, new RunAnswers { Travel = 1.1e-6 }));
        Assert.Equal("Testmole cannot turn.", Of(ManoeuvreKind.Arc, new RunAnswers { YawRate = -0.0009 }));
        Assert.Equal("Testmole turns at 3.00 rad/s (172 deg/s) to the right.", Of(ManoeuvreKind.Arc, new RunAnswers { YawRate = -3.0 }));
    }

    [Fact]
    public void A_run_without_an_end_has_its_cause_as_sentence()
    {
        ScenarioSettings s = TestRobots.Launch();
        Assert.Equal("Testmole: the run could not finish, why.", RunVerdict.Of(s, RunStatus.Failed, "why", new RunAnswers()));
        Assert.Equal("Testmole is tilted.", RunVerdict.Of(s, RunStatus.Tips, "is tilted", new RunAnswers()));
    }

    // 10 degrees off are seen, less is not; left is positive
    [Theory]
    [InlineData(ShoveEnding.Line, 0, 0.3, 0.1, -0.1, "A pushes B back over its line after 1.25 s, 0.300 m in all; B gives ground from 0.50 s on, at 0.30 m/s; A was held back by its tyres, B by its motors; they stay straight.")]
    [InlineData(ShoveEnding.Line, 1, -0.3, 0.1, -0.1, "B pushes A back over its line after 1.25 s, 0.300 m in all; A gives ground from 0.50 s on, at 0.30 m/s; A was held back by its tyres, B by its motors; they stay straight.")]
    [InlineData(ShoveEnding.Ground, 0, 0.123, 0.1745, -0.1745, "A gains 0.123 m on B in 1.2 s; B gives ground from 0.50 s on, at 0.30 m/s; A was held back by its tyres, B by its motors; they stay straight.")]
    [InlineData(ShoveEnding.Ground, 1, -0.123, 0.1746, -0.1746, "B gains 0.123 m on A in 1.2 s; A gives ground from 0.50 s on, at 0.30 m/s; A was held back by its tyres, B by its motors; A is turned 10.0 deg to its left, B is turned 10.0 deg to its right.")]
    [InlineData(ShoveEnding.Tips, 0, 0.0, -0.5, 0.0, "A wins: B tips over backward 1.25 s after the start; A was held back by its tyres, B by its motors; A is turned 28.6 deg to its right.")]
    [InlineData(ShoveEnding.Tips, -1, 0.0, 0.0, 0.5, "Stalemate: both robots tip over or lose the floor; A was held back by its tyres, B by its motors; B is turned 28.6 deg to its left.")]
    [InlineData(ShoveEnding.Stalemate, -1, -0.012, 0.0, 0.0, "Stalemate: after 1.2 s the contact stands 0.012 m from where they met; A was held back by its tyres, B by its motors; they stay straight.")]
    public void A_shoves_sentence_tells_who_how_and_why(ShoveEnding ending, int winner, double gained, double turned, double otherTurned, string sentence)
    {
        const string Close = " Too close to call: 1 of 7 nearly equal starts end otherwise, for example starting a moment later.";
        ScenarioSettings s = TestRobots.Shove(Whole with { Name = "A" }, Whole with { Name = "B" });
        var outcome = new ShoveOutcome
        {
            Ending = ending, Winner = winner, GroundGained = gained, EndTime = 1.249, FirstContact = 0.2, GivesGroundAt = 0.5, GroundSpeed = 0.3, TurnedAside = (turned, otherTurned), Upset = Upset.NoseUp,
        };
        Assert.Equal(sentence, ShoveVerdict.Of(s, outcome, new RunAnswers { Binding = BindingShares.Of(BindingKind.Tyre) }, new RunAnswers { Binding = BindingShares.Of(BindingKind.Motor) }));
        string far = ShoveVerdict.Of(s, outcome with { IsFarLine = true }, new RunAnswers(), new RunAnswers());
        Assert.Equal(ending == ShoveEnding.Line, far.Contains(" over the far line (they have swapped ends) after 1.25 s", StringComparison.Ordinal));
        Assert.Equal("A and B never touch." + Close, ShoveVerdict.Of(s, outcome with { FirstContact = null, TooCloseToCall = true, Close = new CloseShove(CloseCause.Unknown, 1, 7, CloseStart.Later) }, new RunAnswers(), new RunAnswers()));
        Assert.EndsWith("." + Close, ShoveVerdict.Of(s, outcome with { TooCloseToCall = true, Close = new CloseShove(CloseCause.Unknown, 1, 7, CloseStart.Later) }, new RunAnswers(), new RunAnswers()));
        Assert.Contains("A was held back by its zero command, B by its zero command", ShoveVerdict.Of(s, outcome, new RunAnswers(), new RunAnswers()));
        ScenarioSettings dummy = TestRobots.Shove(Whole with { Name = "A" }, Undriven with { Name = "B" });
        Assert.Contains("A was held back by its zero command, B by its lack of motors", ShoveVerdict.Of(dummy, outcome, new RunAnswers(), new RunAnswers()));
    }

    private static string Of(ManoeuvreKind kind, RunAnswers answers) => RunVerdict.Of(TestRobots.Scenario(Whole, kind, 0.0, 0.0, 1.0), RunStatus.Finished, "", answers);
}
