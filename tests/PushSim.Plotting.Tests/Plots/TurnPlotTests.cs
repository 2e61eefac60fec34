using PushSim.Analysis.Turning;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests;
using SkiaSharp;
using Xunit;

namespace PushSim.Plotting.Tests.Plots;

public class TurnPlotTests
{
    [Fact]
    public void A_reviewed_turn_shows_spectrum_centre_and_paths()
    {
        PlotSheet plot = RunPlot.Of(TurnReview.Review(Simulator.Run(TestRobots.Spot())));
        Assert.Equal(
            ["Yaw rate", "Scrub: sideways force of each tyre", "Load on each wheel", "Centre of rotation, from the centre of mass",
                "Spectrum of each tyre's force in the settled part", "Path of each contact point over the floor", "Currents"],
            plot.PanelTitles);
    }

    // a map whose damping decides: loud and dark on the left, quiet and light on the right, both markers there
    [Fact]
    public void A_map_shows_both_sides_and_has_axes_with_units()
    {
        double[] damping = [0.1, 0.3, 1.0, 3.0];
        double[] slip = [0.4, 0.6, 0.8];
        ScenarioSettings spot = TestRobots.Spot(TestRobots.FourWheels(TestRobots.SoftTyre with { KineticFriction = 0.6, BodyStiffness = 1500.0 }));
        StabilityMap map = StabilityMap.Compute(damping, slip, (d, v) => spot with
        {
            Robot = spot.Robot with { Wheels = [.. spot.Robot.Wheels.Select(w => w with { Tyre = w.Tyre with { BodyDamping = d, SlipSpeed = v } })] },
        }, 1, 3);
        PlotSheet plot = StabilityMapPlot.Of(map, "body_damping [N s/m]", "slip_speed [m/s]");
        using var svg = new MemoryStream();
        plot.WriteSvg(svg);
        string text = System.Text.Encoding.UTF8.GetString(svg.ToArray());
        Assert.All(
            new[] { "body_damping [N s/m]", "slip_speed [m/s]", "border of chatter", "simulation grows", "simulation dies out", "Growth of a small swing [1/s]" },
            label => Assert.Contains(label, text));
        using var png = new MemoryStream();
        plot.WritePng(png);
        using SKBitmap picture = SKBitmap.Decode(png.ToArray());
        Assert.Equal(900, picture.Width);
        SKColor left = picture.GetPixel(130, picture.Height - 100);
        SKColor right = picture.GetPixel(790, picture.Height - 100);
        Assert.True(Lightness(left) < Lightness(right) - 60.0, $"{left} is not darker than {right}");

        // luma of ITU-R BT.601, section 2.5.1 (from memory)
        static double Lightness(SKColor c) => (0.299 * c.Red) + (0.587 * c.Green) + (0.114 * c.Blue);
    }
}
