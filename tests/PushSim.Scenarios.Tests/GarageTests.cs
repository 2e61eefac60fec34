using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Studies;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>A garage: names, tyres that robots refer to, opponents known by a glance, floors, and what each thing lacks.</summary>
public sealed class GarageTests : IDisposable
{
    private const string Garage = """
        name = "test"
        [[tyre]]
        name = "foam"
        shelf = "sheet EVA foam"
        diameter = "60 mm"
        wheel_mass = "26 g"
        width = "22 mm"
        tread_thickness = "9 mm"
        static_friction = "0.95 ± 0.1"
        kinetic_friction = 0.8
        [[tyre]]
        name = "bare"
        static_friction = 0.9
        kinetic_friction = 0.8
        [[floor]]
        name = "board"
        friction = 0.7
        [[rival]]
        name = "wombat"
        mass = "about 1.4 kg"
        wheel_diameter = "50 mm"
        motor = "25 mm"
        [[rival]]
        name = "exactly"
        mass = "1.4 kg ± 1 %"
        wheels = 6
        """;

    private readonly string _folder = Directory.CreateTempSubdirectory("garage").FullName;

    public GarageTests()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "robots"));
        File.WriteAllText(Path.Combine(_folder, "garage.toml"), Garage);
        string mole = File.ReadAllText(Path.Combine(AppContext.BaseDirectory, "../../../../../scenarios/robots/mole.toml"));
        File.WriteAllText(Path.Combine(_folder, "robots", "mole.toml"), mole.Replace("tyre = \"soft\"", "tyre = \"foam\"", StringComparison.Ordinal).Replace("diameter = \"54 mm\"\n", "", StringComparison.Ordinal));
        File.WriteAllText(Path.Combine(_folder, "robots", "own.toml"), mole);
    }

    private ReadOptions Options => new() { Garage = _folder };

    public void Dispose() => Directory.Delete(_folder, recursive: true);

    [Fact]
    public void A_wheel_takes_tyre_and_diameter_from_the_garage()
    {
        var robot = ScenarioReader.Check("mole", Options).Robot!;
        Assert.All(robot.Wheels, w => Assert.Equal(("foam", 0.030), (w.Tyre.Name, Math.Round(w.Radius, 9))));

        // its own tyre "soft" sits on no wheel now
        Assert.Empty(ScenarioReader.Check("mole", Options).Problems);
    }

    [Fact]
    public void A_robots_own_tyre_goes_before_one_of_the_garage()
    {
        File.AppendAllText(Path.Combine(_folder, "garage.toml"), "\n[[tyre]]\nname = \"soft\"\nshelf = \"printed PLA\"\nwidth = \"20 mm\"\ntread_thickness = \"5 mm\"\n");
        Assert.Equal(1.0, ScenarioReader.Check("own", Options).Robot!.Wheels[0].Tyre.StaticFriction);
    }

    [Fact]
    public void What_is_set_anew_may_name_a_tyre_of_the_garage() =>
        Assert.All(ScenarioReader.Check("own", Options with { Set = [("wheel.*.tyre", "foam")] }).Robot!.Wheels, w => Assert.Equal("foam", w.Tyre.Name));

    [Fact]
    public void A_file_goes_before_a_name()
    {
        string here = Path.Combine(_folder, "robots", "own.toml");
        Assert.Equal("mole", ScenarioReader.Check(here, Options).Robot!.Name);
        Assert.Contains("neither a file nor a robot of the garage", Assert.Single(ScenarioReader.Check("owm", Options).Problems).Message, StringComparison.Ordinal);
        Assert.StartsWith("did you mean \"own\"?", ScenarioReader.Check("owm", Options).Problems[0].Help, StringComparison.Ordinal);
    }

    [Fact]
    public void Two_names_meet_in_a_plain_shove()
    {
        var read = ScenarioReader.Read("mole", Options with { Opponent = "wombat" });
        Assert.DoesNotContain(read.Problems, p => p.Severity == Severity.Error);
        Assert.Equal(("mole", "wombat"), (read.Scenario!.Robot.Name, read.Scenario.Opponent!.Robot.Name));
        Assert.Equal(0.025, read.Scenario.Opponent.Robot.Wheels[0].Radius, 9);
        Assert.Equal(1.4, read.Scenario.Opponent.Robot.Chassis.Mass, 9);
    }

    // The tolerances of a glance are as wide as the table in the documents says, and a stated one stands.
    [Theory]
    [InlineData("wombat", 0.14)]
    [InlineData("exactly", 0.014)]
    public void A_glance_is_drawn_widely(string rival, double off)
    {
        var read = Drawing.DrawableScenario.OfPair("mole", rival, null, Options);
        var mass = Assert.Single(read.Scenario!.Values, v => v.Key.Contains("chassis.mass", StringComparison.Ordinal) && v.Key.Contains("opponent", StringComparison.Ordinal));
        Assert.Equal(off, mass.Tolerance, 6);
    }

    [Fact]
    public void A_scenario_takes_floor_and_robots_of_the_garage()
    {
        Directory.CreateDirectory(Path.Combine(_folder, "shoves"));
        string file = Path.Combine(_folder, "shoves", "final.toml");
        File.WriteAllText(file, "robot = \"../robots/own.toml\"\n[floor]\nshelf = \"board\"\n[manoeuvre]\nkind = \"shove\"\n[opponent]\nrobot = \"wombat\"\n");
        var read = ScenarioReader.Read(file, Options);
        Assert.DoesNotContain(read.Problems, p => p.Severity == Severity.Error);
        Assert.Equal(0.7, read.Scenario!.Floor.FrictionScale);

        // outside a garage the same way leads out of the folder
        File.Delete(Path.Combine(_folder, "garage.toml"));
        Assert.Contains(ScenarioReader.Read(file, Options).Problems, p => p.Message.Contains("leaves the scenario's folder", StringComparison.Ordinal));
    }

    [Fact]
    public void What_lies_outside_the_garage_stays_outside()
    {
        string outside = Path.Combine(Path.GetTempPath(), Path.GetFileName(_folder) + "-outside.toml");
        File.WriteAllText(outside, "[chassis]\n");
        try
        {
            string file = Path.Combine(_folder, "final.toml");
            File.WriteAllText(file, $"robot = \"../{Path.GetFileName(outside)}\"\n[manoeuvre]\nkind = \"shove\"\n");
            Assert.Contains(ScenarioReader.Read(file, Options).Problems, p => p.Message.Contains("leaves the scenario's folder", StringComparison.Ordinal));
        }
        finally
        {
            File.Delete(outside);
        }
    }

    [Fact]
    public void Everything_is_listed_with_what_it_lacks()
    {
        File.WriteAllText(Path.Combine(_folder, "robots", "broken.toml"), "[chassis]\nmass = \"1 kg\"\n");
        File.WriteAllText(Path.Combine(_folder, "readings.csv"), "tyre,state,load_n,peak_n\nFoam,wiped,13.3,12\n");
        GarageContents g = GarageReader.Read(GarageFolder.Of(_folder)!);
        Assert.Empty(g.Problems);
        Assert.Equal(["broken!", "mole", "own"], g.Robots.Select(r => r.Name + (r.IsUnusable ? "!" : "")));
        Assert.Equal([("foam", 1, ""), ("bare", 0, "its cover: width, tread_thickness, and shelf or material, shore_a, rebound; a measured pull")], g.Tyres.Select(t => (t.Name, t.Pulls!.Value, string.Join("; ", t.Lacks))));
        Assert.Equal(["guessed: tyres, top speed", "guessed: wheels, motors, tyres, top speed"], g.Rivals.Select(r => string.Join("; ", r.Lacks)));
        Assert.Equal("friction times 0.7", Assert.Single(g.Floors).About);
    }

    [Fact]
    public void Four_wheels_are_the_default_of_a_rival() => Assert.Equal(4, ScenarioReader.Read("mole", Options with { Opponent = "wombat" }).Scenario!.Opponent!.Robot.Wheels.Count);

    [Theory]
    [InlineData("mass = \"1.4 kg\"\n", "wheels = 3\nmass = \"1.4 kg\"\n", "3 driven wheels")]
    [InlineData("motor = \"25 mm\"", "motor = \"9 mm\"", "there is no motor")]
    [InlineData("motor = \"25 mm\"", "motors = \"9 mm\"", "unknown key")]
    public void What_is_wrong_with_a_rival_is_told(string old, string by, string message)
    {
        File.WriteAllText(Path.Combine(_folder, "garage.toml"), Garage.Replace("about 1.4 kg", "1.4 kg", StringComparison.Ordinal).Replace(old, by, StringComparison.Ordinal));
        Assert.Contains(ScenarioReader.Read("mole", Options with { Opponent = "wombat" }).Problems, p => p.Message.Contains(message, StringComparison.Ordinal));
    }
}
