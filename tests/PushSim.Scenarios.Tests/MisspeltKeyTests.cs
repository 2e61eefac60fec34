using System.Text.RegularExpressions;
using PushSim.Scenarios.Scenes;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>One slip of a key or a header is one complaint, not another for everything that it leaves missing (common practice, no source).</summary>
public partial class MisspeltKeyTests
{
    public static TheoryData<string, int> Slips { get; } = AllSlips();

    [Theory]
    [MemberData(nameof(Slips))]
    public void A_misspelt_key_is_complained_about_once(string file, int line)
    {
        bool isRobot = file == "robot";
        string[] lines = (isRobot ? SmallFiles.Robot : SmallFiles.Scenario).Split('\n');
        lines[line - 1] = Key().Replace(lines[line - 1], m => m.Value + m.Value[^1]);
        string text = string.Join('\n', lines);
        using var files = new SmallFiles(isRobot ? text : SmallFiles.Robot, isRobot ? SmallFiles.Scenario : text);
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        string all = string.Join("\n", result.Problems);
        Assert.True(result.Problems.Count == 1, lines[line - 1] + "\n" + all);
        Assert.Equal(line, result.Problems[0].Line);
        Assert.StartsWith("unknown key", result.Problems[0].Message, StringComparison.Ordinal);
    }

    [Fact]
    public void A_key_that_is_missing_beside_a_slip_of_another_is_still_missed()
    {
        using var files = new SmallFiles(SmallFiles.With(SmallFiles.With(SmallFiles.Robot, "mass = \"800 g\"", "maas = \"800 g\""), "length = \"120 mm\"\n", ""));
        Assert.Equal(["missing \"length\" in chassis", "unknown key \"maas\" in [chassis]"], ScenarioReader.Read(files.ScenarioPath).Problems.Select(p => p.Message));
    }

    [Fact]
    public void A_part_that_is_not_on_the_shelf_is_complained_about_once()
    {
        string robot = SmallFiles.Robot;
        foreach (string line in new[] { "static_friction = \"1.0 ± 0.1\"\n", "kinetic_friction = 0.8\n", "body_stiffness = \"2 N/mm\"\n", "body_damping = \"2 N s/m\"\n", "tread_mass = \"4 g\"\n" })
        {
            robot = SmallFiles.With(robot, line, "");
        }

        using var files = new SmallFiles(SmallFiles.With(robot, "vertical_stiffness = \"8 N/mm\"", "shelf = \"chewing gum\""));
        Assert.Equal("there is no \"chewing gum\" on the shelf of tyres", Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems).Message);
    }

    private static TheoryData<string, int> AllSlips()
    {
        var slips = new TheoryData<string, int>();
        foreach ((string file, string text) in new[] { ("robot", SmallFiles.Robot), ("scenario", SmallFiles.Scenario) })
        {
            string[] lines = text.Split('\n');
            for (int i = 0; i < lines.Length; i++)
            {
                if (Key().IsMatch(lines[i]))
                {
                    slips.Add(file, i + 1);
                }
            }
        }

        return slips;
    }

    [GeneratedRegex(@"(?<=^\[{0,2})[a-z_]+(?=\]|\s=)")]
    private static partial Regex Key();
}
