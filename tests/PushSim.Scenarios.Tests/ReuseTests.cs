using PushSim.Analysis.Chance;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>One robot in many scenarios: single values set anew, included files, opponents, spreads.</summary>
public class ReuseTests
{
    [Theory]
    [InlineData("[override]\n\"chassis.mass\" = \"900 g\"\n")]
    [InlineData("[override]\nchassis.mass = \"900 g\"\n")]
    [InlineData("[override.chassis]\nmass = \"0.9 kg\"\n")]
    [InlineData("override = { chassis.mass = \"900 g\" }\n")]
    public void A_value_is_set_anew_however_its_path_is_written(string set)
    {
        ScenarioSettings s = Read(set);
        Assert.Equal(0.9, s.Robot.Chassis.Mass, 1e-12);
    }

    [Fact]
    public void Named_parts_and_inner_tables_are_reached()
    {
        ScenarioSettings s = Read("[override]\n\"tyre.foam.static_friction\" = 1.3\n\"chassis.centre_of_mass.height\" = \"25 mm\"\n\"wheel.ball front.x\" = \"45 mm\"\n\"drive.port.motors\" = []\n\"controller.a.drives\" = []\n");
        Assert.All(s.Robot.Wheels, w => Assert.Equal(1.3, w.Tyre.StaticFriction));
        Assert.Equal(0.025, s.Robot.Chassis.CentreOfMassHeight, 1e-12);
        Assert.Contains(s.Robot.Wheels, w => Math.Abs(w.X - 0.045) < 1e-12);
        Assert.Empty(s.Robot.Drives[0].Motors);
    }

    [Fact]
    public void A_table_that_the_file_leaves_out_can_be_set()
    {
        ScenarioSettings s = Read("[override]\n\"chassis.downforce.force\" = \"6 N\"\n\"outline.clearance\" = \"3 mm\"\n");
        Assert.Equal(6.0, s.Robot.Chassis.Downforce);
        Assert.All(StandingHeights.AsMeasured(s.Robot).OutlineOrBox.Faces, f => Assert.Equal(0.003, f.LowerEdge, 1e-12));
    }

    [Theory]
    [InlineData("")]
    [InlineData("[floor]\ndust = 0.5\n")]
    [InlineData("[floor]\nshelf = \"rubber mat\"\n")]
    public void A_floor_of_the_shelf_set_by_the_caller_counts(string floor)
    {
        using var files = new SmallFiles(scenario: WithFloor(floor));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath, new ReadOptions { Set = [("floor.shelf", "bare plywood")] });
        Assert.Equal(0.85, Assert.IsType<ScenarioSettings>(result.Scenario).Floor.FrictionScale);
    }

    [Theory]
    [InlineData("motor.small.gear_ratio", "", 1)]
    [InlineData("motor.*.gear_ratio", "", 1)]
    [InlineData("drive.*.gear_ratio", "", 0)]
    [InlineData("motor.small.gear_ratio", "speed_constant = \"1250 rpm/V\"\n", 0)]
    public void Another_ratio_of_a_motor_known_by_its_output_shaft_is_warned_of(string key, string constant, int warnings)
    {
        using var files = new SmallFiles(SmallFiles.With(SmallFiles.Robot, "stall_current = \"3 A\"\n", "stall_current = \"3 A\"\n" + constant));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath, new ReadOptions { Set = [(key, "15")] });
        Assert.True(result.Scenario is not null, string.Join("; ", result.Problems));
        Assert.Equal(warnings, result.Problems.Count(p => p.Message.Contains("makes another motor, not another gear", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_key_of_another_part_set_by_the_caller_is_complained_about_beside_a_shelf()
    {
        using var files = new SmallFiles(scenario: WithFloor("[floor]\nshelf = \"rubber mat\"\n"));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath, new ReadOptions { Set = [("floor.stall_torque", "1 N m")] });
        Assert.Contains(result.Problems, p => p.Message.Contains("no value \"floor.stall_torque\"", StringComparison.Ordinal));
    }

    [Fact]
    public void The_shift_of_a_measured_log_can_be_set_by_the_caller()
    {
        string tether = "[tether]\nhook = { x = \"-60 mm\", height = \"20 mm\" }\nanchor = { x = \"-300 mm\", height = \"20 mm\" }\nstiffness = \"5 N/mm\"\n[measured]\nfile = \"log.csv\"\n";
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, "[manoeuvre]", tether + "[manoeuvre]"));
        IEnumerable<string> rows = Enumerable.Range(0, 200).Select(i => FormattableString.Invariant($"{0.01 * i},{(i < 60 ? 0.001 * (i % 3) : Math.Min(4.0, 0.1 * (i - 60)) + (0.001 * (i % 3)))}"));
        File.WriteAllText(Path.Combine(files.Folder, "log.csv"), "time [s],force [N]\n" + string.Join('\n', rows) + "\n");
        ReadResult result = ScenarioReader.Read(files.ScenarioPath, new ReadOptions { Set = [("measured.shift", "0.4 s")] });
        Assert.True(result.Scenario is not null, string.Join("; ", result.Problems));
        Assert.Equal(0.4, result.Scenario.Measured!.Shift);
    }

    [Fact]
    public void Blanks_at_the_ends_of_a_name_count_nothing()
    {
        using var files = new SmallFiles(SmallFiles.With(SmallFiles.With(SmallFiles.Robot, "name = \"small\"", "name = \"small \""), "motors = [\"small", "motors = [\" small"));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.True(result.Scenario is not null, string.Join("; ", result.Problems));
        Assert.Equal("small", result.Scenario.Robot.Drives[0].Motors[0].Motor.Name);
    }

    [Fact]
    public void A_value_set_anew_is_listed_with_its_own_place()
    {
        using var files = new SmallFiles(scenario: SmallFiles.Scenario + "[override]\n\"chassis.mass\" = \"900 g ± 10 g uniform\"\n");
        InputRow row = Assert.Single(ScenarioReader.Read(files.ScenarioPath).Inputs, i => i.Key == "chassis.mass");
        Assert.Equal(20, row.Line);
        Assert.Equal(0.01, row.Tolerance, 1e-12);
        Assert.Equal(DrawShape.Uniform, row.Spread);
    }

    [Theory]
    [InlineData("0.85 ± 0.05", DrawShape.Normal)]
    [InlineData("0.85 ± 0.05 normal", DrawShape.Normal)]
    [InlineData("0.85 +/- 6 % uniform", DrawShape.Uniform)]
    [InlineData("0.85 ± 0.05  triangular ", DrawShape.Triangular)]
    [InlineData("0.85 ×/ 1.5", DrawShape.Factor)]
    [InlineData("0.85 x/ 1.5", DrawShape.Factor)]
    public void A_word_behind_the_tolerance_names_its_form(string text, DrawShape expected)
    {
        using var files = new SmallFiles(SmallFiles.With(SmallFiles.Robot, "kinetic_friction = 0.8", $"kinetic_friction = \"{text}\""));
        Assert.Equal(expected, Assert.Single(ScenarioReader.Read(files.ScenarioPath).Inputs, i => i.Key == "tyre.foam.kinetic_friction").Spread);
    }

    [Fact]
    public void Included_tables_are_added_and_own_values_stand()
    {
        int tyre = SmallFiles.Robot.IndexOf("[[tyre]]", StringComparison.Ordinal);
        int wheel = SmallFiles.Robot.IndexOf("[[wheel]]", StringComparison.Ordinal);
        string robot = "include = [\"parts/tyres.toml\"]\n" + SmallFiles.Robot[..tyre] + SmallFiles.Robot[wheel..];
        using var files = new SmallFiles(robot);
        Directory.CreateDirectory(Path.Combine(files.Folder, "parts"));
        File.WriteAllText(Path.Combine(files.Folder, "parts", "tyres.toml"), SmallFiles.Robot[tyre..wheel] + "[battery]\ncells = 6\ncut_off = \"9 V\"\n");
        ScenarioSettings s = Assert.IsType<ScenarioSettings>(ScenarioReader.Read(files.ScenarioPath).Scenario);
        Assert.Equal("foam", s.Robot.Wheels[0].Tyre.Name);
        Assert.Equal(3, s.Robot.Battery!.Cells);
        Assert.Equal(9.0, s.Robot.Battery.CutOffVoltage);
    }

    [Fact]
    public void An_opponent_has_its_own_values_and_a_name_of_its_own()
    {
        string text = "question = \"Who?\"\nrobot = \"shrew.toml\"\n[opponent]\nrobot = \"shrew.toml\"\nreaction_delay = \"0.2 s\"\nheading = \"5 deg\"\n[opponent.override]\n\"chassis.mass\" = \"700 g\"\n"
            + "[manoeuvre]\nkind = \"shove\"\nheading_hold = \"2 1/rad\"\n[shove]\ngap = \"20 mm\"\noffset = \"10 mm\"\n";
        using var files = new SmallFiles(scenario: text);
        ScenarioSettings s = Assert.IsType<ScenarioSettings>(ScenarioReader.Read(files.ScenarioPath).Scenario);
        Assert.Equal(("shrew", 0.8), (s.Robot.Name, s.Robot.Chassis.Mass));
        Assert.Equal("shrew B", s.Opponent!.Robot.Name);
        Assert.Equal(0.7, s.Opponent.Robot.Chassis.Mass, 1e-12);
        Assert.Equal(3.0, s.Manoeuvre.EndTime);
        Assert.Equal(2.0, s.Manoeuvre.Driver.HeadingHold);
        Assert.Equal(0.2, s.Opponent.Manoeuvre.Driver.ReactionDelay);
        Assert.Equal(0.0, s.Opponent.Manoeuvre.Driver.HeadingHold);
        Assert.Equal(Math.PI / 36.0, s.Opponent.Manoeuvre.InitialHeading, 1e-12);
        Assert.Equal((0.02, 0.01), (s.Shove.Gap, s.Shove.Offset));
    }

    [Fact]
    public void A_file_of_a_hundred_megabytes_is_refused_unread()
    {
        using var files = new SmallFiles();
        using (FileStream stream = File.OpenWrite(files.ScenarioPath))
        {
            stream.SetLength(100 << 20);
        }

        long before = GC.GetTotalAllocatedBytes();
        Assert.Contains("larger than", Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems).Message);
        Assert.InRange(GC.GetTotalAllocatedBytes() - before, 0, 20 << 20);
    }

    private static string WithFloor(string floor) =>
        SmallFiles.Scenario[..SmallFiles.Scenario.IndexOf("[floor]", StringComparison.Ordinal)] + floor + SmallFiles.Scenario[SmallFiles.Scenario.IndexOf("[manoeuvre]", StringComparison.Ordinal)..];

    private static ScenarioSettings Read(string more)
    {
        int tables = SmallFiles.Scenario.IndexOf("[floor]", StringComparison.Ordinal);
        using var files = new SmallFiles(scenario: SmallFiles.Scenario[..tables] + more + SmallFiles.Scenario[tables..]);
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.True(result.Scenario is not null, string.Join("\n", result.Problems));
        return result.Scenario!;
    }
}
