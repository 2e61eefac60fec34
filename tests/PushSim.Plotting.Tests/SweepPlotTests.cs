using OxyPlot;
using OxyPlot.Annotations;
using PushSim.Analysis.Sweep;
using Xunit;

namespace PushSim.Plotting.Tests;

public class SweepPlotTests
{
    private static PlotModel Build(PlotLook look, params double[] values)
    {
        Assert.True(SweepInput.TryParse("drive.*.gear_ratio=8..40", values.Length, out SweepInput? input, out string message), message);
        double?[] y = [.. values.Select(v => (double?)v)];
        return SweepPlot.One(look, input!, "ground_gained_m", y, null, Optimum.OfCurve(input!.Numbers!, y, isHighest: true));
    }

    // on a telephone the axis' title stands left of numbers such as -0.0434, about 52 px wide
    [Theory]
    [InlineData(-0.0434, -0.0471, 62.0 + 20.0, 400.0 * 0.38)]
    [InlineData(1.0, 9.0, 62.0, 62.0)]
    public void Numbers_with_many_decimals_get_room_beside_a_narrow_curve(double first, double last, double least, double most) =>
        Assert.InRange(Build(PlotLook.Phone, first, 0.5 * (first + last), last).PlotMargins.Left, least, most);

    [Theory]
    [InlineData(new[] { 3.0, 2.0, 1.0 }, HorizontalAlignment.Left)]
    [InlineData(new[] { 1.0, 3.0, 1.0 }, HorizontalAlignment.Center)]
    [InlineData(new[] { 1.0, 2.0, 3.0 }, HorizontalAlignment.Right)]
    public void The_word_at_the_best_point_stays_inside(double[] values, HorizontalAlignment expected) =>
        Assert.Equal(expected, Assert.Single(Build(PlotLook.Phone, values).Annotations.OfType<PointAnnotation>()).TextHorizontalAlignment);
}
