using PushSim.Analysis;
using PushSim.Analysis.Chance;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>What a shove owes to who moves first.</summary>
public class StartReviewTests
{
    private static readonly RobotSettings s_robot = TestRobots.FourWheels();

    // nothing but the start differs: nobody gains, and who is first gains to the bit what the other gains who is first
    [Theory]
    [InlineData(0.5)]
    [InlineData(5.0)]
    public void Twins_are_even_together_and_mirror_each_other_to_the_bit(double line)
    {
        StartStudy study = StartReview.Of(Twins(0.0, 0.0, line));
        (StartCase first, StartCase together, StartCase last) = (study.Cases[0], study.Cases[1], study.Cases[2]);
        Assert.Equal([StartOrder.First, StartOrder.Together, StartOrder.Last], study.Cases.Select(c => c.Order));
        Assert.Equal((ShoveEnding.Stalemate, -1, 0.0), (together.Ending, together.Winner, together.GroundGained));
        Assert.Equal((0, 1), (first.Winner, last.Winner));
        Assert.Equal((first.GroundGained, first.EndTime, first.Ending), (-last.GroundGained, last.EndTime, last.Ending));
        Assert.Equal(first.Ending == ShoveEnding.Line, study.Worth.IsWithoutLine);
    }

    // where the line is out of reach the ground of the cases is what a tenth of a second is worth; a nearer line does not change what it is worth
    [Fact]
    public void The_line_does_not_hide_what_a_tenth_of_a_second_is_worth()
    {
        StartStudy far = StartReview.Of(Twins(0.0, 0.0, line: 50.0));
        StartStudy near = StartReview.Of(Twins(0.0, 0.0, line: 0.1));
        Assert.Equal((false, true), (far.Worth.IsWithoutLine, near.Worth.IsWithoutLine));
        Assert.Equal(far.Cases[0].GroundGained, far.Worth.Reaction);
        Assert.Equal(far.Worth with { IsWithoutLine = true }, near.Worth);
        Assert.All(new[] { far.Worth.Reaction, far.Worth.Grip, far.Worth.Mass }, w => Assert.True(w > 0.01, $"{w} m"));
        Assert.True(near.Cases[0].EndTime < far.Cases[0].EndTime);
    }

    // the sooner reaction stays, so that the cases are those of an even start
    [Theory]
    [InlineData(0.0, 0.15)]
    [InlineData(0.15, 0.0)]
    public void An_uneven_start_is_evened_out(double own, double opponent) =>
        Assert.Equal(StartReview.Of(Twins(0.0, 0.0, 0.5)).Cases, StartReview.Of(Twins(own, opponent, 0.5)).Cases);

    [Fact]
    public void A_case_is_the_shove_with_that_delay()
    {
        ScenarioSettings shove = Twins(0.0, 0.0, 0.5) with { Numerics = new NumericsSettings { Tolerance = 2e-4, IsAskedFor = true } };
        MatchOutcome alone = MatchBatch.RunAlone(0, shove with { Opponent = shove.Opponent! with { Manoeuvre = shove.Manoeuvre with { Driver = new DriverSettings { ReactionDelay = StartShift.Tenth } } } });
        StartCase first = StartReview.Review(Simulator.Run(shove)).Start!.Cases[0];
        Assert.Equal((alone.GroundGained, alone.EndTime), (first.GroundGained, first.EndTime));
    }

    [Fact]
    public void A_run_without_an_opponent_has_no_study()
    {
        RunResult run = Simulator.Run(TestRobots.Spot(s_robot));
        Assert.Same(run, StartReview.Review(run));
    }

    [Fact]
    public void One_line_tells_the_cases_and_what_they_are_worth()
    {
        var study = new StartStudy(
            [new StartCase(StartOrder.First, ShoveEnding.Ground, 0, 0.213, 3.0), new StartCase(StartOrder.Together, ShoveEnding.Stalemate, -1, 0.004, 3.0), new StartCase(StartOrder.Last, ShoveEnding.Line, 1, -0.5, 1.44)],
            new StartWorth(0.2, 0.354, -0.0123, IsWithoutLine: true));
        Assert.Equal(
            "start of mole: first by 0.1 s mole wins by 0.21 m, together stalemate, last badger wins at the line after 1.44 s; 0.1 s is worth 0.20 m, 10 % of grip 0.35 m, 10 % of mass -0.012 m (ground when time is up, if no line ended the shove)",
            StartWords.Of(study, "mole", "badger"));
    }

    [Theory]
    [InlineData(1000, 0.0, 200)]
    [InlineData(100, 0.0, 50)]
    [InlineData(100, 0.1, 34)]
    [InlineData(1, 0.0, 1)]
    public void Odds_play_about_as_many_more_as_were_asked_for(int drawn, double lead, int each) => Assert.Equal(each, StartOdds.Count(drawn, lead));

    private static ScenarioSettings Twins(double own, double opponent, double line)
    {
        ScenarioSettings s = TestRobots.Shove(s_robot, s_robot);
        return s with { Manoeuvre = Delayed(s.Manoeuvre, own), Opponent = s.Opponent! with { Manoeuvre = Delayed(s.Manoeuvre, opponent) }, Shove = s.Shove with { Line = line } };
    }

    private static ManoeuvreSettings Delayed(ManoeuvreSettings m, double delay) => m with { Driver = m.Driver with { ReactionDelay = delay } };
}
