using PushSim.Powertrain;
using PushSim.Scenarios.Estimates;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Shelf;
using PushSim.Scenarios.Sources;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Motors, controllers, cells and floors of the shelf.</summary>
public class PartShelfTests
{
    private const string OwnMotor = """
        voltage = "12 V"
        no_load_speed = "500 rpm"
        no_load_current = "0.1 A"
        stall_current = "3 A"
        gear_ratio = 30
        rotor_inertia = "2 g cm2"
        """;

    private const string DriveEfficiency = "motors = [\"small\"]\ngear_efficiency = \"75 %\"\n";

    public static TheoryData<string, string> Parts
    {
        get
        {
            var all = new TheoryData<string, string>();
            foreach (PartShelf shelf in PartShelf.All.Skip(1))
            {
                foreach (ShelfPart part in shelf.Parts)
                {
                    all.Add(shelf.Section, part.Name);
                }
            }

            return all;
        }
    }

    // A file that takes the part and nothing else of its kind reads without a complaint or a warning of unusual values.
    // J R/Kt^2 of a part over what the estimate takes, 8 ms: 0.7 to 1.3 up to 30 mm, 4.6 of 37 mm, 0.4 to 0.5 without brushes. Computed here
    [Theory]
    [InlineData("12 mm brushed gearmotor", 2.98, 3.40)]
    [InlineData("16 mm brushed gearmotor", 0.71, 0.74)]
    [InlineData("20 mm brushed gearmotor", 0.92, 0.94)]
    [InlineData("25 mm brushed gearmotor", 1.00, 1.02)]
    [InlineData("30 mm brushed gearmotor", 1.03, 1.05)]
    [InlineData("37 mm brushed gearmotor", 4.5, 4.6)]
    [InlineData("28 mm brushless motor with sensors", 0.40, 0.42)]
    public void The_inertia_estimated_for_a_shop_page_is_that_of_the_shelfs_motors(string words, double least, double most)
    {
        ShelfPart[] parts = [.. PartShelf.Motors.Parts.Where(p => p.Name.StartsWith(words, StringComparison.Ordinal))];
        Assert.NotEmpty(parts);
        foreach (ShelfPart p in parts)
        {
            double constant = p.Find("torque_constant")?.Value ?? (1.0 / p.Find("speed_constant")!.Value!.Value);
            var motor = new MotorSettings { Name = "m", TorqueConstant = constant, Resistance = p.Find("resistance")!.Value!.Value };
            Assert.InRange(p.Find("rotor_inertia")!.Value!.Value / MotorFromData.UsualInertia(motor), least, most);
        }
    }

    [Theory]
    [MemberData(nameof(Parts))]
    public void A_file_can_refer_to_it_and_every_number_says_where_it_comes_from(string section, string name)
    {
        PartShelf shelf = PartShelf.All.Single(s => s.Section == section);
        ShelfPart part = shelf.Find(name)!;
        Assert.EndsWith(".", part.About);
        Assert.All(part.Numbers, n => Assert.NotEqual("", n.Source));
        Assert.All(part.Numbers.Where(n => n.Source.StartsWith("estimate", StringComparison.Ordinal) && n.Value > 0.0 && n.Key != "voltage"), n => Assert.True(n.Tolerance > 0.0, n.Key));
        ReadResult read = Read(section, $"shelf = \"{name}\"" + (part.About.Contains("no gears", StringComparison.Ordinal) ? "\ngear_ratio = 30" : ""));
        Assert.Empty(read.Problems);
        Assert.NotNull(read.Scenario);
        Assert.Contains(read.Notes, n => n.Contains($"from the shelf's \"{name}\"", StringComparison.Ordinal));
        Assert.Equal(part.Numbers.Count, read.Derived.Count(d => d.Text.Contains("from the shelf's", StringComparison.Ordinal)));
    }

    // the five numbers of a motor's heat; time constants of winding and can as makers' sheets have them (8 to 40 mm: 4 to 42 s, 242 to 809 s), a factor of two to either side
    [Fact]
    public void Every_motor_tells_how_it_heats() => Assert.All(PartShelf.Motors.Parts, m =>
    {
        double Of(string key) => m.Find(key)?.Value ?? throw new InvalidOperationException($"{m.Name} lacks {key}");
        Assert.InRange(Of("winding_to_case") * Of("winding_heat_capacity"), 2.0, 84.0);
        Assert.InRange(Of("case_to_air") * Of("case_heat_capacity"), 100.0, 1600.0);
        Assert.InRange(Of("winding_limit"), 80.0, 180.0);
    });

    [Fact]
    public void Names_are_there_once_over_all_kinds()
    {
        string[] names = [.. PartShelf.All.SelectMany(s => s.Parts).SelectMany(p => p.Names.Concat(p.OldNames))];
        Assert.Equal(names.Length, names.Distinct(StringComparer.OrdinalIgnoreCase).Count());
        Assert.All(new[] { "12 mm", "16 mm", "20 mm", "25 mm", "37 mm", "brushless" }, c => Assert.Contains(PartShelf.Motors.Parts, p => p.Name.Contains(c, StringComparison.Ordinal)));
    }

    // sheet of a 12 mm motor at 12 V: 16 000 rpm, 47.8 ohm; computed from it, stall 0.251 A and 1.39 mN m
    [Fact]
    public void The_twelve_millimetre_motor_stalls_as_its_test_says()
    {
        MotorSettings m = Motor("shelf = \"12 mm brushed gearmotor, 12 V, 30:1\"");
        double stall = 12.0 / m.Resistance;
        Assert.Equal(0.251, stall, 0.0005);

        // the test's 1.39 mN m is that at the bare motor, without its friction
        double bare = m.TorqueConstant * (stall - 0.03);
        Assert.Equal(1.39e-3, bare, 0.01e-3);
    }

    // time constants that makers print: J R/K^2 is 6.5 ms for the 8 mm coreless motor (6.494 computed here)
    [Fact]
    public void The_coreless_motor_has_the_time_constant_of_its_sheet()
    {
        MotorSettings m = Motor("shelf = \"8 mm coreless motor, 6 V\"\ngear_ratio = 30");
        Assert.Equal(6.5e-3, m.RotorInertia * m.Resistance / (m.TorqueConstant * m.TorqueConstant), 0.05e-3);
    }

    [Fact]
    public void One_value_can_be_changed_and_the_rest_stays()
    {
        MotorSettings shelf = Motor("shelf = \"25 mm brushed gearmotor, 12 V, 20:1\"");
        MotorSettings own = Motor("shelf = \"25 mm brushed gearmotor, 12 V, 20:1\"\nresistance = \"5 ohm\"");
        Assert.Equal(5.0, own.Resistance);
        Assert.Equal(3.5, shelf.Resistance);
        Assert.Equal(shelf.TorqueConstant, own.TorqueConstant);
        Assert.Equal(shelf.RotorInertia, own.RotorInertia);

        // the same thing said in another way displaces the shelf's
        own = Motor("shelf = \"25 mm brushed gearmotor, 12 V, 20:1\"\ntorque_constant = \"9 mN m/A\"");
        Assert.Equal(9e-3, own.TorqueConstant, 1e-12);
        own = Motor("shelf = \"25 mm brushed gearmotor, 12 V, 20:1\"\nstall_current = \"4 A\"");
        Assert.Equal(3.0, own.Resistance, 1e-12);
    }

    [Fact]
    public void Another_ratio_changes_the_drive_and_not_the_motor()
    {
        ReadResult read = Read("motor", "shelf = \"25 mm brushed gearmotor, 12 V, 20:1\"\ngear_ratio = 25");
        Assert.Empty(read.Problems);
        Assert.Equal(25.0, read.Robot!.Drives[0].Motors[0].Ratio);
        Assert.Equal(Math.Pow(0.9, 3), read.Robot.Drives[0].GearEfficiency, 1e-12);
        Assert.Equal(Motor("shelf = \"25 mm brushed gearmotor, 12 V, 20:1\"").TorqueConstant, read.Robot.Drives[0].Motors[0].Motor.TorqueConstant);
    }

    // 25 mohm at 1 A h: a cell of 0.45 A h has 56 mohm, of 1.3 A h 19 (computed); three of them in series three times that
    [Theory]
    [InlineData("450 mAh", 3, 0.1667)]
    [InlineData("1300 mAh", 3, 0.05769)]
    [InlineData("450 mAh", 2, 0.1111)]
    public void A_pack_has_the_resistance_of_its_cells_over_its_capacity(string capacity, int cells, double expected)
    {
        BatterySettings b = Read("battery", $"shelf = \"lithium polymer, 20C\"\ncells = {cells}\ncapacity = \"{capacity}\"").Robot!.Battery!;
        Assert.Equal(expected, b.Resistance, expected * 1e-3);
    }

    [Fact]
    public void A_cell_brings_its_own_voltage_curve_and_own_values_stand()
    {
        BatterySettings b = Read("battery", "shelf = \"lithium iron phosphate, high rate\"").Robot!.Battery!;
        Assert.Contains((0.5, 3.28), b.CellVoltage);
        b = Read("battery", "shelf = \"lithium iron phosphate, high rate\"\nresistance = \"99 mohm\"").Robot!.Battery!;
        Assert.Equal(0.099, b.Resistance, 1e-12);
    }

    [Theory]
    [InlineData("motor", "25 mm brushd gearmotor, 12 V, 20:1")]
    [InlineData("controller", "integrated brige, 3.6 A")]
    [InlineData("battery", "lithium polymer, 20D")]
    [InlineData("floor", "bare plywod")]
    public void A_wrong_name_says_what_there_is(string section, string name)
    {
        Problem problem = Assert.Single(Read(section, $"shelf = \"{name}\"").Problems, p => p.Message.Contains("shelf", StringComparison.Ordinal));
        Assert.Contains("did you mean", problem.Help);
    }

    [Fact]
    public void A_scenario_can_set_another_part()
    {
        string robot = Robot("motor", "shelf = \"25 mm brushed gearmotor, 12 V, 20:1\"");
        using var files = new SmallFiles(robot, SmallFiles.With(SmallFiles.Scenario, "[floor]", "[override]\n\"motor.small.shelf\" = \"37 mm brushed gearmotor, 12 V, 10:1\"\n[floor]"));
        ReadResult read = ScenarioReader.Read(files.ScenarioPath);
        Assert.Empty(read.Problems);
        Assert.Equal(2.2, read.Robot!.Drives[0].Motors[0].Motor.Resistance);
        Assert.Equal(10.0, read.Robot.Drives[0].Motors[0].Ratio);
    }

    private static MotorSettings Motor(string lines)
    {
        ReadResult read = Read("motor", lines);
        Assert.DoesNotContain(read.Problems, p => p.Severity == Severity.Error);
        return read.Robot!.Drives[0].Motors[0].Motor;
    }

    private static ReadResult Read(string section, string lines)
    {
        string scenario = section == "floor" ? SmallFiles.With(SmallFiles.Scenario, "[floor]\nfriction = 1.0", "[floor]\n" + lines) : SmallFiles.Scenario;
        using var files = new SmallFiles(section == "floor" ? SmallFiles.Robot : Robot(section, lines), scenario);
        return ScenarioReader.Read(files.ScenarioPath);
    }

    // The small robot with one of its parts replaced; the motor keeps no gear of its drive.
    private static string Robot(string section, string lines)
    {
        string robot = SmallFiles.Robot;
        switch (section)
        {
            case "motor":
                robot = SmallFiles.With(robot, OwnMotor, lines);
                return robot.Replace(DriveEfficiency, "motors = [\"small\"]\n", StringComparison.Ordinal);
            case "controller":
                return SmallFiles.With(robot, "drives = [\"port\"]\ncurrent_limit = \"5 A\"", "drives = [\"port\"]\n" + lines);
            default:
                string size = (lines.Contains("cells", StringComparison.Ordinal) ? "" : "cells = 3\n") + (lines.Contains("capacity", StringComparison.Ordinal) ? "" : "capacity = \"450 mAh\"\n");
                return SmallFiles.With(robot, "cells = 3\ncapacity = \"450 mAh\"\nresistance = \"150 mohm\"", size + lines);
        }
    }
}
