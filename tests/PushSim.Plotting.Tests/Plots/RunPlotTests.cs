using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Runs;
using PushSim.Tests;
using SkiaSharp;
using Xunit;

namespace PushSim.Plotting.Tests.Plots;

public class RunPlotTests
{
    public static TheoryData<string> Kinds() => ["launch", "spot", "pull"];

    private static RunResult Run(string kind) => Simulator.Run(kind switch
    {
        "launch" => TestRobots.Launch(),
        "spot" => TestRobots.Spot(),
        _ => TestRobots.Pull(),
    });

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Png_is_900_wide_and_has_ink_in_every_panel(string kind)
    {
        PlotSheet plot = RunPlot.Of(Run(kind));
        using var stream = new MemoryStream();
        plot.WritePng(stream);
        using SKBitmap picture = SKBitmap.Decode(stream.ToArray());
        Assert.Equal(900, picture.Width);
        int height = picture.Height / plot.PanelTitles.Count;
        for (int panel = 0; panel < plot.PanelTitles.Count; panel++)
        {
            // the title's line: letters are there only if a font was found
            int dark = 0;
            for (int y = 4; y < 26; y++)
            {
                for (int x = 0; x < 900; x++)
                {
                    dark += picture.GetPixel(x, (panel * height) + y).Red < 100 ? 1 : 0;
                }
            }

            Assert.True(dark > 100, $"panel {panel}: {dark} dark pixels in its title");
        }
    }

    [Theory]
    [MemberData(nameof(Kinds))]
    public void Svg_names_every_panel_and_has_units_on_its_axes(string kind)
    {
        PlotSheet plot = RunPlot.Of(Run(kind));
        using var stream = new MemoryStream();
        plot.WriteSvg(stream);
        string svg = System.Text.Encoding.UTF8.GetString(stream.ToArray());
        Assert.All(plot.PanelTitles, title => Assert.Contains(title, svg));
        Assert.Contains("Time [s]", svg);
        Assert.InRange(stream.Length, 20_000, 300_000);
        stream.Position = 0;
        Assert.Equal("svg", System.Xml.Linq.XDocument.Load(stream).Root!.Name.LocalName);
    }

    // Letters are shapes in the file: a viewer without fonts shows them, and every one that is used is there
    [Fact]
    public void Svg_needs_no_font()
    {
        using var stream = new MemoryStream();
        RunPlot.Of(Run("pull")).WriteSvg(stream);
        stream.Position = 0;
        var svg = System.Xml.Linq.XDocument.Load(stream);
        Assert.DoesNotContain(svg.Descendants(), e => e.Name.LocalName == "text" || e.Attribute("font-family") is not null);
        HashSet<string> shapes = [.. svg.Descendants().Where(e => e.Name.LocalName == "path" && e.Attribute("id") is not null).Select(e => "#" + e.Attribute("id")!.Value)];
        string[] used = [.. svg.Descendants().Where(e => e.Name.LocalName == "use").Select(e => e.Attributes().Single(a => a.Name.LocalName == "href").Value)];
        Assert.True(used.Length > 300, $"{used.Length} letters");
        Assert.Subset(shapes, used.ToHashSet());
    }

    [Fact]
    public void The_same_run_gives_the_same_bytes()
    {
        using var first = new MemoryStream();
        using var second = new MemoryStream();
        RunPlot.Of(Run("spot")).WritePng(first);
        RunPlot.Of(Run("spot")).WritePng(second);
        Assert.Equal(first.ToArray(), second.ToArray());
    }
}
