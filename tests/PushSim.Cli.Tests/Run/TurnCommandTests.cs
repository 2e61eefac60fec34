using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Runs;
using PushSim.Scenarios;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>`run` on turns: the shipped scenarios of chatter, and the stability map.</summary>
public class TurnCommandTests
{
    private static JsonElement Turning(string scenario, out JsonElement root)
    {
        Shipped run = Shipped.Json(scenario);
        Assert.Equal(ExitCode.Done, run.Cli.Code);
        root = run.Root;
        return root.GetProperty("turning");
    }

    // common practice, no source: bouncy tyres chatter on the spot where a duller foam of nearly the same grip does not
    [Fact]
    public void Of_two_covers_that_differ_in_rebound_alone_one_buzzes_and_one_is_quiet()
    {
        JsonElement bouncy = Turning("spot-bouncy-tyre", out JsonElement bouncyRoot);
        JsonElement dull = Turning("spot-dull-tyre", out JsonElement dullRoot);
        Assert.Equal(JsonValueKind.Number, bouncyRoot.GetProperty("chatter_hz").ValueKind);
        Assert.Equal(JsonValueKind.Null, dullRoot.GetProperty("chatter_hz").ValueKind);
        Assert.All(bouncy.GetProperty("wheels").EnumerateArray(), w => Assert.Equal(JsonValueKind.Number, w.GetProperty("chatter_hz").ValueKind));
        Assert.All(dull.GetProperty("wheels").EnumerateArray(), w => Assert.Equal(JsonValueKind.Null, w.GetProperty("chatter_hz").ValueKind));
        Assert.True(bouncy.GetProperty("modes")[0].GetProperty("growth_1_per_s").GetDouble() > 0.0);
        Assert.True(dull.GetProperty("modes")[0].GetProperty("growth_1_per_s").GetDouble() < 0.0);
        Assert.True(bouncy.GetProperty("chatter_onset_damping_ratio").GetDouble() > 1.0);
        Assert.True(dull.GetProperty("chatter_stop_damping_ratio").GetDouble() < 1.0);
    }

    [Fact]
    public void The_two_covers_differ_in_rebound_and_what_follows_from_it_alone()
    {
        ScenarioSettings bouncy = ScenarioReader.Read(Repository.Scenario("spot-bouncy-tyre")).Scenario!;
        ScenarioSettings dull = ScenarioReader.Read(Repository.Scenario("spot-dull-tyre")).Scenario!;
        Assert.True(bouncy.Robot.Wheels[0].Tyre.BodyDamping < 0.3 * dull.Robot.Wheels[0].Tyre.BodyDamping);
        Assert.Equal(
            dull.Robot.Wheels.Select(w => w.Tyre),
            bouncy.Robot.Wheels.Zip(dull.Robot.Wheels, (a, b) => a.Tyre with { BodyDamping = b.Tyre.BodyDamping, VerticalDamping = b.Tyre.VerticalDamping, Rebound = b.Tyre.Rebound }));
        Assert.Equal(dull.Robot.Chassis, bouncy.Robot.Chassis);
    }

    // own check: an even robot has nothing that starts its growing swing; with its centre of mass half a millimetre aside it chatters at the frequency told
    [Fact]
    public void A_turn_that_only_lacks_a_disturbance_to_chatter_says_so()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("new", "--kind", "spot", "--mass", "900g", "--wheels", "6", "--out", scratch["six"]).Code);

        // bouncier than its material is: as that it swings down by itself
        string robot = Path.Combine(scratch["six"], "robot.toml");
        File.WriteAllText(robot, File.ReadAllText(robot).Replace("\nshelf = \"moulded natural rubber 60A\"", "\nvertical_damping = \"2 s/m\"\nshelf = \"moulded natural rubber 60A\"", StringComparison.Ordinal));
        string file = Path.Combine(scratch["six"], "spot.toml");

        // at the default tolerance the integration's own error is bump enough
        File.AppendAllText(file, "\n[numerics]\ntolerance = 1e-6\n");
        using JsonDocument even = JsonDocument.Parse(Cli.Run("run", file, "--json").Output);
        Assert.Equal("buzzes", even.RootElement.GetProperty("chatter").GetString());
        Assert.True(even.RootElement.GetProperty("chatter_needs_a_bump").GetBoolean());
        Assert.All(even.RootElement.GetProperty("turning").GetProperty("wheels").EnumerateArray(), w => Assert.Equal(JsonValueKind.Null, w.GetProperty("chatter_hz").ValueKind));
        JsonElement mode = even.RootElement.GetProperty("turning").GetProperty("modes")[0];
        Assert.Contains("expect chatter from the first bump", even.RootElement.GetProperty("verdict").GetString());
        Assert.Equal(mode.GetProperty("frequency_hz").GetDouble(), even.RootElement.GetProperty("chatter_hz").GetDouble());
        double? aside = Simulator.Run(ScenarioReader.Read(file, new ReadOptions { Set = [("chassis.centre_of_mass.y", "0.5 mm")] }).Scenario!).Answers.Chatter;
        Assert.InRange(aside!.Value, 0.95 * mode.GetProperty("frequency_hz").GetDouble(), 1.05 * mode.GetProperty("frequency_hz").GetDouble());
    }

    // the same tyres under a centred mass chatter, too, but keep the floor
    [Fact]
    public void Off_centre_mass_lets_chatter_lift_a_wheel()
    {
        JsonElement off = Turning("spot-off-centre", out JsonElement root);
        Assert.Contains("leave the floor", root.GetProperty("verdict").GetString());
        Assert.Contains(off.GetProperty("wheels").EnumerateArray(), w => w.GetProperty("lift_offs").GetInt32() > 10);
        Assert.Contains(off.GetProperty("explanation").EnumerateArray(), l => l.GetString()!.StartsWith("Wheels leave the floor", StringComparison.Ordinal));
        var centred = new ReadOptions { Set = [("chassis.centre_of_mass.x", "0 mm"), ("chassis.centre_of_mass.y", "0 mm")] };
        RunResult run = Simulator.Run(ScenarioReader.Read(Repository.Scenario("spot-off-centre"), centred).Scenario!);
        Assert.NotNull(run.Answers.Chatter);
        Assert.All(run.Trace.Wheels, w => Assert.True(w.Load.Min() > 0.0, w.Name));
    }

    [Fact]
    public void Text_explains_in_plain_words()
    {
        Shipped run = Shipped.Text("spot-bouncy-tyre");
        string text = string.Join(' ', Shipped.Details("spot-bouncy-tyre").Cli.Output.Split('\n').Select(l => l.Trim()));
        Assert.Contains("What feeds a chatter", text);
        Assert.Contains("It begins to chatter by itself below a tyre body damping of", text);
        Assert.Contains("cannot be seen in a pull test", text);
        Assert.Contains("least current limit that turns it from rest", text);
        Assert.All(new[] { "carcass", "bristle", "Stribeck", "eigenvalue" }, word => Assert.DoesNotContain(word, text, StringComparison.OrdinalIgnoreCase));
        Assert.StartsWith("time_s,rotation_centre_ahead_m,rotation_centre_left_m,contact_front_left_x_m", File.ReadLines(run["turn-paths.csv"]).First());
        Assert.StartsWith("frequency_hz,wheel_front_left_force_amplitude_n", File.ReadLines(run["spectrum.csv"]).First());
    }

    [Fact]
    public void A_map_is_written_as_picture_and_table_and_agrees_with_its_simulations()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run(
            "run", Repository.Scenario("spot-bouncy-tyre"), "--json", "--format", "png,svg", "--out", scratch["out"], "--map", "tyre.sleeve.body_damping=0.1..3 N s/m", "--map", "manoeuvre.turn=0.3..1", "--set", "manoeuvre.end=1 s");
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement map = json.RootElement.GetProperty("map");
        Assert.Equal("N s/m", map.GetProperty("x_unit").GetString());
        Assert.Equal(32, map.GetProperty("x").GetArrayLength());
        Assert.Equal(24, map.GetProperty("growth_1_per_s").GetArrayLength());
        int made = map.GetProperty("simulated_points").GetInt32();
        Assert.True(made >= 30);
        Assert.True(map.GetProperty("simulated_points_that_agree").GetInt32() >= 0.95 * made);
        Assert.True(new FileInfo(scratch["out/map.png"]).Length > 10_000);
        Assert.Contains("border of chatter", File.ReadAllText(scratch["out/map.svg"]));
        string[] lines = File.ReadAllLines(scratch["out/map.csv"]);
        Assert.Equal((32 * 24) + 1, lines.Length);
        Assert.DoesNotContain("NaN", string.Concat(lines));
    }

    [Theory]
    [InlineData("spot-turn", "give --map twice", "manoeuvre.turn=0.3..1")]
    [InlineData("spot-turn", "is no range", "manoeuvre.turn=0.3", "floor.friction=0.5..1")]
    [InlineData("spot-turn", "\"a..1\" is no range of two different numbers", "manoeuvre.turn=a..1", "floor.friction=0.5..1")]
    [InlineData("spot-turn", "\"1..1\" is no range of two different numbers", "manoeuvre.turn=1..1", "floor.friction=0.5..1")]
    [InlineData("spot-turn", "has two units", "tyre.soft.body_damping=1 N s/m..2 mN s/m", "floor.friction=0.5..1")]
    [InlineData("spot-turn", "did you mean \"tyre.soft.body_damping\"?", "tyre.soft.body_dampin=1..2 N s/m", "floor.friction=0.5..1")]
    [InlineData("spot-turn", "measures mass", "tyre.soft.body_damping=1..2 kg", "floor.friction=0.5..1")]
    [InlineData("launch-soft", "the manoeuvre must be spot or arc", "manoeuvre.turn=0.3..1", "floor.friction=0.5..1")]
    public void A_wrong_map_is_a_wrong_command_line(string scenario, string says, params string[] maps)
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run(["run", Repository.Scenario(scenario), "--out", scratch["out"], .. maps.SelectMany(m => new[] { "--map", m })]);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains(says, cli.Error);
        Assert.Equal("", cli.Output);
        Assert.False(Directory.Exists(scratch["out"]));
    }

    [Fact]
    public void Set_values_win_over_those_of_the_files()
    {
        var options = new ReadOptions { Set = [("tyre.soft.body_damping", "0.7 N s/m"), ("manoeuvre.turn", "-0.3"), ("floor.friction", "0.5")] };
        ScenarioSettings s = ScenarioReader.Read(Repository.Scenario("spot-off-centre"), options).Scenario!;
        Assert.All(s.Robot.Wheels, w => Assert.Equal(0.7, w.Tyre.BodyDamping));
        Assert.Equal(-0.3, s.Manoeuvre.Commands[^1].Turn);
        Assert.Equal(0.5, s.Floor.FrictionScale);
    }
}
