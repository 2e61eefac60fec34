using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Scenarios.Toml;
using PushSim.Scenarios.Units;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

public class KeyTableTests
{
    public static TheoryData<string> Paths => [.. KeySearch.All.Select(m => m.Path)];

    // a key of another table, as which it would be told without the word for the battery
    [Fact]
    public void A_batterys_current_limit_names_the_controllers()
    {
        Assert.NotNull(KeyTable.Find("controller", "current_limit"));
        Assert.Contains("stands in [[controller]]", OtherNames.Advice("battery", "current_limit"));
    }

    // each table is one, no name is a key of it, and the key that is named instead is one
    [Theory]
    [InlineData("battery", "c_rating", "resistance")]
    [InlineData("battery", "C-Rating", "shelf")]
    [InlineData("battery", "max_current", "resistance")]
    [InlineData("battery", "current_limit", "resistance")]
    [InlineData("battery", "voltage", "cells")]
    [InlineData("battery", "mAh", "capacity")]
    [InlineData("motor", "Kv", "speed_constant")]
    [InlineData("motor", "Kt", "torque_constant")]
    [InlineData("motor", "rpm", "no_load_speed")]
    [InlineData("wheel", "radius", "diameter")]
    [InlineData("wheel", "weight", "mass")]
    [InlineData("tyre", "mu", "static_friction")]
    [InlineData("tyre", "bristle_damping", "tread_damping")]
    [InlineData("tyre", "plain_bristle", "plain_friction")]
    [InlineData("chassis", "weight", "mass")]
    [InlineData("drive", "ratio", "gear_ratio")]
    [InlineData("motor", "ratio", "gear_ratio")]
    [InlineData("floor", "grip", "friction")]
    public void A_usual_other_name_is_answered_by_the_key(string section, string name, string key)
    {
        Assert.Null(KeyTable.Find(section, name));
        Assert.NotNull(KeyTable.Find(section, key));
        Assert.Contains(key, OtherNames.Advice(section, name));
        Assert.Contains(OtherNames.Find(name), f => f.Section == section);
        Assert.Equal(section, Assert.Single(OtherNames.Find($"{section}.{name}")).Section);
        Assert.Equal(section, Assert.Single(OtherNames.Find($"robot.{section}.{name}")).Section);
        Assert.Null(OtherNames.Advice(section, "no_such_thing"));
    }

    [Fact]
    public void Every_manoeuvre_has_one_word_and_a_row_of_keys_that_the_table_knows()
    {
        Assert.Equal(Enum.GetValues<ManoeuvreKind>(), ManoeuvreWord.All.Select(w => w.Kind));
        Assert.Equal(ManoeuvreWord.All.Length, ManoeuvreWord.All.Select(w => w.Word).Distinct().Count());
        Assert.Equal(ManoeuvreWord.All.Select(w => w.Word), KeyTable.Find("manoeuvre", "kind")!.Choices);
        Assert.All(ManoeuvreWord.All.SelectMany(w => w.Keys), k => Assert.NotNull(KeyTable.Find("manoeuvre", k)));
    }

    [Fact]
    public void Every_table_is_reached_from_a_file()
    {
        string[] reached = [.. Enum.GetValues<FileKind>().SelectMany(KeySection.Of).Select(s => s.Name).Distinct().Order(StringComparer.Ordinal)];
        Assert.Equal(KeyTable.All.Select(k => k.Section).Distinct().Order(StringComparer.Ordinal), reached);
    }

    [Fact]
    public void Every_number_has_a_usual_range_inside_the_allowed_one() =>
        Assert.All(
            RobotKeys.All.Concat(ScenarioKeys.All).Where(k => k.Kind is KeyKind.Quantity or KeyKind.Quantities),
            k => Assert.True(k.Min <= k.UsualMin && k.UsualMin < k.UsualMax && k.UsualMax <= k.Max, $"{k.Section}.{k.Name}: {k.UsualMin} to {k.UsualMax} in {k.Min} to {k.Max}"));

    [Theory]
    [MemberData(nameof(Paths))]
    public void The_example_of_a_number_is_usual(string path)
    {
        KeyDefinition key = KeySearch.Find(path).Single().Key;
        if (key.Kind is not (KeyKind.Quantity or KeyKind.Whole))
        {
            return;
        }

        var context = new ReadContext(new ReadOptions());
        TomlNode node = TomlTree.Parse(context, new SourceFile("example", $"x = {key.Example}\n"))!.Find("x")!.Value;
        double value = node is TomlNumber n ? n.Value : Parse(((TomlText)node).Value, key.Dimension);
        Assert.InRange(value, key.UsualMin, key.UsualMax);
    }

    [Theory]
    [MemberData(nameof(Paths))]
    public void Every_row_says_what_it_takes_and_shows_an_example(string path)
    {
        KeyMatch match = KeySearch.Find(path).Single();
        Assert.EndsWith(".", match.Key.Meaning);
        Assert.NotEmpty(KeyText.Takes(match.Key));
        bool hasDimension = match.Key.Kind is KeyKind.Quantity or KeyKind.Quantities or KeyKind.Curve;
        Assert.Equal(hasDimension, KeyText.UnitFamily(match.Key).Length > 0);
        Assert.NotEmpty(KeyText.Example(match.Key, match.Section).TrimEnd('=', ' '));
    }

    [Fact]
    public void The_key_reference_is_up_to_date() => Generated.Expect("scenarios/KEYS.md", KeyReference.Make());

    [Theory]
    [InlineData("body_stiffness", "robot.tyre.body_stiffness")]
    [InlineData("tyre.body_stiffness", "robot.tyre.body_stiffness")]
    [InlineData("[[Tyre]]", "robot.tyre,robot.wheel.tyre,garage.tyre,garage.rival.tyre")]
    [InlineData("robot.tyre.body-stiffness", "robot.tyre.body_stiffness")]
    [InlineData("gear_ratio", "robot.motor.gear_ratio,robot.drive.gear_ratio")]
    [InlineData("scenario.robot", "scenario.robot")]
    [InlineData("stiffness", "scenario.tether.stiffness,scenario.contact.stiffness")]
    [InlineData("", "")]
    [InlineData(".", "")]
    public void Keys_are_found_by_name(string words, string paths) => Assert.Equal(paths, string.Join(',', KeySearch.Find(words).Select(m => m.Path)));

    [Theory]
    [InlineData("body_stifness", "body_stiffness")]
    [InlineData("tyre.gear_ration", "gear_ratio")]
    [InlineData("tyre_stiffness", "body_stiffness")]
    public void Near_names_are_offered(string words, string near) => Assert.Contains(near, KeySearch.Nearest(words));

    // by hand from the rows' SI bounds
    [Theory]
    [InlineData("chassis.mass", "10 g to 500 kg", "100 g to 20 kg")]
    [InlineData("tyre.breakaway_deflection", "1 um to 20 mm", "20 um to 3 mm")]
    [InlineData("floor.air_temperature", "-40 °C to 80 °C", "0 °C to 40 °C")]
    [InlineData("battery.cells", "1 to 24", "1 to 8")]
    [InlineData("tether.cell.seed", "0 to 2147483647", "")]
    [InlineData("drive.gear_efficiency", "0.05 to 1", "0.3 to 1")]
    [InlineData("tyre.body_stiffness", "10 N/m to 10000 N/mm", "200 N/m to 1000 N/mm")]
    [InlineData("floor.slope_x", "-70 deg to 70 deg", "-35 deg to 35 deg")]
    [InlineData("battery.capacity", "0.2778 mA h to 2778000 mA h", "100 mA h to 10000 mA h")]
    public void Ranges_are_readable(string words, string allowed, string usual)
    {
        KeyDefinition key = KeySearch.Find(words).Single().Key;
        Assert.Equal(allowed, KeyText.Allowed(key));
        Assert.Equal(usual, KeyText.Usual(key));
    }

    [Theory]
    [InlineData("mass = \"800 g\"", "mass = \"54 kg\"", "\"mass\" is 54 kg, which is unusual", "usual: 0.1 kg to 20 kg")]
    [InlineData("body_stiffness = \"2 N/mm\"", "body_stiffness = \"0.05 N/mm\"", "\"body_stiffness\" is 50 N/m, which is unusual", "usual: 200 N/m to 1000 N/mm")]
    [InlineData("rotor_inertia = \"2 g cm2\"", "rotor_inertia = \"900 g cm2\"", "\"rotor_inertia\" is 900 g cm2, which is unusual", "usual: 2 g mm2 to 200 g cm2")]
    [InlineData("diameter = \"50 mm\"", "diameter = \"300 mm\"", "\"diameter\" is 300 mm, which is unusual", "usual: 5 mm to 250 mm")]
    [InlineData("kinetic_friction = 0.8", "kinetic_friction = 0.05", "\"kinetic_friction\" is 0.05, which is unusual", "usual: 0.1 to 1.5")]
    [InlineData("cells = 3", "cells = 12", "\"cells\" is 12, which is unusual", "usual: 1 to 8")]
    public void An_unusual_number_is_warned_of_where_it_stands(string old, string by, string message, string help)
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, old, by));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.NotNull(result.Scenario);
        Problem p = Assert.Single(result.Problems);
        Assert.Equal(Severity.Warning, p.Severity);
        Assert.Contains(message, p.Message);
        Assert.Equal(help, p.Help);
        Assert.Contains(by, p.SourceLine);
    }

    // a tenth of the test sheet's abrasiveness was a default once; it wears twenty times what roads do
    [Fact]
    public void A_floor_more_abrasive_than_any_road_is_warned_of()
    {
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, "friction = 1.0", "friction = 1.0\nabrasiveness = 0.1"));
        Problem p = Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems);
        Assert.Equal(Severity.Warning, p.Severity);
        Assert.Equal("usual: 0 to 0.05", p.Help);
    }

    [Theory]
    [InlineData("mass = \"100 g\"")]
    [InlineData("mass = \"5 kg\"")]
    [InlineData("mass = \"5000 g\"")]
    public void The_ends_of_the_usual_range_are_usual(string mass)
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, "mass = \"800 g\"", mass));
        Assert.Empty(ScenarioReader.Read(files.ScenarioPath).Problems);
    }

    [Theory]
    [InlineData("\"3 cells\"", 3)]
    [InlineData("\"4S\"", 4)]
    [InlineData("\" 2 s \"", 2)]
    [InlineData("\"1 cell\"", 1)]
    [InlineData("\"3 sheep\"", null)]
    [InlineData("\"S\"", null)]
    [InlineData("\"3\"", null)]
    [InlineData("\"3.5 cells\"", null)]
    [InlineData("\"-3S\"", null)]
    [InlineData("\"30S\"", null)]
    [InlineData("\"99999999999999999999S\"", null)]
    public void Cells_may_be_counted_in_words(string text, int? cells)
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, "cells = 3", $"cells = {text}"));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Equal(cells, result.Scenario?.Robot.Battery!.Cells);
        Assert.Equal(cells is null, result.HasErrors);
    }

    private static double Parse(string text, Dimension dimension)
    {
        Assert.True(Quantity.TryParse(text, dimension, out Quantity q, out string message, out _), message);
        return q.Value;
    }
}
