using OxyPlot;
using OxyPlot.Axes;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Style;
using PushSim.Plotting.Svg;
using Xunit;

namespace PushSim.Plotting.Tests.Drawing;

public class PanelAxisTests
{
    private static readonly double[] s_x = [.. Enumerable.Range(0, 101).Select(i => i / 100.0)];

    private static PlotModel Build(Panel panel, PlotLook look)
    {
        PlotModel model = panel.Build(look);
        ((IPlotModel)model).Update(true);
        ((IPlotModel)model).Render(new SvgFileContext(), new OxyRect(0, 0, look.Width, 260));
        return model;
    }

    private static Panel Of(string title, double amplitude, double mean = 0.0) => new Panel("t", "x", title).Add(s_x, [.. s_x.Select(x => mean + (amplitude * Math.Sin(30.0 * x)))], "curve");

    // nobody measures a micrometre between two points of a turning robot, nor the weight of ten milligrams
    [Theory]
    [InlineData("Distance [mm]", 1e-3, 0.1)]
    [InlineData("Force [N]", 1e-4, 0.01)]
    [InlineData("Slip [m/s]", 1e-4, 0.01)]
    [InlineData("Other [1]", 1e-5, 1e-3)]
    public void A_panel_of_nearly_nothing_spans_what_could_be_measured(string title, double amplitude, double end)
    {
        Axis axis = Build(Of(title, amplitude), PlotLook.File).Axes[1];
        Assert.Equal(-end, axis.ActualMinimum, 1e-6);
        Assert.Equal(end, axis.ActualMaximum, 1e-6);
    }

    [Fact]
    public void A_panel_of_something_spans_its_curves()
    {
        Axis axis = Build(Of("Force [N]", 0.02), PlotLook.File).Axes[1];
        Assert.InRange(axis.ActualMaximum, 0.02, 0.023);
    }

    [Theory]
    [InlineData(1e-5, 0.02, 0.02)]
    [InlineData(3.0, 6.0, 6.5)]
    public void An_amplitude_starts_at_zero(double amplitude, double least, double most)
    {
        Axis axis = Build(Of("Amplitude [N]", amplitude, amplitude).WithRange(0.0), PlotLook.File).Axes[1];
        Assert.Equal(0.0, axis.ActualMinimum);
        Assert.InRange(axis.ActualMaximum, least - 1e-9, most);
    }

    // the title stands left of the numbers: its own height and the blanks take a good 30 px
    [Theory]
    [InlineData(-0.0005, 0.0005)]
    [InlineData(0.0, 0.02)]
    [InlineData(-12000.0, 9000.0)]
    [InlineData(2.6971, 2.6979)]
    public void Numbers_leave_room_for_the_title_on_a_telephone(double low, double high)
    {
        Panel panel = new Panel("t", "x", "Amplitude [u]").Add(s_x, [.. s_x.Select(x => low + ((high - low) * x))], "curve");
        PlotModel model = Build(panel, PlotLook.Phone);
        model.Axes[1].GetTickValues(out IList<double> labels, out _, out _);
        double widest = labels.Max(v => PlotFont.Width(model.Axes[1].FormatValue(v), 14.0));
        Assert.True(model.PlotArea.Left >= widest + 30.0, $"{model.PlotArea.Left} px for numbers of {widest} px");
    }
}
