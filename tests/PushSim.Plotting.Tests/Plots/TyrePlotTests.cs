using PushSim.Analysis.Wear;
using PushSim.Plotting.Drawing;
using PushSim.Plotting.Plots;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Plotting.Tests.Plots;

public class TyrePlotTests
{
    private static readonly TyreSettings s_tyre = TestRobots.SoftTyre with { SpecificWear = 5e-10, CoverWidth = 0.02, CoverDensity = 200.0 };

    [Fact]
    public void Wear_has_a_panel_for_turn_depth_mass_and_straight()
    {
        ScenarioSettings s = TestRobots.Spot(TestRobots.FourWheels(s_tyre));
        PlotSheet plot = TyrePlots.OfWear(WearResult.Of(Simulator.Run(s), StraightDrive.Run(s, CancellationToken.None))!);
        Assert.Equal(4, plot.PanelTitles.Count);
        string svg = Svg(plot);
        Assert.Contains("front left", svg);
        Assert.Contains("Volume [mm³]", svg);
    }

    [Fact]
    public void Without_width_and_density_only_volumes_are_drawn() =>
        Assert.Single(TyrePlots.OfWear(WearResult.Of(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(s_tyre with { CoverWidth = null, CoverDensity = null }))))!).PanelTitles);

    [Fact]
    public void Grip_names_wheels_cleaning_and_the_limit()
    {
        GripAfterRun At(int run, double grip, bool cleaned = false) => new(run, [1.0 - grip], [grip], grip, 0.8 * grip, cleaned);
        var series = new GripSeries { GripLoss = 0.2, Runs = [At(0, 1.0), At(1, 0.85), At(2, 0.75), At(2, 0.95, true), At(3, 0.8)] };
        Assert.Equal(2, series.RunsUntilLoss);
        string svg = Svg(TyrePlots.OfGrip(series, ["left"]));
        Assert.Contains("cleaned", svg);
        Assert.Contains("20 % of grip lost", svg);
    }

    [Fact]
    public void Materials_are_compared_and_those_left_out_are_not_drawn()
    {
        IReadOnlyList<RankedTyre> ranking = RankedTyre.Rank(
            [("soft stuff", TestRobots.Spot(TestRobots.FourWheels(s_tyre)), ""), ("impossible stuff", null, "pressed flat")], false, CancellationToken.None);
        string svg = Svg(TyrePlots.OfRanking(ranking)!);
        Assert.Contains("soft stuff", svg);
        Assert.DoesNotContain("impossible", svg);
        Assert.Null(TyrePlots.OfRanking([ranking[1]]));
    }

    // of three materials the worst in both has no name
    [Fact]
    public void Wear_against_grip_names_those_that_no_other_beats()
    {
        RankedTyre One(string name, double wear, double grip) => new(name, null) { Wear = Worn(wear), CleanFriction = grip };
        string svg = Svg(TyrePlots.OfRanking([One("hard stuff", 5e-11, 0.5), One("soft stuff", 2e-10, 1.1), One("poor stuff", 3e-10, 0.9)])!);
        Assert.Contains("hard stuff", svg);
        Assert.Contains("soft stuff", svg);
        Assert.DoesNotContain("poor stuff", svg);
        Assert.DoesNotContain("most worn wheel", svg);
    }

    private static WearResult Worn(double specific) => WearResult.Of(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(s_tyre with { SpecificWear = specific }))))!;

    private static string Svg(PlotSheet plot)
    {
        using var stream = new MemoryStream();
        plot.WriteSvg(stream);
        return System.Text.Encoding.UTF8.GetString(stream.ToArray());
    }
}
