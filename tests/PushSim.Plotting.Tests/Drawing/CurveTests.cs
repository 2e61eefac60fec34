using OxyPlot;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Style;
using Xunit;

namespace PushSim.Plotting.Tests.Drawing;

public class CurveTests
{
    private static readonly double[] s_x = [0.0, 1.0, 2.0];

    private static Curve Make(string label, params double[] y) => new(label, [.. s_x.Zip(y, (a, b) => new DataPoint(a, b))], s_x, y);

    [Fact]
    public void Curves_on_each_other_are_drawn_once_under_all_names()
    {
        List<Curve> drawn = Curve.MergeEqual([Make("a", 0, 1, 2), Make("b", 0, 1, 2.001), Make("c", 0, 0, 0), Make("d", 0, 1, 2)], 0.0);
        Assert.Equal(["a (same: b, d)", "c"], drawn.Select(c => c.Label));
    }

    [Fact]
    public void Names_too_many_for_a_telephone_are_counted() =>
        Assert.Equal(
            "front left (same: 3 others)",
            Assert.Single(Curve.MergeEqual([.. new[] { "front left", "front right", "middle left", "middle right" }.Select(n => Make(n, 0, 1, 2))], 0.0)).Label);

    [Theory]
    [InlineData("grip of the front tyres", "grip of the rear tyres", "grip of the front tyres (same: rear tyres)")]
    [InlineData("battery", "controller right", "battery (same: controller right)")]
    [InlineData("motors can give at 60 % throttle", "limit of the controllers and cables", "motors can give at 60 % throttle (1 more)")]
    public void Two_names_that_are_too_long_share_their_words(string first, string second, string name)
    {
        Assert.Equal(name, Assert.Single(Curve.MergeEqual([Make(first, 0, 1, 2), Make(second, 0, 1, 2)], 0.0)).Label);

        // symbol and name about the middle of the area stay within the picture
        double half = 0.5 * (PlotFont.Width(name, 13.0) + 36.0 + 8.0);
        Assert.True(PlotLook.Padding + PlotLook.Phone.LeftMargin + (0.5 * PlotLook.Phone.AreaWidth) + half <= PlotLook.Phone.Width);
    }

    [Fact]
    public void Curves_that_part_at_one_sample_stay_two() =>
        Assert.Equal(2, Curve.MergeEqual([Make("a", 0, 1, 2), Make("b", 0, 1.05, 2)], 0.0).Count);

    [Fact]
    public void Noise_below_the_panels_span_is_no_difference() =>
        Assert.Single(Curve.MergeEqual([Make("a", 0, 1e-9, 0), Make("b", 0, 0, -1e-9)], 1e-3));
}
