using OxyPlot;
using PushSim.Plotting.Drawing;
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

    [Fact]
    public void Curves_that_part_at_one_sample_stay_two() =>
        Assert.Equal(2, Curve.MergeEqual([Make("a", 0, 1, 2), Make("b", 0, 1.05, 2)], 0.0).Count);

    [Fact]
    public void Noise_below_the_panels_span_is_no_difference() =>
        Assert.Single(Curve.MergeEqual([Make("a", 0, 1e-9, 0), Make("b", 0, 0, -1e-9)], 1e-3));
}
