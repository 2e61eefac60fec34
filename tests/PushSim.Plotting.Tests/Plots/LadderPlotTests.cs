using System.Text;
using PushSim.Plotting.Plots;
using Xunit;

namespace PushSim.Plotting.Tests.Plots;

public class LadderPlotTests
{
    // a robot that never loses has a score without an upper end
    [Theory]
    [InlineData(double.PositiveInfinity, true)]
    [InlineData(1700.0, false)]
    public void An_end_that_is_open_is_dotted_and_said(double high, bool isOpen)
    {
        using var file = new MemoryStream();
        LadderPlot.Of(["a", "b"], [[null, 1.0], [0.0, null]], [(1600.0, 1500.0, high), (1400.0, 1300.0, 1500.0)]).WriteSvg(file);
        string svg = Encoding.UTF8.GetString(file.ToArray());
        Assert.Equal(isOpen, svg.Contains("dotted", StringComparison.Ordinal));
        Assert.Equal(isOpen, svg.Contains("stroke-dasharray", StringComparison.Ordinal));
    }
}
