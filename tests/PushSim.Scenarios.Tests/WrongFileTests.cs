using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;
using Xunit;

namespace PushSim.Scenarios.Tests;

public class WrongFileTests
{
    [Theory]
    [InlineData("mass = \"800 g\"", "mass = 800", 3, 8, "\"mass\" needs a unit", "kg, g")]
    [InlineData("mass = \"800 g\"", "mass = \"800 mm\"", 3, 8, "\"mm\" measures length, but this is a mass", "kg, g")]
    [InlineData("mass = \"800 g\"", "mass = \"0,8 kg\"", 3, 8, "a comma in a number", "point")]
    [InlineData("mass = \"800 g\"", "mass = \"1e999 g\"", 3, 8, "not finite", "")]
    [InlineData("mass = \"800 g\"", "mass = \"800 kg\"", 3, 8, "\"mass\" is 800 kg, outside the allowed range", "0.01 kg to 500 kg")]
    [InlineData("mass = \"800 g\"", "mass = 800 g", 3, 12, "a number with a unit goes in quotes", "mass = \"800 g\"")]
    [InlineData("mass = \"800 g\"", "mass = true", 3, 8, "\"mass\" takes a mass, not true or false", "1360 g")]
    [InlineData("mass = \"800 g\"", "mass = \"800 g\"\nmass = \"1 kg\"", 4, 1, "\"mass\" is already there in line 3", "")]
    [InlineData("mass = \"800 g\"", "maas = \"800 g\"", 3, 1, "unknown key \"maas\" in [chassis]", "did you mean \"mass\"?")]
    [InlineData("mass = \"800 g\"\n", "", 2, 2, "missing \"mass\" in chassis", "add mass = \"1360 g\"")]
    [InlineData("name = \"shrew\"", "name = 3", 1, 8, "\"name\" takes a text, not a bare number", "mole")]
    [InlineData("name = \"shrew\"", "name = \" \"", 1, 8, "\"name\" is empty", "mole")]
    [InlineData("height = \"20 mm\" }", "hight = \"20 mm\" }", 7, 32, "unknown key \"hight\" in [chassis.centre_of_mass]", "did you mean \"height\"?")]
    [InlineData("centre_of_mass = {", "centre_of_mass = \"low\" #", 7, 18, "\"centre_of_mass\" takes a table, not a text", "chassis.centre_of_mass")]
    [InlineData("[chassis]", "[chasis]", 2, 2, "unknown key \"chasis\"", "did you mean \"chassis\"?")]
    [InlineData("x = \"0 mm\", height", "x = \"200 mm\", height", 7, 18, "the centre of mass lies", "skid")]
    [InlineData("static_friction = \"1.0 ± 0.1\"", "static_friction = \"1.0 N\"", 10, 19, "\"N\" measures force, but this is a pure number", "%")]
    [InlineData("kinetic_friction = 0.8", "kinetic_friction = 1.2", 11, 20, "kinetic friction 1.2 is above static friction 1", "swap")]
    [InlineData("kinetic_friction = 0.8", "kinetic_friction = inf", 11, 20, "\"kinetic_friction\" is not finite", "")]
    [InlineData("kinetic_friction = 0.8", "kinetic_friction = 1979-05-27", 11, 20, "\"kinetic_friction\" takes a pure number or percentage, not a date", "0.85")]
    [InlineData("wear = \"200 mm3\"", "contact_length = \"1 cm\"\nrolling_renewal = \"100 1/m\"", 17, 19, "say the same thing", "keep one")]
    [InlineData("wear = \"200 mm3\"", "friction_table = [[\"0 m/s\", 1.0], [\"0 m/s\", 0.9]]", 16, 36, "\"friction_table\" must rise", "rising order")]
    [InlineData("wear = \"200 mm3\"", "friction_table = [1, 2]", 16, 18, "\"friction_table\" takes a list of pairs", "m/s")]
    [InlineData("tyre = \"foam\"", "tyre = \"foem\"", 22, 8, "there is no tyre \"foem\"", "did you mean \"foam\"?")]
    [InlineData("mass = \"20 g\"\n", "", 17, 3, "wheel \"left\" has no inertia", "mass = ")]
    [InlineData("name = \"right\"", "name = \"left\"", 25, 8, "there is already a wheel \"left\"", "own name")]
    [InlineData("name = \"right\"", "name = \"Left!\"", 25, 8, "wheel \"left\" and wheel \"Left!\" would share the columns of history.csv", "tell them apart")]
    [InlineData("stall_current = \"3 A\"", "stall_current = \"3 A\"\nwinding_to_case = \"8 K/W\"\ncase_to_air = \"18 K/W\"", 51, 19, "motor \"small\" heats up, but has no winding_heat_capacity, case_heat_capacity", "heating is off")]
    [InlineData("stall_current = \"3 A\"", "stall_current = \"3 A\"\nstandstill_torque_share = \"30 %\"", 51, 27, "but has no speed at which it gives all of it", "full_torque_speed")]
    [InlineData("[[motor]]", "[motor]", 45, 2, "[motor] needs double brackets, since there may be several", "[[motor]]")]
    [InlineData("stall_current = \"3 A\"\n", "", 45, 3, "motor \"small\" is not determined", "resistance (or voltage and stall current")]
    [InlineData("stall_current = \"3 A\"", "stall_curent = \"3 A\"", 50, 1, "unknown key \"stall_curent\"", "did you mean \"stall_current\"?")]
    [InlineData("gear_ratio = 30", "gear_ratio = \"30 rpm\"", 51, 14, "\"rpm\" measures turning speed", "")]
    [InlineData("wheels = [\"left\"]", "wheels = [\"lft\"]", 55, 11, "there is no wheel \"lft\"", "did you mean \"left\"?")]
    [InlineData("wheels = [\"left\"]", "wheels = []", 55, 10, "drive \"port\" turns no wheel", "")]
    [InlineData("wheels = [\"left\"]", "wheels = [\"left\", \"right\"]", 60, 11, "wheel \"right\" is already in drive \"port\"", "one drive")]
    [InlineData("wheels = [\"left\"]", "wheels = [\"left\", \"ball front\"]", 55, 19, "\"ball front\" is a skid and cannot be driven", "skid = true")]
    [InlineData("wheels = [\"left\"]", "wheels = [\"left\"]\nwheel_ratios = [1, 1]", 56, 16, "2 ratios for 1 wheels", "one ratio per wheel")]
    [InlineData("wheels = [\"left\"]", "wheels = \"left\"", 55, 10, "\"wheels\" takes a list of texts", "front left")]
    [InlineData("motors = [\"small\"]", "motors = [\"big\"]", 56, 11, "there is no motor \"big\"", "known: small")]
    [InlineData("drives = [\"port\"]", "drives = [\"prot\"]", 66, 11, "there is no drive \"prot\"", "did you mean \"port\"?")]
    [InlineData("drives = [\"port\"]", "drives = [\"port\", \"starboard\"]\nwiring = \"parallel\"", 72, 11, "motor 1 of drive \"starboard\" is already on controller \"a\"", "one controller")]
    [InlineData("drives = [\"port\"]", "drives = [\"port/2\"]", 66, 11, "drive \"port\" has 1 motor, no motor 2", "count from 1")]
    [InlineData("drives = [\"starboard/1\"]", "drives = []", 61, 10, "motor 1 of drive \"starboard\" has no controller", "[[controller]]")]
    [InlineData("motors = [\"small\"]", "motors = [\"small\", \"small\"]", 63, 3, "controller \"a\" has 2 motors, so their wiring must be said", "parallel")]
    [InlineData("side = \"left\"", "side = \"lfet\"", 65, 8, "\"lfet\" is no side", "did you mean \"left\"? allowed: left, right")]
    [InlineData("side = \"left\"", "side = 1", 65, 8, "\"side\" takes a word in quotes", "left, right")]
    [InlineData("cells = 3", "cells = 3.5", 73, 9, "\"cells\" takes a whole number, not one with decimals", "cells = 3")]
    [InlineData("cells = 3", "cells = 300", 73, 9, "\"cells\" is 300, outside the allowed range", "1 to 24")]
    [InlineData("cells = 3", "cells = 3\ncell_voltage = [[\"0 %\", \"4 V\"], [\"100 %\", \"3 V\"]]", 74, 16, "the cell's voltage falls with charge", "")]
    [InlineData("skid = true", "skid = \"yes\"", 37, 8, "\"skid\" takes true or false, not a text", "without quotes")]
    public void A_mistake_in_a_robot_is_found_where_it_stands(string old, string by, int line, int column, string message, string help)
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, old, by));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Null(result.Scenario);
        Expect(result, "shrew.toml", line, column, message, help);
    }

    [Theory]
    [InlineData("robot = \"shrew.toml\"", "robot = \"/robots/shrew.toml\"", 2, 9, "this path does not start in the scenario's folder", "")]
    [InlineData("robot = \"shrew.toml\"", "robot = \"../shrew.toml\"", 2, 9, "this path leaves the scenario's folder", "below it")]
    [InlineData("robot = \"shrew.toml\"", "robot = \"a/../../shrew.toml\"", 2, 9, "this path leaves the scenario's folder", "")]
    [InlineData("robot = \"shrew.toml\"", "robot = 'C:\\shrew.toml'", 2, 9, "this path does not start in the scenario's folder", "")]
    [InlineData("robot = \"shrew.toml\"", "robot = '\\\\host\\shrew.toml'", 2, 9, "this path does not start in the scenario's folder", "")]
    [InlineData("robot = \"shrew.toml\"", "robot = \"vole.toml\"", 2, 9, "\"vole.toml\" is not there", "check the name")]
    [InlineData("robot = \"shrew.toml\"", "robot = \".\"", 2, 9, "\".\" is a folder, not a file", "")]
    [InlineData("robot = \"shrew.toml\"\n", "", 1, 1, "missing \"robot\" in this scenario file", "robots/mole.toml")]
    [InlineData("slope_x = \"5 deg\"", "slope_x = \"5 %\"", 5, 11, "\"%\" measures pure number or percentage, but this is an angle", "deg")]
    [InlineData("slope_x = \"5 deg\"", "slope_x = \"89 deg\"", 5, 11, "outside the allowed range", "-70 deg to 70 deg")]
    [InlineData("max_x = \"2 m\"", "max_x = \"0.5 m\"", 6, 9, "this patch of floor has no area", "min_x")]
    [InlineData("kind = \"reversal\"", "kind = \"revesal\"", 13, 8, "\"revesal\" is no kind", "did you mean \"reversal\"?")]
    [InlineData("kind = \"reversal\"", "kind = \"pull\"", 13, 8, "a pull test needs a tether", "[tether]")]
    [InlineData("kind = \"reversal\"", "kind = \"spot\"", 12, 2, "missing \"turn\"", "positive turns left")]
    [InlineData("reverse_at = \"1 s\"", "reverse_at = \"5 s\"", 15, 14, "\"reverse_at\" is 5 s, not between", "")]
    [InlineData("reverse_at = \"1 s\"\n", "", 12, 2, "missing \"reverse_at\"", "1.2 s")]
    [InlineData("end = \"2 s\"", "end = \"2 m\"", 16, 7, "\"m\" measures length, but this is a time", "s, ms")]
    [InlineData("end = \"2 s\"", "end = \"0.05 s\"", 16, 7, "the run ends at 0.05 s", "later")]
    [InlineData("[numerics]", "[floor]", 17, 2, "\"floor\" is already there in line 3", "")]
    [InlineData("[manoeuvre]", "[maneuver]", 12, 2, "unknown key \"maneuver\"", "did you mean \"manoeuvre\"?")]
    [InlineData("tolerance = 0.001", "mass = \"1 kg\"", 18, 1, "unknown key \"mass\" in [numerics]", "it belongs in [chassis]")]
    public void A_mistake_in_a_scenario_is_found_where_it_stands(string old, string by, int line, int column, string message, string help)
    {
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, old, by));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Null(result.Scenario);
        Expect(result, "move.toml", line, column, message, help);
    }

    [Fact]
    public void All_mistakes_of_both_files_come_at_once()
    {
        string robot = SmallFiles.With(SmallFiles.With(SmallFiles.Robot, "mass = \"800 g\"", "maas = \"800 g\""), "side = \"left\"", "side = \"up\"");
        string scenario = SmallFiles.With(SmallFiles.With(SmallFiles.Scenario, "slope_x = \"5 deg\"", "slope_x = 5"), "end = \"2 s\"", "end = \"2 m\"");
        using var files = new SmallFiles(robot, scenario);
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Equal(["move.toml:5", "move.toml:16", "shrew.toml:3", "shrew.toml:65"], result.Problems.Select(p => $"{Path.GetFileName(p.File)}:{p.Line}"));
    }

    [Fact]
    public void Several_slips_of_the_format_come_at_once()
    {
        using var files = new SmallFiles(scenario: "question = \nrobot = \"shrew.toml\"\n[floor]\nslope_x = 5 deg\n");
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Equal([1, 1, 4], result.Problems.Select(p => p.Line));
        Assert.Equal(["missing \"manoeuvre\" in this scenario file", "there is no value behind the equals sign", "a number with a unit goes in quotes, and a bare number has a point and no comma"], result.Problems.Select(p => p.Message));
    }

    [Fact]
    public void Wheels_in_one_line_fall_over()
    {
        string robot = SmallFiles.With(SmallFiles.With(SmallFiles.Robot, "x = \"50 mm\"", "x = \"0 mm\""), "x = \"-50 mm\"", "x = \"0 mm\"");
        using var files = new SmallFiles(robot);
        Expect(ScenarioReader.Read(files.ScenarioPath), "shrew.toml", 38, 3, "the wheels stand in one line", "skid");
    }

    [Fact]
    public void Nine_wheels_are_too_many()
    {
        string extra = string.Concat(Enumerable.Range(1, 5).Select(i => $"[[wheel]]\nname = \"extra {i}\"\nx = \"{i} mm\"\ny = \"0 mm\"\ndiameter = \"10 mm\"\ntyre = \"foam\"\nskid = true\n"));
        using var files = new SmallFiles(SmallFiles.Robot + extra);
        Expect(ScenarioReader.Read(files.ScenarioPath), "shrew.toml", 104, 3, "9 wheels, but a robot has 2 to 8", "skid");
    }

    [Fact]
    public void Controllers_without_a_battery_are_an_error()
    {
        string robot = SmallFiles.Robot[..SmallFiles.Robot.IndexOf("[battery]", StringComparison.Ordinal)];
        using var files = new SmallFiles(robot);
        Expect(ScenarioReader.Read(files.ScenarioPath), "shrew.toml", 63, 3, "there are controllers but no battery", "[battery]");
    }

    [Theory]
    [InlineData(17, false)]
    [InlineData(14, true)]
    [InlineData(100_000, false)]
    public void Deep_nesting_is_refused_without_harm(int depth, bool isShallow)
    {
        string nest = new string('[', depth) + new string(']', depth);
        using var files = new SmallFiles(scenario: $"question = {nest}\n{SmallFiles.Scenario[(SmallFiles.Scenario.IndexOf('\n') + 1)..]}");
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.True(result.HasErrors);
        Assert.Equal(!isShallow, result.Problems.Any(p => p.Message.Contains("deep", StringComparison.OrdinalIgnoreCase) || p.Message.Contains("depth", StringComparison.OrdinalIgnoreCase)));
    }

    [Fact]
    public void A_file_over_one_mebibyte_is_refused()
    {
        using var files = new SmallFiles(scenario: SmallFiles.Scenario + "#" + new string('x', 1 << 20));
        Assert.Contains("larger than 1048576 bytes", Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems).Message);
    }

    [Theory]
    [InlineData(new byte[] { 0x71, 0x3D, 0x22, 0xFF, 0xFE, 0x22 }, "not UTF-8 text")]
    [InlineData(new byte[] { 0xFF, 0xFE, 0x71, 0x00, 0x3D, 0x00 }, "not UTF-8 text")]
    [InlineData(new byte[] { 0x7F, 0x45, 0x4C, 0x46, 0x00, 0xFF, 0xC0 }, "not a text file")]
    public void Bytes_that_are_no_utf8_are_refused(byte[] bytes, string expected)
    {
        using var files = new SmallFiles();
        File.WriteAllBytes(files.ScenarioPath, bytes);
        Assert.EndsWith(expected, Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems).Message);
    }

    [Fact]
    public void A_missing_scenario_cannot_be_read()
    {
        using var files = new SmallFiles();
        ReadResult result = ScenarioReader.Read(Path.Combine(files.Folder, "none.toml"));
        Assert.True(result.CannotRead);
        Assert.Contains("is not there", Assert.Single(result.Problems).Message);
    }

    [Fact]
    public void A_link_out_of_the_folder_is_refused_unless_allowed()
    {
        using var outside = new SmallFiles();
        using var files = new SmallFiles(robot: null);
        File.CreateSymbolicLink(files.RobotPath, outside.RobotPath);
        Expect(ScenarioReader.Read(files.ScenarioPath), "move.toml", 2, 9, "this path leaves the scenario's folder", "");
        Assert.NotNull(ScenarioReader.Read(files.ScenarioPath, new ReadOptions { AllowOutside = true }).Scenario);
    }

    [Fact]
    public void Control_characters_do_not_reach_the_screen()
    {
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, "kind = \"reversal\"", "kind = \"\\u001b[2Jx\""));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.True(result.HasErrors);
        Assert.All(result.Problems, p => Assert.DoesNotContain(p.Message + p.Help + p.SourceLine, char.IsControl));
    }

    [Fact]
    public void A_method_that_the_engine_does_not_have_is_an_error()
    {
        using var files = new SmallFiles(scenario: SmallFiles.Scenario + "method = \"ARK3(3)\"\n");
        Expect(ScenarioReader.Read(files.ScenarioPath), "move.toml", 19, 10, "there is no method \"ARK3(3)\"", "did you mean \"ARK3(2)\"?");
        Assert.Null(ScenarioReader.Read(files.ScenarioPath).Scenario);
    }

    // the model sets every axle at its own wheel's radius: a dropped centre is not what it says; the second robot's middle wheels are as the others, the third's front ones smaller
    [Theory]
    [InlineData("50 mm", "54 mm", "50 mm", true)]
    [InlineData("50 mm", "50.5 mm", "50 mm", true)]
    [InlineData("50 mm", "46 mm", "50 mm", true)]
    [InlineData("50 mm", "50 mm", "50 mm", false)]
    [InlineData("40 mm", "50 mm", "50 mm", false)]
    public void A_middle_wheel_of_its_own_size_is_warned_of(string front, string middle, string rear, bool isWarned)
    {
        static string Wheel(string name, int x, int y, string diameter) =>
            $"[[wheel]]\nname = \"{name}\"\nx = \"{x} mm\"\ny = \"{y} mm\"\ndiameter = \"{diameter}\"\ntyre = \"foam\"\nmass = \"20 g\"\n";
        string robot = SmallFiles.With(SmallFiles.Robot, "[[wheel]]\nname = \"ball front\"", string.Concat(
            Wheel("fl", 45, 50, front), Wheel("fr", 45, -50, front), Wheel("rl", -45, 50, rear), Wheel("rr", -45, -50, rear)) + "[[wheel]]\nname = \"ball front\"");
        robot = SmallFiles.With(robot, "y = \"50 mm\"\ndiameter = \"50 mm\"", $"y = \"50 mm\"\ndiameter = \"{middle}\"");
        robot = SmallFiles.With(robot, "y = \"-50 mm\"\ndiameter = \"50 mm\"", $"y = \"-50 mm\"\ndiameter = \"{middle}\"");
        using var files = new SmallFiles(robot: robot);
        ReadResult result = ScenarioReader.Check(files.RobotPath);
        Assert.NotNull(result.Robot);
        Problem[] found = [.. result.Problems.Where(p => p.Message.Contains("another diameter", StringComparison.Ordinal))];
        Assert.Equal(isWarned ? 1 : 0, found.Length);
        Assert.All(found, p => Assert.Equal((Severity.Warning, 21, "wheels \"left\", \"right\": another diameter than the wheels before and behind, but the model does not raise those, nor these"), (p.Severity, p.Line, p.Message)));
    }

    // whoever writes "175 %" knows how a share is written; whoever writes 75 may not
    [Theory]
    [InlineData("\"175 %\"", "allowed: 0.05 to 1")]
    [InlineData("75", "a share is written \"75 %\" or 0.75; allowed: 0.05 to 1")]
    public void Only_a_share_without_its_sign_is_told_how_to_be_written(string efficiency, string help)
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, "motors = [\"small\"]\ngear_efficiency = \"75 %\"\n[[drive]]", $"motors = [\"small\"]\ngear_efficiency = {efficiency}\n[[drive]]"));
        Assert.Equal(help, Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems).Help);
    }

    [Fact]
    public void Two_controllers_of_one_side_cannot_steer()
    {
        using var files = new SmallFiles(robot: SmallFiles.With(SmallFiles.Robot, "side = \"right\"", "side = \"left\""));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.Null(result.Scenario);
        Problem problem = Assert.Single(result.Problems);
        Assert.Equal((Severity.Error, "both controllers follow the left side, so nothing steers this robot", "give one of them side = \"right\""), (problem.Severity, problem.Message, problem.Help));
    }

    [Fact]
    public void A_key_of_many_parts_is_offered_for_all_of_them()
    {
        using var files = new SmallFiles();
        ReadResult result = ScenarioReader.Read(files.ScenarioPath, new ReadOptions { Set = [("gear_efficiency", "0.5")] });
        Assert.Equal("did you mean \"motor.small.gear_efficiency\" or \"drive.*.gear_efficiency\"?", Assert.Single(result.Problems).Help);
    }

    [Fact]
    public void A_key_without_effect_is_only_warned_of()
    {
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, "kind = \"reversal\"", "kind = \"launch\""));
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.NotNull(result.Scenario);
        Assert.Equal(Severity.Warning, Assert.Single(result.Problems).Severity);
        Expect(result, "move.toml", 15, 14, "\"reverse_at\" has no effect", "");
    }

    [Theory]
    [InlineData("\"parts/tyres.toml\"")]
    [InlineData("[\"parts/tyres.toml\", 3]")]
    [InlineData("{ file = \"parts/tyres.toml\" }")]
    public void An_include_that_is_no_list_of_texts_is_an_error(string value)
    {
        using var files = new SmallFiles("include = " + value + "\n" + SmallFiles.Robot);
        Directory.CreateDirectory(Path.Combine(files.Folder, "parts"));
        File.WriteAllText(Path.Combine(files.Folder, "parts", "tyres.toml"), "[battery]\ncut_off = \"9 V\"\n");
        Assert.True(ScenarioReader.Read(files.ScenarioPath).HasErrors);
    }

    [Fact]
    public void An_include_that_is_a_text_is_complained_about_at_its_place()
    {
        using var files = new SmallFiles("include = \"parts/tyres.toml\"\n" + SmallFiles.Robot);
        Expect(ScenarioReader.Read(files.ScenarioPath), "shrew.toml", 1, 11, "\"include\" takes a list of texts", "include = [\"parts/tyres.toml\"]");
    }

    [Fact]
    public void A_link_to_itself_is_complained_about_where_it_is_named()
    {
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, "\"shrew.toml\"", "\"ring.toml\""));
        File.CreateSymbolicLink(Path.Combine(files.Folder, "ring.toml"), "ring.toml");
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.True(result.CannotRead);
        Assert.Contains(result.Problems, p => p.Line == 2 && p.Message.StartsWith("\"ring.toml\" cannot be read", StringComparison.Ordinal));
    }

    [Fact]
    public void A_wrong_unit_of_a_measured_log_is_complained_about_once()
    {
        string text = SmallFiles.With(SmallFiles.Scenario, "[manoeuvre]", "[tether]\nhook = { x = \"-60 mm\", height = \"20 mm\" }\nanchor = { x = \"-300 mm\", height = \"20 mm\" }\nstiffness = \"5 N/mm\"\n[measured]\nfile = \"log.csv\"\nforce_unit = 3\n[manoeuvre]");
        using var files = new SmallFiles(scenario: text);
        Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems, p => p.Message.Contains("force_unit", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData("time [s],force", "", false, "the unit of the force is missing", "force_unit")]
    [InlineData("time [s],force [mV]", "", false, "the force is in mV", "in the log")]
    [InlineData("time [s],force", "force_unit = \"mV\"\n", false, "\"mV\" is no unit known here", "N, gf")]
    [InlineData("time [s],force [N]", "", true, "the pull reads negative", "in the log")]
    public void A_measured_log_that_says_too_little_is_mended_by_keys_not_options(string head, string keys, bool isReversed, string message, string help)
    {
        string tether = "[tether]\nhook = { x = \"-60 mm\", height = \"20 mm\" }\nanchor = { x = \"-300 mm\", height = \"20 mm\" }\nstiffness = \"5 N/mm\"\n[measured]\nfile = \"log.csv\"\n" + keys;
        using var files = new SmallFiles(scenario: SmallFiles.With(SmallFiles.Scenario, "[manoeuvre]", tether + "[manoeuvre]"));
        double sign = isReversed ? -1.0 : 1.0;
        IEnumerable<string> rows = Enumerable.Range(0, 200).Select(i => FormattableString.Invariant($"{0.01 * i},{sign * (i < 60 ? 0.001 * (i % 3) : Math.Min(4.0, 0.1 * (i - 60)) + (0.001 * (i % 3)))}"));
        File.WriteAllText(Path.Combine(files.Folder, "log.csv"), head + "\n" + string.Join('\n', rows) + "\n");
        Problem problem = Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems, p => p.Message.Contains(message, StringComparison.Ordinal));
        Assert.Contains(help, problem.Help);
        Assert.DoesNotContain("--", problem.Help);
    }

    [Fact]
    public void Scales_that_show_nothing_are_told_with_their_sum()
    {
        using var files = new SmallFiles(SmallFiles.With(SmallFiles.Robot, "mass = \"800 g\"", "left_scale_weight = \"0 g\"\nright_scale_weight = \"0 g\""));
        Expect(ScenarioReader.Read(files.ScenarioPath), "shrew.toml", 3, 21, "\"left_scale_weight\" is 0 g of 0 g in all", "");
    }

    [Fact]
    public void An_opponent_that_drives_only_after_the_end_is_warned_of()
    {
        using var files = new SmallFiles(scenario: "question = \"Who?\"\nrobot = \"shrew.toml\"\n[opponent]\nrobot = \"shrew.toml\"\nstart = \"4 s\"\n[manoeuvre]\nkind = \"shove\"\nend = \"3 s\"\n");
        Problem problem = Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems, p => p.Message.StartsWith("the opponent's last command", StringComparison.Ordinal));
        Assert.Equal((Severity.Warning, 5, "the opponent's last command comes at 4 s, but the run ends at 3 s"), (problem.Severity, problem.Line, problem.Message));
    }

    [Fact]
    public void A_command_beside_points_is_warned_of()
    {
        const string Text = "question = \"Who?\"\nrobot = \"shrew.toml\"\n[opponent]\nrobot = \"shrew.toml\"\npoints = [{ time = \"0.1 s\", throttle = 1 }]\nturn = 0.1\n"
            + "[manoeuvre]\nkind = \"shove\"\npoints = [{ time = \"0.1 s\", throttle = 1 }]\nthrottle = 0.5\n";
        using var files = new SmallFiles(scenario: Text);
        ReadResult result = ScenarioReader.Read(files.ScenarioPath);
        Assert.NotNull(result.Scenario);
        Expect(result, "move.toml", 6, 8, "\"turn\" has no effect beside \"points\"", "");
        Expect(result, "move.toml", 10, 12, "\"throttle\" has no effect beside \"points\"", "");
        Assert.Equal(2, result.Problems.Count(p => p.Message.Contains("no effect", StringComparison.Ordinal)));
    }

    [Fact]
    public void A_motor_without_rotor_inertia_is_warned_of_once_however_many_drives_have_it()
    {
        string robot = SmallFiles.Robot;
        Assert.Contains("rotor_inertia", robot, StringComparison.Ordinal);
        robot = string.Join('\n', robot.Split('\n').Where(l => !l.StartsWith("rotor_inertia", StringComparison.Ordinal)));
        using var files = new SmallFiles(robot);
        Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems, p => p.Message.Contains("no rotor inertia", StringComparison.Ordinal));
    }

    private static void Expect(ReadResult result, string file, int line, int column, string message, string help)
    {
        string all = string.Join("\n", result.Problems.Select(p => $"{p} | {p.Help}"));
        Assert.True(
            result.Problems.Any(p => Path.GetFileName(p.File) == file && p.Line == line && p.Column == column
                && p.Message.Contains(message, StringComparison.Ordinal) && p.Help.Contains(help, StringComparison.Ordinal)),
            $"expected {file}:{line}:{column} {message} | {help}\ngot\n{all}");
    }
}
