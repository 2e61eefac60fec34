using PushSim.Analysis.Limits;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Runs;
using PushSim.Tests;
using SkiaSharp;
using Xunit;

namespace PushSim.Plotting.Tests.Plots;

public class LimitsPlotTests
{
    private static PlotSheet Plot()
    {
        RunResult run = Simulator.Run(TestRobots.Pull());
        return LimitsPlot.Of(LimitFinder.Find(TestRobots.Pull()), run, []);
    }

    [Fact]
    public void It_shows_forces_gains_ratio_match_and_bands()
    {
        PlotSheet plot = Plot();
        Assert.Contains("Motors against tyres, all wheels", plot.PanelTitles);
        Assert.Contains("Motors against tyres, rear axle", plot.PanelTitles);
        Assert.Contains("10 % more of each part: pull", plot.PanelTitles);
        Assert.Contains("What binds each wheel", plot.PanelTitles);
        using var stream = new MemoryStream();
        plot.WriteSvg(stream);
        string svg = System.Text.Encoding.UTF8.GetString(stream.ToArray());
        Assert.All(plot.PanelTitles, title => Assert.Contains(title, svg));
        Assert.Contains("Speed [m/s]", svg);
        Assert.Contains("sliding tyre", svg);
    }

    [Fact]
    public void Png_is_900_wide_and_the_same_each_time()
    {
        using var first = new MemoryStream();
        using var second = new MemoryStream();
        Plot().WritePng(first);
        Plot().WritePng(second);
        Assert.Equal(first.ToArray(), second.ToArray());
        using SKBitmap picture = SKBitmap.Decode(first.ToArray());
        Assert.Equal(900, picture.Width);
    }
}
