using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Scenes;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>One slip of the pen is one complaint, and reading goes on at the next line; slips and complaints are our own, from memory of what builders mistype.</summary>
public class MendedLineTests
{
    [Theory]
    [InlineData("name = \"shrew\"", "name = \"shrew", "a quote is missing")]
    [InlineData("name = \"shrew\"", "name = shrew\"", "a quote is missing")]
    [InlineData("name = \"shrew\"", "name = shrew", "a text goes in quotes")]
    [InlineData("name = \"shrew\"", "name \"shrew\"", "there is no equals sign")]
    [InlineData("name = \"shrew\"", "name: \"shrew\"", "there is no equals sign")]
    [InlineData("name = \"shrew\"", "name = \"\"\"shrew\"", "three quotes open a text")]
    [InlineData("name = \"shrew\"", "name = “shrew”", "curly quotes")]
    [InlineData("name = \"shrew\"", "name =", "there is no value")]
    [InlineData("mass = \"800 g\"", "mass = 800 g", "a number with a unit goes in quotes")]
    [InlineData("[chassis]", "[chassis", "the brackets around the name of a table")]
    [InlineData("[chassis]", "chassis]", "there is no equals sign")]
    public void A_slip_is_one_complaint_in_words_of_our_own(string right, string wrong, string message)
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, right, wrong));
        ReadResult result = ScenarioReader.Check(files.RobotPath);
        Assert.StartsWith(message, result.Problems[0].Message, StringComparison.Ordinal);
        Assert.All(result.Problems, p => Assert.DoesNotContain("token", p.Message, StringComparison.Ordinal));
        if (wrong != "chassis]")
        {
            Assert.Single(result.Problems);
        }
    }

    [Fact]
    public void The_other_mistakes_of_the_file_come_at_once()
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, "name = \"shrew\"", "name = \"shrew\nfoo = 1"));
        Assert.Equal(["a quote is missing: a text stands between two of them", "unknown key \"foo\" in the top level of a robot file"], ScenarioReader.Check(files.RobotPath).Problems.Select(p => p.Message));
    }

    [Theory]
    [InlineData("tyre.soft.kinetic_friction", "sliding friction of mole's soft tyre")]
    [InlineData("opponent.tyre.printed.static_friction", "grip before it slides of badger's printed tyre")]
    [InlineData("motor.gearmotor.resistance", "winding resistance of mole's gearmotor")]
    [InlineData("drive.*.gear_ratio", "gear ratio of mole's drives")]
    [InlineData("chassis.mass", "mass of mole")]
    [InlineData("floor.dust", "dust of the floor")]
    [InlineData("opponent.heading", "start heading of badger")]
    [InlineData("shove.offset", "offset of the noses")]
    public void A_path_has_plain_words(string path, string label) => Assert.Equal(label, KeyLabel.Of(path, "mole", "badger"));

    [Fact]
    public void Every_key_has_a_short_label() => Assert.All(KeyTable.All, k => Assert.InRange(k.Label.Length, 1, 45));

    [Fact]
    public void Every_label_of_its_own_is_that_of_a_key() => Assert.All(KeyLabels.All, l => Assert.Contains(KeyTable.All, k => $"{k.Section}.{k.Name}" == l));
}
