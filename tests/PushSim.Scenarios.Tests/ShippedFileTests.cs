using System.Globalization;
using System.Runtime.CompilerServices;
using PushSim.Powertrain;
using PushSim.Scenarios.Keys;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Scenes;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

public class ShippedFileTests
{
    public static TheoryData<string> Scenarios => [.. Directory.GetFiles(Folder(), "*.toml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    public static TheoryData<string> Robots => [.. Directory.GetFiles(Path.Combine(Folder(), "robots"), "*.toml").Select(f => Path.GetFileName(f)).Order(StringComparer.Ordinal)];

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void A_shipped_scenario_has_no_complaint(string file)
    {
        ReadResult result = ScenarioReader.Read(Path.Combine(Folder(), file));
        Assert.Empty(result.Problems);
        ScenarioSettings s = Assert.IsType<ScenarioSettings>(result.Scenario);
        Assert.EndsWith("?", s.Question);
        Assert.Equal(Path.GetFileNameWithoutExtension(file), s.Name);
        Assert.Contains("invented", File.ReadAllText(Path.Combine(Folder(), file)));
    }

    [Theory]
    [MemberData(nameof(Robots))]
    public void A_shipped_robot_has_no_complaint(string file)
    {
        ReadResult result = ScenarioReader.Check(Path.Combine(Folder(), "robots", file));
        Assert.Empty(result.Problems);
        Assert.NotNull(result.Robot);
        Assert.Contains("invented", File.ReadAllText(Path.Combine(Folder(), "robots", file)));
    }

    [Fact]
    public void All_nine_demo_scenarios_are_there() =>
        Assert.Superset(
            new HashSet<string> { "launch-soft.toml", "launch-hard.toml", "brake.toml", "reversal.toml", "pull-test.toml", "drag-test.toml", "spot-turn.toml", "arc.toml", "tilted-board.toml" },
            new HashSet<string>(Scenarios.Select(s => s.Data)));

    // the file's texts beside what they must become in SI, computed here by hand
    [Fact]
    public void The_pull_test_arrives_in_si()
    {
        ScenarioSettings s = Shipped("pull-test.toml");
        Assert.Equal(1.36, s.Robot.Chassis.Mass, 1e-12);
        Assert.Equal(-0.003, s.Robot.Chassis.CentreOfMassX, 1e-12);
        Assert.Equal(0.027, s.Robot.Wheels[0].Radius, 1e-12);
        Assert.Equal(0.5 * 0.026 * 0.027 * 0.027, s.Robot.Wheels[0].SpinInertia, 1e-15);
        Assert.Equal(1.0 / 0.012, s.Robot.Wheels[0].Tyre.RollingRenewal, 1e-9);
        Assert.Equal(200e-9 / 400.0, s.Robot.Wheels[0].Tyre.SpecificWear, 1e-18);
        Assert.Equal(22.0, s.Robot.Drives[0].Motors[0].Ratio);
        Assert.Equal(30.0 / Math.PI / 1365.0, s.Robot.Drives[0].Motors[0].Motor.TorqueConstant, 1e-12);
        Assert.Equal([(0, 0), (2, 0)], s.Robot.Controllers[0].Motors);
        Assert.Equal(Wiring.Parallel, s.Robot.Controllers[0].Wiring);
        Assert.Equal(1620.0, s.Robot.Battery!.Capacity, 1e-9);
        Assert.Equal(21, s.Robot.Battery.CellVoltage.Count);
        Assert.Equal((1.0, 4.20), s.Robot.Battery.CellVoltage[20]);
        Assert.Equal(-0.385, s.Tether!.AnchorX, 1e-12);
        Assert.Equal(5000.0, s.Tether.Stiffness, 1e-9);
        Assert.Equal(0.01, s.Tether.Cell!.FilterTime, 1e-12);
        Assert.Equal([new CommandPoint(0.1, 0.0, 0.0), new CommandPoint(0.6, 0.6, 0.0, Ramp: true)], s.Manoeuvre.Commands);
    }

    // a bare motor's no-load current holds no gear loss, tau0 = Kt I0; through a gearbox tau0 = eta Kt I0
    [Theory]
    [InlineData("launch-soft.toml", 1.0, 0.12)]
    [InlineData("launch-hard.toml", 0.75, 0.25)]
    public void Gear_loss_counts_once_in_the_no_load_friction(string file, double efficiency, double noLoadCurrent)
    {
        MotorSettings m = Shipped(file).Robot.Drives[0].Motors[0].Motor;
        Assert.Equal(efficiency * m.TorqueConstant * noLoadCurrent, m.FrictionTorque, 1e-15);
    }

    [Fact]
    public void A_reversal_is_two_commands()
    {
        ManoeuvreSettings m = Shipped("reversal.toml").Manoeuvre;
        Assert.Equal([new CommandPoint(0.1, 1.0, 0.0), new CommandPoint(1.2, -1.0, 0.0)], m.Commands);
    }

    [Fact]
    public void A_brake_ends_at_zero_command() =>
        Assert.Equal(new CommandPoint(1.2, 0.0, 0.0), Shipped("brake.toml").Manoeuvre.Commands[^1]);

    [Fact]
    public void Tolerances_reach_the_inputs_used()
    {
        ReadResult result = ScenarioReader.Read(Path.Combine(Folder(), "launch-soft.toml"));
        InputRow row = Assert.Single(result.Inputs, i => i.Key == "tyre.soft.static_friction");
        Assert.Equal((1.0, 0.1, ""), (row.Value!.Value, row.Tolerance, row.Unit));
        row = Assert.Single(result.Inputs, i => i.Key == "motor.gearmotor.resistance");
        Assert.Equal(0.16, row.Tolerance, 1e-12);
        Assert.Equal("ohm", row.Unit);
    }

    [Theory]
    [InlineData("de-DE")]
    [InlineData("tr-TR")]
    public void The_country_set_in_the_system_changes_nothing(string culture)
    {
        ReadResult expected = ScenarioReader.Read(Path.Combine(Folder(), "launch-hard.toml"));
        CultureInfo before = CultureInfo.CurrentCulture;
        try
        {
            CultureInfo.CurrentCulture = CultureInfo.GetCultureInfo(culture);
            ReadResult actual = ScenarioReader.Read(Path.Combine(Folder(), "launch-hard.toml"));
            Assert.Equal(expected.Inputs, actual.Inputs);
            Assert.Equal(expected.Notes, actual.Notes);
            using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, "reverse_at = \"1 s\"", "reverse_at = \"5.5 s\""));
            Assert.Contains("5.5 s", Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems).Message);
        }
        finally
        {
            CultureInfo.CurrentCulture = before;
        }
    }

    [Fact]
    public void The_small_files_of_the_tests_are_right()
    {
        using var files = new SmallFiles();
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Empty(result.Problems);
        Assert.NotNull(result.Scenario);
    }

    [Fact]
    public void A_robot_file_is_told_from_a_scenario()
    {
        string path = Path.Combine(Folder(), "robots", "mole.toml");
        Assert.Contains("this is a robot file", Assert.Single(ScenarioReader.Read(path).Problems).Message);
        Assert.NotNull(ScenarioReader.Check(path).Robot);
    }

    [Fact]
    public void A_timeline_keeps_its_points()
    {
        string scenario = SmallFiles.Scenario[..SmallFiles.Scenario.IndexOf("[manoeuvre]", StringComparison.Ordinal)]
            + "[manoeuvre]\nkind = \"timeline\"\nend = \"2 s\"\npoints = [{ time = \"0 s\", throttle = 0.5 }, { time = \"1 s\", turn = -0.3, ramp = true }]\n";
        using var files = new SmallFiles(scenario: scenario);
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Empty(result.Problems);
        Assert.Equal([new CommandPoint(0, 0.5, 0), new CommandPoint(1, 0, -0.3, true)], result.Scenario!.Manoeuvre.Commands);
    }

    [Fact]
    public void Every_key_is_documented_and_known_once()
    {
        Assert.All(KeyTable.All, k => Assert.EndsWith(".", k.Meaning));
        Assert.Equal(KeyTable.All.Count, KeyTable.All.Select(k => (k.Section, k.Name)).Distinct().Count());
        Assert.All(KeyTable.All.Where(k => k.Kind is not KeyKind.Table and not KeyKind.Tables), k => Assert.NotEqual("", k.Example));
    }

    private static ScenarioSettings Shipped(string file) =>
        ScenarioReader.Read(Path.Combine(Folder(), file)).Scenario ?? throw new InvalidOperationException($"{file} has errors");

    private static string Folder([CallerFilePath] string here = "") =>
        Path.GetFullPath(Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "scenarios"));
}
