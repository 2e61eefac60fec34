using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Studies;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Variants of a scenario, and another robot in it.</summary>
public class VariantTests
{
    private static readonly string s_scenarios = Path.GetDirectoryName(ShippedFile("launch-soft.toml"))!;

    [Theory]
    [InlineData("name = \"a\"\nset = { \"chassis.mass\" = \"2 kg\" }", "")]
    [InlineData("set = { \"chassis.mass\" = \"2 kg\" }", "missing \"name\"")]
    [InlineData("name = \"a\"", "missing \"set\"")]
    [InlineData("name = \"a\"\nset = {}", "this variant sets nothing")]
    [InlineData("name = \"a\"\nset = { \"chassis.mess\" = \"2 kg\" }", "variant \"a\": robot \"mole\" has no value \"chassis.mess\"")]
    [InlineData("name = \"a\"\nset = { \"chassis.mass\" = \"2 m\" }", "\"mass\"")]
    [InlineData("name = \"a\"\nset = { \"chassis.mass\" = \"2 kg\" }\n[[variant]]\nname = \"a\"\nset = { \"chassis.mass\" = \"3 kg\" }", "there is already a variant \"a\"")]
    public void What_is_wrong_with_a_variant_is_wrong_with_the_file(string variant, string complaint)
    {
        ReadResult read = Read(variant);
        Assert.Equal(complaint.Length > 0, read.HasErrors);
        Assert.Equal(complaint.Length > 0, read.Scenario is null);
        Assert.True(complaint.Length == 0 || read.Problems.Any(p => p.Message.Contains(complaint, StringComparison.Ordinal) && p.Line > 6 && p.File.EndsWith("variants.toml", StringComparison.Ordinal)));
    }

    // the file's override, then the caller, then the variant; a path of the opponent and one with a star too
    [Fact]
    public void The_last_to_set_a_value_counts()
    {
        const string Text = "name = \"a\"\n[variant.set]\n\"chassis.mass\" = \"2 kg\"\n\"opponent.chassis.mass\" = \"3 kg\"\nshove.gap = \"50 mm\"\n\"tyre.*.static_friction\" = 0.95";
        ReadOptions caller = new() { Set = [("chassis.mass", "1.8 kg")] };
        Assert.Equal(1.8, Read(Text, caller).Scenario!.Robot.Chassis.Mass);
        var read = Read(Text, caller with { Variant = "a" });
        Assert.Equal((2.0, 3.0, 0.05), (read.Scenario!.Robot.Chassis.Mass, read.Scenario.Opponent!.Robot.Chassis.Mass, read.Scenario.Shove.Gap));
        Assert.All(read.Scenario.Robot.Wheels, w => Assert.Equal(0.95, w.Tyre.StaticFriction));
        Assert.All(read.Scenario.Opponent.Robot.Wheels, w => Assert.NotEqual(0.95, w.Tyre.StaticFriction));
        Assert.Equal(["a"], read.Variants);
    }

    [Fact]
    public void A_drawn_variant_has_its_middles()
    {
        DrawableScenario drawn = DrawableScenario.Open(File("name = \"a\"\nset = { \"chassis.mass\" = \"2 kg ± 0.1 kg\" }"), new ReadOptions { Variant = "a" }).Scenario!;
        Assert.Equal(2.0, drawn.Middle.Robot.Chassis.Mass);
        Assert.Equal(0.1, Assert.Single(drawn.Values, v => v.Key == "chassis.mass").Tolerance, 1e-12);
        Assert.Equal(2.0, drawn.With([.. drawn.Values.Select(v => v.Middle)], out _)!.Robot.Chassis.Mass, 1e-12);
    }

    [Fact]
    public void Another_robot_takes_the_place_of_the_scenarios_own_and_of_what_is_set_anew_in_it()
    {
        string badger = Path.Combine(s_scenarios, "robots", "badger.toml");
        ScenarioSettings scenario = Read("name = \"a\"\nset = { \"chassis.mass\" = \"2 kg\" }", new ReadOptions { Robot = badger }).Scenario!;
        Assert.Equal(("badger", "mole"), (scenario.Robot.Name, scenario.Opponent!.Robot.Name));
        Assert.Equal(ScenarioReader.Check(badger).Robot!.Chassis.Mass, scenario.Robot.Chassis.Mass);
    }

    [Fact]
    public void Another_opponent_takes_the_place_of_the_scenarios_own_and_of_what_is_set_anew_in_it()
    {
        string badger = Path.Combine(s_scenarios, "robots", "badger.toml");
        string file = File("name = \"a\"\nset = { \"opponent.chassis.mass\" = \"2 kg\" }");
        System.IO.File.WriteAllText(file, System.IO.File.ReadAllText(file).Replace("\"chassis.mass\" = \"1.5 kg\"", "\"opponent.chassis.mass\" = \"3 kg\"", StringComparison.Ordinal));
        double own = ScenarioReader.Check(badger).Robot!.Chassis.Mass;
        ReadOptions options = new() { Opponent = badger };
        Assert.Equal((3.0, own), (ScenarioReader.Read(file).Scenario!.Opponent!.Robot.Chassis.Mass, ScenarioReader.Read(file, options).Scenario!.Opponent!.Robot.Chassis.Mass));
        Assert.Equal(own, ScenarioReader.Read(file, options with { Variant = "a" }).Scenario!.Opponent!.Robot.Chassis.Mass);
        Assert.Equal(own, DrawableScenario.Open(file, options).Scenario!.Middle.Opponent!.Robot.Chassis.Mass);

        // what a caller sets anew is meant for whoever stands there
        Assert.Equal(1.1, ScenarioReader.Read(file, options with { Set = [("opponent.chassis.mass", "1.1 kg")] }).Scenario!.Opponent!.Robot.Chassis.Mass);
    }

    [Fact]
    public void What_is_wrong_with_a_variant_is_told_beside_what_is_wrong_with_the_file()
    {
        ReadResult read = ScenarioReader.Read(File("name = \"a\"\nset = { \"chassis.mass\" = \"2 N\" }\n[floor]\nfriction = \"rough\""));
        Assert.Contains(read.Problems, p => p.Message.StartsWith("variant \"a\":", StringComparison.Ordinal));
        Assert.Contains(read.Problems, p => !p.Message.StartsWith("variant", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(null, "variants,a")]
    [InlineData("robots/badger.toml", "variants,a,badger")]
    [InlineData("launch-soft.toml", "variants,a,launch-soft")]
    public void The_designs_are_the_file_its_variants_and_the_one_beside(string? beside, string labels)
    {
        string file = File("name = \"a\"\nset = { \"chassis.mass\" = \"2 kg\" }");
        IReadOnlyList<DesignSide> sides = DesignSides.Of(ScenarioReader.Read(file), file, new ReadOptions(), beside is null ? null : Path.Combine(s_scenarios, beside));
        Assert.Equal(labels, string.Join(',', sides.Select(s => s.Label)));
    }

    private static ReadResult Read(string variant, ReadOptions? options = null) => ScenarioReader.Read(File(variant), options);

    private static string File(string variant)
    {
        string folder = Directory.CreateTempSubdirectory("pushsim variants ").FullName;
        Directory.CreateDirectory(Path.Combine(folder, "robots"));
        System.IO.File.Copy(Path.Combine(s_scenarios, "robots", "mole.toml"), Path.Combine(folder, "robots", "mole.toml"));
        string file = Path.Combine(folder, "variants.toml");
        System.IO.File.WriteAllText(file, $"robot = \"robots/mole.toml\"\noverride = {{ \"chassis.mass\" = \"1.5 kg\" }}\n[manoeuvre]\nkind = \"shove\"\n[opponent]\nrobot = \"robots/mole.toml\"\n[[variant]]\n{variant}\n");
        return file;
    }

    private static string ShippedFile(string name, [System.Runtime.CompilerServices.CallerFilePath] string here = "") => Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "scenarios", name);
}
