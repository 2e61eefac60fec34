using System.Text.RegularExpressions;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Analysis.Sweep;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Plotting.Style;
using PushSim.Runs;
using PushSim.Tests;
using SkiaSharp;
using Xunit;

namespace PushSim.Plotting.Tests.Style;

/// <summary>Blue and orange are the robots': a picture of anything else has neither; what is shaded by a value is read in grey.</summary>
public partial class HueTests
{
    // hues of Palette.Robot as a picture has them, told by their angle (HSV); lines are smoothed at their edges, so weak colour is not looked at
    private static readonly float[] s_hues = [202.0f, 26.0f];

    public static TheoryData<string> Pictures => ["launch", "spot", "pull", "ladder", "curve", "map", "ranking"];

    [Theory]
    [MemberData(nameof(Pictures))]
    public void A_picture_of_no_two_robots_has_no_robots_hue(string name)
    {
        using var png = new MemoryStream();
        Sheet(name).WritePng(png);
        using SKBitmap picture = SKBitmap.Decode(png.ToArray());
        SKColor[] found = [.. picture.Pixels.Distinct().Where(IsRobots)];
        Assert.True(found.Length == 0, $"{found.Length} colours, such as {found.FirstOrDefault()}");
    }

    // the check itself: a shove has both
    [Fact]
    public void A_picture_of_two_robots_has_both()
    {
        using var png = new MemoryStream();
        RunPlot.Of(Simulator.Run(TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels()))).WritePng(png);
        using SKBitmap picture = SKBitmap.Decode(png.ToArray());
        SKColor[] found = [.. picture.Pixels.Distinct().Where(IsRobots)];
        Assert.All(s_hues, hue => Assert.Contains(found, c => IsNear(c, hue)));
    }

    // the scale of slip in a page's replay grows lighter all the way, in steps that an eye tells
    [Fact]
    public void The_scale_of_slip_is_read_in_grey()
    {
        string css = File.ReadAllText(Path.Combine(Root(), "src/PushSim.Plotting/Report/Assets/report.css"));
        string[] colours = [.. Colour().Matches(Regex.Match(css, @"\.swatch\.slip \{[^}]*\}").Value).Select(m => m.Value)];
        Assert.True(colours.Length >= 3);
        double[] grey = [.. colours.Select(c => SKColor.Parse(c)).Select(c => (0.299 * c.Red) + (0.587 * c.Green) + (0.114 * c.Blue))];
        Assert.All(grey.Zip(grey.Skip(1)), p => Assert.True(p.Second > p.First + 40.0, string.Join(", ", grey)));
    }

    // numbers on the square of a ladder: W3C, Web Content Accessibility Guidelines 2.2, 2023, success criterion 1.4.3: 4.5; the same in the dark, where a page changes named colours
    [Fact]
    public void Numbers_stand_out_from_every_shade()
    {
        Assert.Equal(21.0, Palette.Contrast(OxyPlot.OxyColors.Black, OxyPlot.OxyColors.White), 6);
        for (int i = 0; i <= 1000; i++)
        {
            OxyPlot.OxyColor shade = LadderPlot.Shade(0.001 * i);
            Assert.True(Palette.Contrast(Palette.On(shade), shade) >= 4.5, $"{0.1 * i} %: {Palette.Contrast(Palette.On(shade), shade)}");
            Assert.Null(Palette.Name(shade));
        }
    }

    private static bool IsRobots(SKColor c) => s_hues.Any(h => IsNear(c, h));

    private static bool IsNear(SKColor c, float hue)
    {
        c.ToHsv(out float h, out float s, out float v);
        return s > 60.0f && v > 40.0f && Math.Abs(h - hue) < 14.0f;
    }

    private static PlotSheet Sheet(string name)
    {
        switch (name)
        {
            case "launch":
                return RunPlot.Of(Simulator.Run(TestRobots.Launch()));
            case "spot":
                return RunPlot.Of(Simulator.Run(TestRobots.Spot()));
            case "pull":
                return RunPlot.Of(Simulator.Run(TestRobots.Pull()));
            case "ladder":
                return LadderPlot.Of(["a", "b"], [[null, 0.8], [0.2, null]], [(1600.0, 1500.0, 1700.0), (1400.0, 1300.0, 1500.0)]);
            case "curve":
                Assert.True(SweepInput.TryParse("chassis.mass=1..2", 3, out SweepInput? mass, out _));
                return SweepPlot.OfOne(mass!, [("pull_plateau_n", [1.0, 3.0, 2.0], null, null)]);
            case "map":
                Assert.True(SweepInput.TryParse(["chassis.mass=1..2", "floor.friction=0.5..1"], _ => 2, out IReadOnlyList<SweepInput> both, out _));
                return SweepPlot.OfTwo(both[0], both[1], [("pull_plateau_n", new double?[,] { { 1.0, 2.0 }, { 3.0, 4.0 } }, (1, 1))]);
            default:
                return new PlotSheet([new ChartDrawing("t", "w", 300, look => OddsPlot.Inputs(look, [new InputShare("one", new Interval(0.5, 0.4, 0.6))]))]);
        }
    }

    private static string Root()
    {
        DirectoryInfo? at = new(AppContext.BaseDirectory);
        while (at is not null && !File.Exists(Path.Combine(at.FullName, "PushSim.sln")))
        {
            at = at.Parent;
        }

        return at!.FullName;
    }

    [GeneratedRegex("#[0-9a-f]{6}")]
    private static partial Regex Colour();
}
