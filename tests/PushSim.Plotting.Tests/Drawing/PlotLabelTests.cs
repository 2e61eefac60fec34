using OxyPlot.Annotations;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Style;
using Xunit;

namespace PushSim.Plotting.Tests.Drawing;

public class PlotLabelTests
{
    private static readonly double[] s_x = [.. Enumerable.Range(0, 101).Select(i => i / 100.0)];

    private static TextAnnotation[] Labels(Panel panel) => [.. panel.Build(PlotLook.File).Annotations.OfType<TextAnnotation>()];

    [Theory]
    [InlineData(0.1)]
    [InlineData(0.5)]
    [InlineData(0.97)]
    public void A_label_keeps_off_a_curve_and_in_the_panel(double time)
    {
        var panel = new Panel("t", "x", "y");
        panel.Add(s_x, [.. s_x.Select(x => x)], "ramp");
        TextAnnotation label = Assert.Single(Labels(panel.MarkTime(time, "command")));
        double x = label.TextPosition.X;
        Assert.InRange(x, 0.0, 0.91);

        // the ramp's height under the words is x to x + 0.09
        double y = label.TextPosition.Y;
        Assert.True(y < x - 0.05 || y > x + 0.12, $"label at ({x}, {y}) lies on the ramp");
    }

    // Levels stacked soon after the moment leave no room there: the words go left, and end before their line
    [Fact]
    public void A_label_that_goes_left_of_its_line_ends_before_it()
    {
        var panel = new Panel("t", "x", "y");
        for (int i = 0; i < 8; i++)
        {
            panel.Add(s_x, [.. s_x.Select(x => x < 0.53 ? 0.0 : 0.14 * i)], $"{i}");
        }

        TextAnnotation label = Assert.Single(Labels(panel.MarkTime(0.5, "command")));
        double end = label.TextPosition.X + (PlotFont.Width("command", 13.0) / 780.0);
        Assert.InRange(end, 0.4, 0.4999);
    }

    [Fact]
    public void Two_labels_of_one_moment_do_not_cover_each_other()
    {
        var panel = new Panel("t", "x", "y");
        panel.Add(s_x, [.. s_x.Select(x => x)], "ramp");
        TextAnnotation[] labels = Labels(panel.MarkTime(0.5, "command").MarkTime(0.5, "standstill"));
        Assert.Equal(2, labels.Length);
        bool apart = Math.Abs(labels[0].TextPosition.Y - labels[1].TextPosition.Y) > 0.1 || Math.Abs(labels[0].TextPosition.X - labels[1].TextPosition.X) > 0.07;
        Assert.True(apart);
    }
}
