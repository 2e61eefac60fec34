using PushSim.Analysis.Chance;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Toleranced values of a scenario put in anew.</summary>
public class DrawingTests
{
    private const string Shove = "question = \"Who?\"\nrobot = \"shrew.toml\"\n[opponent]\nrobot = \"shrew.toml\"\n[manoeuvre]\nkind = \"shove\"\n";

    private static readonly string Plain = System.Text.RegularExpressions.Regex.Replace(SmallFiles.Robot, "\"([0-9.]+) ± [^\"]*\"", "\"$1\"");

    [Theory]
    [InlineData("shove-heavy-grippy")]
    [InlineData("shove-six-four")]
    [InlineData("gopher-launch")]
    [InlineData("arc")]
    public void The_middle_values_give_the_scenario_of_the_file(string name)
    {
        string path = Path.Combine(Folder(), name + ".toml");
        DrawableScenario drawn = Open(DrawableScenario.Open(path));
        ReadResult read = ScenarioReader.Read(path);
        double[] values = [.. drawn.Values.Select(v => read.Inputs.Any(i => v.Key.EndsWith(i.Key, StringComparison.Ordinal)) || v.Spread != DrawShape.Uniform ? v.Middle : v.Middle - v.Tolerance)];
        ScenarioSettings again = drawn.With(values, out string cause)!;
        Assert.Equal("", cause);
        Assert.Equal(Text(read.Scenario!), Text(again));
    }

    // the scenario's own [override] gives the robot 1.1 kg and its opponent 1.9 kg; whoever reads sets both anew, and the drawn matches must have that too
    [Fact]
    public void What_is_set_anew_stands_before_the_files_own_overrides_in_every_draw()
    {
        var options = new ReadOptions { Set = [("chassis.mass", "1.5 kg"), ("opponent.chassis.mass", "1.6 kg")] };
        DrawableScenario drawn = Open(DrawableScenario.Open(Path.Combine(Folder(), "shove-heavy-grippy.toml"), options));
        ScenarioSettings s = drawn.With([.. drawn.Values.Select(v => v.Middle)], out string cause)!;
        Assert.Equal("", cause);
        Assert.Equal((1.5, 1.6), (drawn.Middle.Robot.Chassis.Mass, drawn.Middle.Opponent!.Robot.Chassis.Mass));
        Assert.Equal((1.5, 1.6), (s.Robot.Chassis.Mass, s.Opponent!.Robot.Chassis.Mass));
    }

    [Fact]
    public void A_drawn_value_reaches_every_wheel_that_shares_it()
    {
        DrawableScenario drawn = Open(DrawableScenario.Open(Path.Combine(Folder(), "shove-equals.toml")));
        ScenarioSettings s = drawn.With(With(drawn, "tyre.soft.static_friction", "", 1.23), out _)!;
        Assert.All(s.Robot.Wheels, w => Assert.Equal(1.23, w.Tyre.StaticFriction));
        Assert.All(s.Opponent!.Robot.Wheels, w => Assert.Equal(1.0, w.Tyre.StaticFriction));
    }

    [Fact]
    public void A_value_without_a_tolerance_gets_that_of_its_class()
    {
        using var plain = new SmallFiles(Plain, Shove);
        DrawableScenario drawn = Open(DrawableScenario.Open(plain.ScenarioPath));
        Assert.All(drawn.Values, v => Assert.True(v.IsOfClass));
        Assert.All(new[] { "tyre.foam.static_friction", "opponent.tyre.foam.kinetic_friction", "shove.offset", "manoeuvre.heading", "opponent.heading", "manoeuvre.driver.reaction", "floor.dust", "floor.friction", "battery.charge", "battery.resistance" }, key => Assert.Contains(drawn.Values, v => v.Key == key));

        Assert.Equal(0.005, Assert.Single(drawn.Values, v => v.Key == "shove.offset").Tolerance);
        Assert.Equal(3.0 * Math.PI / 180.0, Assert.Single(drawn.Values, v => v.Key == "manoeuvre.heading").Tolerance, 1e-12);
        TolerancedValue friction = Assert.Single(drawn.Values, v => v.Key == "tyre.foam.static_friction");
        Assert.Equal(0.15 * friction.Middle, friction.Tolerance, 1e-12);

        using var stated = new SmallFiles(SmallFiles.With(Plain, "kinetic_friction = 0.8", "kinetic_friction = \"0.8 ± 0.02\""), Shove);
        IReadOnlyList<TolerancedValue> beside = Open(DrawableScenario.Open(stated.ScenarioPath)).Values;
        Assert.Equal((0.02, false), Of("kinetic_friction"));
        Assert.Equal((0.15, true), Of("static_friction"));

        (double Tolerance, bool IsOfClass) Of(string key) => Assert.Single(beside, v => v.Key == "tyre.foam." + key) is var v ? (Math.Round(v.Tolerance, 12), v.IsOfClass) : default;
    }

    [Fact]
    public void An_exact_value_is_not_drawn()
    {
        using var files = new SmallFiles(SmallFiles.With(Plain, "kinetic_friction = 0.8", "kinetic_friction = \"0.8 exact\""), Shove);
        DrawableScenario drawn = Open(DrawableScenario.Open(files.ScenarioPath));
        Assert.DoesNotContain(drawn.Values, v => v.Key == "tyre.foam.kinetic_friction");
        Assert.Contains(drawn.Values, v => v.Key == "tyre.foam.static_friction");
        Assert.Equal(0.8, drawn.Middle.Robot.Wheels[0].Tyre.KineticFriction);
    }

    // a delay of 0.02 s may be off by that much, none at all is none; where nobody states one it is about 0.05 s
    [Theory]
    [InlineData("0.15 s", 0.15, 0.05)]
    [InlineData("0.02 s", 0.02, 0.02)]
    [InlineData("0 s", 0.0, 0.0)]
    [InlineData(null, 0.05, 0.05)]
    public void A_stated_value_stays_the_middle(string? stated, double middle, double tolerance)
    {
        using var files = new SmallFiles(Plain, Shove + (stated is null ? "" : $"reaction_delay = \"{stated}\"\n"));
        TolerancedValue? found = Open(DrawableScenario.Open(files.ScenarioPath)).Values.FirstOrDefault(v => v.Key == "manoeuvre.driver.reaction");
        Assert.Equal(tolerance, found?.Tolerance ?? 0.0, 1e-12);
        Assert.Equal(middle, found?.Middle ?? 0.0, 1e-12);
    }

    [Fact]
    public void A_floor_without_dust_has_none_in_any_match()
    {
        using var files = new SmallFiles(Plain, Shove + "[floor]\ndust = 0\n");
        Assert.DoesNotContain(Open(DrawableScenario.Open(files.ScenarioPath)).Values, v => v.Key == "floor.dust");
    }

    [Fact]
    public void A_scenario_meets_another_opponent()
    {
        string robots = Path.Combine(Folder(), "robots");
        DrawableScenario own = Open(DrawableScenario.Open(Path.Combine(Folder(), "shove-heavy-grippy.toml")));
        DrawableScenario other = Open(DrawableScenario.Open(Path.Combine(Folder(), "shove-heavy-grippy.toml"), new ReadOptions { Opponent = Path.Combine(robots, "wombat.toml") }));
        Assert.Equal((own.Middle.Robot.Name, own.Middle.Robot.Chassis.Mass, "wombat"), (other.Middle.Robot.Name, other.Middle.Robot.Chassis.Mass, other.Middle.Opponent!.Robot.Name));
        Assert.Equal(Text(own.Middle with { Name = "", Opponent = null }), Text(other.Middle with { Name = "", Opponent = null }));
    }

    [Fact]
    public void Values_of_the_shelf_are_told_from_those_of_the_file()
    {
        using var files = new SmallFiles(SmallFiles.With(Plain, "kinetic_friction = 0.8", "kinetic_friction = \"0.8 ± 0.02\"\nshelf = \"silicone\""), Shove);
        DrawableScenario drawn = Open(DrawableScenario.Open(files.ScenarioPath));
        Assert.Equal((false, true), (Of("kinetic_friction").IsOfShelf, Of("load_exponent").IsOfShelf));

        TolerancedValue Of(string key) => Assert.Single(drawn.Values, v => v.Key == "tyre.foam." + key);
    }

    [Fact]
    public void An_own_share_gives_each_wheel_an_error_of_its_own()
    {
        using var files = new SmallFiles(SmallFiles.With(Plain, "kinetic_friction = 0.8", "kinetic_friction = \"0.8 ± 0.02\"\nown_share = \"40 %\""), Shove);
        DrawableScenario drawn = Open(DrawableScenario.Open(files.ScenarioPath));
        TolerancedValue[] own = [.. drawn.Values.Where(v => v.Key == "tyre.foam.kinetic_friction")];
        Assert.Equal(drawn.Middle.Robot.Wheels.Count(w => w.Tyre.Name == "foam"), own.Length);
        Assert.All(own, v => Assert.Equal(0.4, v.OwnShare, 1e-12));
        ScenarioSettings s = drawn.With(With(drawn, own[0].Key, own[0].Part, 0.77), out _)!;
        Assert.Equal(0.77, Assert.Single(s.Robot.Wheels, w => w.Name == own[0].Part).Tyre.KineticFriction);
        Assert.All(s.Robot.Wheels.Where(w => w.Name != own[0].Part && w.Tyre.StaticFriction > 0.5), w => Assert.Equal(0.8, w.Tyre.KineticFriction, 1e-12));
    }

    // the second motor of "port" and the motor of "port 2" are two parts
    [Fact]
    public void Motors_of_drives_with_like_names_have_errors_of_their_own()
    {
        string robot = Plain.Replace("wheels = [\"left\"]\nmotors = [\"small\"]", "wheels = [\"left\"]\nmotors = [\"small\", \"small\"]", StringComparison.Ordinal)
            .Replace("name = \"starboard\"", "name = \"port 2\"", StringComparison.Ordinal).Replace("starboard/1", "port 2", StringComparison.Ordinal)
            .Replace("drives = [\"port\"]", "drives = [\"port\"]\nwiring = \"parallel\"", StringComparison.Ordinal).Replace("stall_current = \"3 A\"", "stall_current = \"3 A ± 5 %\"\nown_share = 1", StringComparison.Ordinal);
        using var files = new SmallFiles(robot, Shove);
        DrawableScenario drawn = Open(DrawableScenario.Open(files.ScenarioPath));
        Assert.Equal(["port", "port 2", "port, motor 2"], drawn.Values.Where(v => v is { Owner: "robot", OwnShare: 1.0 } && v.Key.EndsWith("stall_current", StringComparison.Ordinal)).Select(v => v.Part).Order(StringComparer.Ordinal));
    }

    // drawn for themselves the two may cross; a tread never grips better sliding than it held
    [Fact]
    public void Sliding_friction_is_drawn_no_higher_than_breakaway()
    {
        DrawableScenario drawn = Open(DrawableScenario.Open(Path.Combine(Folder(), "shove-equals.toml")));
        ScenarioSettings s = drawn.With(With(drawn, "tyre.soft.kinetic_friction", "", 1.1), out string cause)!;
        Assert.Equal("", cause);
        Assert.All(s.Robot.Wheels, w => Assert.Equal(1.0, w.Tyre.KineticFriction));
    }

    [Fact]
    public void Draws_that_contradict_each_other_say_so()
    {
        using var files = new SmallFiles(Plain, Shove + "[override]\n\"chassis.centre_of_mass.x\" = \"0 mm ± 1 mm\"\n");
        DrawableScenario drawn = Open(DrawableScenario.Open(files.ScenarioPath));
        Assert.Null(drawn.With(With(drawn, "chassis.centre_of_mass.x", "", 0.4), out string cause));
        Assert.Contains("outside the wheels", cause);
    }

    [Theory]
    [InlineData("chassis.mass", "900 g", 0.9)]
    [InlineData("opponent.chassis.mass", "0.95 kg", 0.95)]
    public void A_caller_sets_values_of_either_robot(string key, string text, double mass)
    {
        DrawableScenario drawn = Open(DrawableScenario.Open(Path.Combine(Folder(), "shove-equals.toml"), new ReadOptions { Set = [(key, text)] }));
        Assert.Equal(mass, (key.StartsWith("opponent", StringComparison.Ordinal) ? drawn.Middle.Opponent!.Robot : drawn.Middle.Robot).Chassis.Mass, 1e-12);
    }

    [Fact]
    public void A_value_set_by_the_caller_stands_beside_a_swapped_material()
    {
        var options = new ReadOptions { TyreMaterial = "sheet foamed TPU 0.12", Set = [("tyre.*.kinetic_friction", "0.6")] };
        DrawableScenario drawn = Open(DrawableScenario.Open(Path.Combine(Folder(), "shove-equals.toml"), options));
        Assert.All(drawn.Middle.Robot.Wheels, w => Assert.Equal(0.6, w.Tyre.KineticFriction));
        ScenarioSettings again = drawn.With([.. drawn.Values.Select(v => v.Middle)], out _)!;
        Assert.All(again.Robot.Wheels, w => Assert.Equal(0.6, w.Tyre.KineticFriction));
    }

    [Fact]
    public void A_caller_sets_a_value_of_every_name_of_the_scene_and_the_robot_itself()
    {
        string path = Path.Combine(Folder(), "shove-equals.toml");
        Assert.All(Open(DrawableScenario.Open(path, new ReadOptions { Set = [("drive.*.gear_ratio", "30")] })).Middle.Robot.Drives, d => Assert.Equal(30.0, d.Motors[0].Ratio));
        Assert.Equal(0.8, Open(DrawableScenario.Open(path, new ReadOptions { Set = [("floor.friction", "0.8")] })).Middle.Floor.FrictionScale);
        Assert.Equal("badger", Open(DrawableScenario.Open(path, new ReadOptions { Set = [("robot", "robots/badger.toml")] })).Middle.Robot.Name);
    }

    [Theory]
    [InlineData("tyre.soft.static_frction", "1")]
    [InlineData("drive.*.gear_rat", "30")]
    [InlineData("floor.frictio", "1")]
    [InlineData("chassis.mass", "1 m")]
    public void A_wrong_path_or_value_is_a_complaint_about_the_command_line(string key, string text) =>
        Assert.Contains(DrawableScenario.Open(Path.Combine(Folder(), "shove-equals.toml"), new ReadOptions { Set = [(key, text)] }).Read.Problems, p => p.Severity == Severity.Error && p.File == "command line");

    [Fact]
    public void Two_robots_meet_without_a_scenario_file()
    {
        string robots = Path.Combine(Folder(), "robots");
        DrawableScenario pair = Open(DrawableScenario.OfPair(Path.Combine(robots, "mole.toml"), Path.Combine(robots, "badger.toml")));
        Assert.Equal(("mole", "badger"), (pair.Middle.Robot.Name, pair.Middle.Opponent!.Robot.Name));
        Assert.NotNull(pair.With([.. pair.Values.Select(v => v.Middle)], out _));
    }

    private static double[] With(DrawableScenario drawn, string key, string part, double value)
    {
        double[] values = [.. drawn.Values.Select(v => v.Middle)];
        values[drawn.Values.ToList().FindIndex(v => v.Key == key && v.Part == part)] = value;
        return values;
    }

    private static DrawableScenario Open(DrawableResult result)
    {
        Assert.True(result.Scenario is not null, string.Join("\n", result.Read.Problems));
        return result.Scenario!;
    }

    // every number and text of the settings, to the last digit
    private static string Text(ScenarioSettings s) => System.Text.Json.JsonSerializer.Serialize(s, new System.Text.Json.JsonSerializerOptions
    {
        IncludeFields = true, NumberHandling = System.Text.Json.Serialization.JsonNumberHandling.AllowNamedFloatingPointLiterals,
    });

    internal static string Folder()
    {
        string? folder = AppContext.BaseDirectory;
        while (folder is not null && !File.Exists(Path.Combine(folder, "PushSim.sln")))
        {
            folder = Path.GetDirectoryName(folder);
        }

        return Path.Combine(folder!, "scenarios");
    }
}
