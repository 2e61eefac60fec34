using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>A file given where another kind belongs: one complaint in its first line, however it is read.</summary>
public class FileNatureTests
{
    private const string Tyre = "[[tyre]]\nname = \"foam\"\nstatic_friction = 1.0\n";

    [Fact]
    public void A_robot_file_is_no_scenario_for_any_reader()
    {
        using var files = new SmallFiles();
        Expect(ScenarioReader.Read(files.RobotPath), "this is a robot file, not a scenario", "robot = \"shrew.toml\"");
        Expect(DrawableScenario.Open(files.RobotPath).Read, "this is a robot file, not a scenario", "robot = \"shrew.toml\"");
        Expect(DrawableScenario.OfPair(files.RobotPath, files.RobotPath, files.RobotPath).Read, "this is a robot file, not a scenario", "pushsim new");
    }

    [Fact]
    public void A_scenario_is_no_robot_file()
    {
        using var files = new SmallFiles();
        Expect(DrawableScenario.OfPair(files.ScenarioPath, files.RobotPath).Read, "this is a scenario, not a robot file", "this scenario's is \"shrew.toml\"");
        File.WriteAllText(files.ScenarioPath, SmallFiles.With(SmallFiles.Scenario, "shrew.toml", "move.toml"));
        Expect(ScenarioReader.Read(files.ScenarioPath), "this is a scenario, not a robot file", "name the robot's own file");
    }

    [Theory]
    [InlineData(Tyre, "this is only a part of a robot file (tyre)", "include = [\"move.toml\"]")]
    [InlineData("[battery]\ncells = 3\n" + Tyre, "this is only a part of a robot file (battery, tyre)", "include")]
    [InlineData("[floor]\nfriction = 1.0\n", "this is only a part of a scenario file (floor)", "include")]
    [InlineData("time [s],force [N]\n0,0\n0.1,3\n", "no line of it has the form key = value", "pushsim fit")]
    [InlineData("time,force\n0,0\n0.1,3\n", "no line of it has the form key = value", "[measured]")]
    public void Parts_and_tables_draw_one_complaint(string text, string message, string help)
    {
        using var files = new SmallFiles(scenario: text);
        Expect(ScenarioReader.Read(files.ScenarioPath), message, help);
        Expect(ScenarioReader.Check(files.ScenarioPath), message, help);
        Expect(DrawableScenario.Open(files.ScenarioPath).Read, message, help);
        Expect(DrawableScenario.OfPair(files.ScenarioPath, files.RobotPath).Read, message, help);
    }

    // what marks a robot file may stand in what it includes: here the chassis, or all but the battery
    [Theory]
    [InlineData("[chassis]", "[[tyre]]")]
    [InlineData("[chassis]", "[battery]")]
    public void A_robot_whose_chassis_comes_by_include_is_a_robot_file(string from, string to)
    {
        int first = SmallFiles.Robot.IndexOf(from, StringComparison.Ordinal);
        int next = SmallFiles.Robot.IndexOf(to, StringComparison.Ordinal);
        using var files = new SmallFiles(robot: "include = [\"body.toml\"]\n" + SmallFiles.Robot[..first] + SmallFiles.Robot[next..]);
        File.WriteAllText(Path.Combine(files.Folder, "body.toml"), SmallFiles.Robot[first..next]);
        ReadResult[] good = [ScenarioReader.Check(files.RobotPath), ScenarioReader.Check(files.ScenarioPath), ScenarioReader.Read(files.ScenarioPath), DrawableScenario.Open(files.ScenarioPath).Read];
        Assert.All(good, r => Assert.Empty(r.Problems));
        Assert.All(good, r => Assert.Equal(0.8, (r.Robot ?? r.Scenario!.Robot).Chassis.Mass));
        Expect(ScenarioReader.Read(files.RobotPath), "this is a robot file, not a scenario", "robot = \"shrew.toml\"");
    }

    [Fact]
    public void A_log_with_an_equals_sign_in_its_head_is_known_by_its_name()
    {
        using var files = new SmallFiles();
        string log = Path.Combine(files.Folder, "log.csv");
        File.WriteAllText(log, "# rate = 80 Hz\ntime [s],force [N]\n0,0\n0.1,3\n");
        Expect(ScenarioReader.Check(log), "but a table or log", "pushsim fit");
    }

    [Theory]
    [InlineData("robot = \"shrew.toml\"", "robto = \"shrew.toml\"")]
    [InlineData("[manoeuvre]", "[maneuver]")]
    [InlineData("question = ", "asked = ")]
    public void A_scenario_with_one_mark_missing_is_still_judged_key_by_key(string old, string by)
    {
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, old, by));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Contains(result.Problems, p => p.Message.StartsWith("unknown key", StringComparison.Ordinal));
    }

    private static void Expect(ReadResult read, string message, string help)
    {
        Problem problem = Assert.Single(read.Problems);
        Assert.Equal(1, problem.Line);
        Assert.Contains(message, problem.Message);
        Assert.Contains(help, problem.Help);
        Assert.Null(read.Scenario);
        Assert.Null(read.Robot);
    }
}
