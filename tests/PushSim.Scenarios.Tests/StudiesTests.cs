using PushSim.Analysis.Sweep;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Studies;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Scenarios with values set anew by key: axes of a map, points of a sweep, pairs of a ladder.</summary>
public class StudiesTests
{
    [Theory]
    [InlineData("floor.friction=0.5..1", "floor.friction", 0.5, 1.0, "")]
    [InlineData("a.b = 1e-3 .. 2e-1 N s/m", "a.b", 1e-3, 0.2, "N s/m")]
    [InlineData("a=-20..20 mm", "a", -20.0, 20.0, "mm")]
    [InlineData("a=.1...5", "a", 0.1, 0.5, "")]
    [InlineData("a=10 %..60 %", "a", 10.0, 60.0, "%")]
    public void A_range_is_read(string text, string key, double from, double to, string unit) =>
        Assert.Equal(new MapAxis(key, from, to, unit), SweepInput.TryParse(text, 2, out SweepInput? input, out _) ? MapAxis.Of(input!) : null);

    [Theory]
    [InlineData("a", SweepFaultKind.Form)]
    [InlineData("a=1..b", SweepFaultKind.Range)]
    [InlineData("a=1 mm..2 m", SweepFaultKind.Units)]
    [InlineData("a=1..1", SweepFaultKind.Range)]
    public void A_wrong_range_says_why(string text, SweepFaultKind kind)
    {
        Assert.False(SweepInput.TryParse(text, 2, out _, out SweepFault? fault));
        Assert.Equal(kind, fault!.Kind);
    }

    [Fact]
    public void Names_are_no_axis()
    {
        Assert.True(SweepInput.TryParse("wheel.*.tyre=soft,hard", 2, out SweepInput? names, out _));
        Assert.Null(MapAxis.Of(names!));
    }

    [Theory]
    [InlineData("manoeuvre.turn", "", 0)]
    [InlineData("manoeuvre.tur", "", 1)]
    [InlineData("manoeuvre.turn", "kg", 1)]
    public void A_wrong_key_or_unit_shows_at_the_ends(string key, string unit, int problems) =>
        Assert.Equal(problems, TurnMaps.Problems(Scenario("spot-turn"), new MapAxis(key, 0.4, 0.6, unit), new MapAxis("floor.friction", 0.5, 1.0, "")).Count);

    [Fact]
    public void Both_axes_of_a_map_reach_the_scenario()
    {
        Simulation.ScenarioSettings s = TurnMaps.At(Scenario("spot-turn"), new MapAxis("tyre.soft.body_damping", 0.1, 3.0, "N s/m"), 0.7, new MapAxis("floor.friction", 0.5, 1.0, ""), 0.6).Scenario!;
        Assert.Equal(0.6, s.Floor.FrictionScale);
        Assert.All(s.Robot.Wheels, w => Assert.Equal(0.7, w.Tyre.BodyDamping));
    }

    [Fact]
    public void A_point_of_a_sweep_has_its_values()
    {
        using var files = new SmallFiles();
        SweepInput[] inputs = [new("chassis.mass", ["700 g", "900 g"], [700, 900], "g"), new("floor.friction", ["0.5", "0.6", "0.7"], [0.5, 0.6, 0.7], "")];
        Simulation.ScenarioSettings s = SweepFile.At(files.ScenarioPath, inputs, [1, 2]).Scenario!.Middle;
        Assert.Equal((0.9, 0.7), (s.Robot.Chassis.Mass, s.Floor.FrictionScale));
    }

    [Fact]
    public void A_ladder_tells_like_names_apart()
    {
        using var files = new SmallFiles();
        using var again = new SmallFiles();
        using var other = new SmallFiles(SmallFiles.With(SmallFiles.Robot, "shrew", "vole"));
        var ladder = new DrawnLadder([files.RobotPath, again.RobotPath, other.RobotPath], null, 1);
        Assert.Equal(["shrew (shrew 1)", "shrew (shrew 2)", "vole"], ladder.Names);
    }

    [Fact]
    public void A_ladder_keeps_what_cannot_be_read()
    {
        using var files = new SmallFiles();
        var ladder = new DrawnLadder([files.RobotPath, files.RobotPath, Path.Combine(files.Folder, "none.toml")], null, 1);
        Assert.Equal([true, false, false], ladder.Reads.Select(r => r.Scenario is not null));
        Assert.True(ladder.Reads[1].Read.CannotRead);
    }

    private static string Scenario(string name) => Path.Combine(Generated.Root(), "scenarios", name + ".toml");
}
