using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Style;
using PushSim.Runs;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Plotting.Tests.Plots;

public class OddsPlotTests
{
    private static MatchEnd End(long number, int winner, ShoveEnding ending, double ground) => new(number, winner, ending, ground, 1.0, BindingKind.Tyre, BindingKind.Tyre);

    // a loser that stands past the middle was tilted or lifted: its bars have a name of their own, and every match is in one bar
    [Fact]
    public void A_win_by_tilt_is_told_from_a_win_on_the_ground()
    {
        MatchEnd[] matches =
        [
            End(1, 1, ShoveEnding.Line, -0.5), End(2, 1, ShoveEnding.Line, -0.5), End(3, 1, ShoveEnding.Tips, 0.07), End(4, 0, ShoveEnding.Tips, -0.07),
            End(5, 0, ShoveEnding.Line, 0.5), End(6, -1, ShoveEnding.Stalemate, 0.0),
        ];
        PlotModel model = OddsPlot.Distribution(PlotLook.File, "t", "own", "other", matches);
        RectangleBarSeries[] bars = [.. model.Series.OfType<RectangleBarSeries>()];
        Assert.Equal(["other wins", "other wins by tilt or lift", "stalemate", "own wins by tilt or lift", "own wins"], bars.Select(b => b.Title));
        Assert.Equal([2.0, 1.0, 1.0, 1.0, 1.0], bars.Select(b => b.Items.Sum(i => i.Y1 - i.Y0)));
        Assert.True(Assert.Single(bars[1].Items).X0 > 0.0);
    }

    // the grey bar is the lowest and has no robot's hue; every bar has a line from end to end of its interval
    [Fact]
    public void Every_input_has_its_interval_and_what_is_not_told_is_grey()
    {
        InputShare[] inputs = [new(OddsWords.Rest, new Interval(0.4, 0.3, 0.5)), new("small", new Interval(0.2, 0.1, 0.3)), new("great", new Interval(0.4, 0.25, 0.55))];
        PlotModel model = OddsPlot.Inputs(PlotLook.File, inputs);
        RectangleAnnotation[] bars = [.. model.Annotations.OfType<RectangleAnnotation>()];
        Assert.Equal([40.0, 20.0, 40.0], bars.Select(b => b.MaximumX), (a, b) => Math.Abs(a - b) < 1e-9);
        Assert.Equal([Palette.Grey, Palette.Ink, Palette.Ink], bars.Select(b => b.Stroke));
        (double, double)[] lines = [.. model.Series.OfType<LineSeries>().Where(s => s.Points[0].Y == s.Points[1].Y).Select(s => (Math.Round(s.Points[0].X, 6), Math.Round(s.Points[1].X, 6)))];
        Assert.Equal([(30.0, 50.0), (10.0, 30.0), (25.0, 55.0)], lines);
    }

    [Fact]
    public void Matches_on_the_ground_alone_have_no_word_of_tilt() =>
        Assert.Equal(["other wins"], OddsPlot.Distribution(PlotLook.File, "t", "own", "other", [End(1, 1, ShoveEnding.Ground, -0.1)]).Series.Select(s => s.Title));
}
