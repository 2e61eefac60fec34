using PushSim.Analysis.Chance;
using PushSim.Analysis.Sweep;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Points of a sweep, how they are run, and what is best among them.</summary>
public class SweepTableTests
{
    private static readonly SweepInput s_ratio = new("drive.*.gear_ratio", ["10", "20", "30"], [10.0, 20.0, 30.0], "");
    private static readonly SweepInput s_tyre = new("wheel.*.tyre", ["soft", "hard"], null, "");

    [Fact]
    public void The_last_input_changes_fastest() =>
        Assert.Equal([[0, 0], [0, 1], [1, 0], [1, 1], [2, 0], [2, 1]], SweepRuns.Places([s_ratio, s_tyre]));

    [Fact]
    public void The_best_of_a_curve_has_its_range()
    {
        SweepColumn column = Table(2.0, 2.05, 4.0).Columns[0];
        Assert.Equal((0, 10.0), (column.Best, column.Flatness!.Low));
        Assert.Equal([0, 1], column.GoodPoints);
    }

    [Fact]
    public void Names_have_a_best_and_no_curve()
    {
        SweepColumn column = SweepTable.Of([s_tyre], [("pull", true)], [Point(0, 1.0), Point(1, 3.0)]).Columns[0];
        Assert.Equal(1, column.Best);
        Assert.Null(column.Flatness);
    }

    [Theory]
    [InlineData(2.0, 2.0, 2.0, true, true)]
    [InlineData(2.0, 2.05, 2.0, false, true)]
    [InlineData(2.0, 4.0, 2.0, false, false)]
    [InlineData(2.0, null, 2.0, false, false)]
    [InlineData(0.0, 0.0, 0.0, true, false)]
    public void Points_may_be_alike(double? a, double? b, double? c, bool isSame, bool isAlike) => Assert.Equal((isSame, isAlike), (Table(a, b, c).IsSame(0), Table(a, b, c).IsAlike(0)));

    // 113 against 100 wins of 200: the intervals of both overlap by far, but 13 matches differ and all one way (sign test: p = 2/8192)
    [Theory]
    [InlineData(13, 0, false)]
    [InlineData(40, 27, true)]
    public void Points_on_the_same_draws_are_compared_match_by_match(int onlyBest, int onlyOther, bool isTie)
    {
        Tally Of(int wins) => Tally.Of(Enumerable.Range(0, 200).Select(n => End(n, n < wins ? 0 : 1)));
        SweepPoint[] points = [Point(0, 0.0) with { Odds = Of(100) }, Point(1, 0.0) with { Odds = Of(113) }];
        var table = SweepTable.Of([s_tyre], [("pull", true), (SweepTable.WinShare, true)], points, (best, other) => new Comparison(200, onlyBest, onlyOther));
        Assert.Equal(1, table.Columns[1].Best);
        Assert.Equal(isTie ? 2 : 0, table.Columns[1].Ties.Count);
    }

    // 95 % Wilson intervals (computed here): 60 of 100 from 0.502, 50 of 100 to 0.596, 20 of 100 to 0.289
    [Fact]
    public void Draws_tell_a_point_from_the_best_or_not()
    {
        SweepPoint[] points = [.. new[] { 20, 60, 50 }.Select((wins, i) => Point(i, 0.0) with { Odds = Tally.Of(Enumerable.Range(0, 100).Select(n => End(n, n < wins ? 0 : 1))) })];
        var table = SweepTable.Of([s_ratio], [("pull", true), (SweepTable.WinShare, true)], points);
        Assert.Equal(1, table.Columns[1].Best);
        Assert.Equal(0.6, table.Value(points[1], 1));
        Assert.Equal([1, 2], table.Columns[1].Ties);
        Assert.Null(table.Columns[1].Alone);
    }

    // within a thousandth, of ground within two millimetres; ground at the line ties whatever it is, ground a second does not
    [Theory]
    [InlineData("pull", 5.0, 5.004, false, true)]
    [InlineData("pull", 5.0, 5.006, false, false)]
    [InlineData(SweepTable.Ground, 0.1, 0.1019, false, true)]
    [InlineData(SweepTable.Ground, 0.1, 0.103, false, false)]
    [InlineData(SweepTable.Ground, 0.48, 0.51, true, true)]
    [InlineData(SweepTable.GroundRate, 0.48, 0.51, true, false)]
    public void Points_that_the_numerics_do_not_tell_apart_tie(string key, double one, double other, bool isAtLine, bool ties)
    {
        SweepPoint[] points = [.. new[] { one, other }.Select((v, i) => Point(i, v) with { Shove = new ShoveOutcome { Ending = isAtLine ? ShoveEnding.Line : ShoveEnding.Ground, Winner = 0, GroundGained = v, EndTime = 1.0 } })];
        foreach (bool isHighest in new[] { true, false })
        {
            var table = SweepTable.Of([s_tyre], [(key, isHighest)], points);
            Assert.Equal(ties ? [0, 1] : [], table.Columns[0].Ties);
            Assert.Equal(ties ? null : isHighest ? 1 : 0, table.Columns[0].Alone);
            Assert.Equal((ties, 0), (table.IsSame(0), table.Winner));
        }
    }

    // the same distance to the line on either side is no tie
    [Fact]
    public void A_win_and_a_loss_at_the_line_do_not_tie()
    {
        SweepPoint[] points = [.. new[] { -0.5, 0.5 }.Select((v, i) => Point(i, v) with { Shove = new ShoveOutcome { Ending = ShoveEnding.Line, Winner = v > 0.0 ? 0 : 1, GroundGained = v, EndTime = 1.0 } })];
        var table = SweepTable.Of([s_tyre], [(SweepTable.Ground, true)], points);
        Assert.Equal(1, table.Columns[0].Alone);
        Assert.Null(table.Winner);
    }

    [Theory]
    [InlineData(1)]
    [InlineData(2)]
    public void Every_point_is_run_in_its_order(int threads)
    {
        ScenarioSettings spot = TestRobots.Spot(TestRobots.FourWheels());
        IReadOnlyList<int[]> places = SweepRuns.Places([s_tyre]);
        int done = 0;
        SweepPoint?[] points = SweepRuns.Run(places, i => spot with { Name = "n" + i }, run => [run.Scenario.Name == "n1" ? 1.0 : 0.0], threads, () => done++);
        Assert.Equal([[0.0], [1.0]], points.Select(p => p!.Answers));
        Assert.Equal(2, done);
    }

    [Fact]
    public void An_interrupt_leaves_points_out()
    {
        SweepPoint?[] points = SweepRuns.Run([[0], [1]], _ => throw new NotSupportedException(), _ => [], 1, cancel: new CancellationToken(canceled: true));
        Assert.All(points, Assert.Null);
        Assert.Equal(2, points.Length);
    }

    private static SweepTable Table(params double?[] values) => SweepTable.Of([s_ratio], [("loss", false)], [.. values.Select((v, i) => Point(i, v))]);

    private static SweepPoint Point(int place, double? value) => new([place], [value], null, null);

    private static MatchEnd End(long number, int winner) => new(number, winner, ShoveEnding.Line, 0.1, 1.0, BindingKind.Nothing, BindingKind.Nothing);
}
