using OxyPlot;
using OxyPlot.Annotations;
using OxyPlot.Series;
using PushSim.Analysis.Sweep;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Style;
using PushSim.Plotting.Svg;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Plotting.Tests.Plots;

public class SweepPlotTests
{
    private static PlotModel Build(PlotLook look, params double[] values)
    {
        Assert.True(SweepInput.TryParse("drive.*.gear_ratio=8..40", values.Length, out SweepInput? input, out SweepFault? fault), fault?.ToString());
        double?[] y = [.. values.Select(v => (double?)v)];
        return SweepPlot.One(look, input!, "ground_gained_m", y, null, Optimum.OfCurve(input!.Numbers!, y, isHighest: true));
    }

    // on a telephone the axis' title stands left of numbers such as -0.0434, about 52 px wide
    [Theory]
    [InlineData(-0.0434, -0.0471, 62.0 + 20.0, 400.0 * 0.38)]
    [InlineData(1.0, 9.0, 62.0, 62.0)]
    public void Numbers_with_many_decimals_get_room_beside_a_narrow_curve(double first, double last, double least, double most) =>
        Assert.InRange(Build(PlotLook.Phone, first, 0.5 * (first + last), last).PlotMargins.Left, least, most);

    // the band of the stalemate always, a line only where shoves come near it
    [Theory]
    [InlineData(0.51, 0.5, 1)]
    [InlineData(0.05, 0.1, 0)]
    [InlineData(-0.5, 0.5, 2)]
    public void The_ground_of_shoves_is_shown_between_the_lines(double first, double last, int lines)
    {
        Assert.True(SweepInput.TryParse("chassis.mass=1..2", 2, out SweepInput? input, out _));
        PlotModel model = SweepPlot.One(PlotLook.Phone, input!, SweepTable.Ground, [first, last], null, null, new ShoveSettings { Line = 0.5, DecidingGround = 0.03 });
        Assert.Equal(lines, model.Annotations.OfType<LineAnnotation>().Count());
        Assert.All(model.Annotations.OfType<LineAnnotation>(), l => Assert.Equal(0.5, Math.Abs(l.Y)));
        RectangleAnnotation band = Assert.Single(model.Annotations.OfType<RectangleAnnotation>());
        Assert.Equal((-0.03, 0.03), (band.MinimumY, band.MaximumY));
        Assert.All(new[] { first, last, -0.03, 0.03 }, v => Assert.InRange(v, model.Axes[1].Minimum, model.Axes[1].Maximum));
    }

    [Theory]
    [InlineData(new[] { 3.0, 2.0, 1.0 }, HorizontalAlignment.Left)]
    [InlineData(new[] { 1.0, 3.0, 1.0 }, HorizontalAlignment.Center)]
    [InlineData(new[] { 1.0, 2.0, 3.0 }, HorizontalAlignment.Right)]
    public void The_word_at_the_best_point_stays_inside(double[] values, HorizontalAlignment expected) =>
        Assert.Equal(expected, Assert.Single(Build(PlotLook.Phone, values).Annotations.OfType<PointAnnotation>()).TextHorizontalAlignment);

    private static PlotModel Map(PlotLook look, int points, double first)
    {
        Assert.True(SweepInput.TryParse("drive.*.gear_ratio=8..40", points, out SweepInput? across, out SweepFault? fault), fault?.ToString());
        Assert.True(SweepInput.TryParse("chassis.mass=0.8 kg..1.5 kg", points, out SweepInput? up, out fault), fault?.ToString());
        double?[,] values = new double?[points, points];
        for (int i = 0; i < points * points; i++)
        {
            values[i / points, i % points] = first + (0.1 * i);
        }

        PlotModel model = SweepPlot.Two(look, across!, up!, "pull_plateau_n", values, (points - 1, points - 1));
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(new SvgFileContext(), new OxyRect(0, 0, look.Width, 560));
        return model;
    }

    public static TheoryData<int, double, bool> Maps()
    {
        TheoryData<int, double, bool> maps = [];
        foreach (int points in new[] { 2, 5, 7, 9, 12, 18, 30 })
        {
            foreach (double first in new[] { 7.0, -0.0001 - (0.1 * points * points) })
            {
                maps.Add(points, first, true);
                maps.Add(points, first, false);
            }
        }

        return maps;
    }

    // a line through a number, or a number over its neighbour, cannot be read
    [Theory]
    [MemberData(nameof(Maps))]
    public void A_map_has_numbers_within_their_cells_or_lines_with_their_step(int points, double first, bool isPhone)
    {
        PlotModel model = Map(isPhone ? PlotLook.Phone : PlotLook.File, points, first);
        TextAnnotation[] numbers = [.. model.Annotations.OfType<TextAnnotation>()];
        string[] legend = [.. model.Series.Select(s => s.Title).OfType<string>()];
        Assert.Contains(legend, t => t.StartsWith("best ", StringComparison.Ordinal));
        if (numbers.Length == 0)
        {
            Assert.True(points > (isPhone ? 5 : 9), "cells of this size have room");
            Assert.Single(model.Series.OfType<ContourSeries>());
            Assert.All(new[] { "least ", "most ", "a line every " }, words => Assert.Contains(legend, t => t.StartsWith(words, StringComparison.Ordinal)));
            return;
        }

        Assert.Empty(model.Series.OfType<ContourSeries>());
        Assert.Equal(points * points, numbers.Length);
        Assert.All(numbers, n =>
        {
            Assert.True(PlotFont.Width(n.Text!, n.FontSize) < model.PlotArea.Width / points, $"{n.Text} is wider than its cell");
            Assert.True(n.FontSize < model.PlotArea.Height / points, $"{n.Text} is higher than its cell");
        });
    }
}
