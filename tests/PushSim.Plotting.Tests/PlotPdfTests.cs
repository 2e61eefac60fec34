using System.Text;
using System.Text.RegularExpressions;
using PushSim.Simulation;
using PushSim.Tests;
using Xunit;

namespace PushSim.Plotting.Tests;

public class PlotPdfTests
{
    private static byte[] Pdf(RunResult result)
    {
        using var stream = new MemoryStream();
        RunPlot.Of(result).WritePdf(stream);
        return stream.ToArray();
    }

    // "FontFile2" is the PDF name of an embedded TrueType font (ISO 32000-1, 9.9, from memory)
    [Fact]
    public void It_carries_its_font()
    {
        string pdf = Encoding.Latin1.GetString(Pdf(Simulator.Run(TestRobots.Pull())));
        Assert.StartsWith("%PDF-1.", pdf);
        Assert.Contains("/FontFile2", pdf);
        Assert.Matches(@"/BaseFont\s*/\S*DejaVuSans", pdf);
        Assert.DoesNotContain("/CreationDate", pdf);
    }

    // four panels fit on one page, nine on two
    [Fact]
    public void Panels_that_do_not_fit_go_to_the_next_page()
    {
        Assert.Equal(1, Pages(Pdf(Simulator.Run(TestRobots.Pull()))));
        Assert.Equal(2, Pages(Pdf(Simulator.Run(TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels())))));
    }

    [Fact]
    public void The_same_run_gives_the_same_bytes() => Assert.Equal(Pdf(Simulator.Run(TestRobots.Spot())), Pdf(Simulator.Run(TestRobots.Spot())));

    private static int Pages(byte[] pdf) => Regex.Matches(Encoding.Latin1.GetString(pdf), @"/Type\s*/Page\b(?!s)").Count;
}
