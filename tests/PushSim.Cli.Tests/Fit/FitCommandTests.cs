using System.Globalization;
using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Scenarios;
using PushSim.Scenarios.Scenes;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Cli.Tests.Fit;

public class FitCommandTests
{
    private static readonly string s_log = Path.Combine(Repository.Root, "scenarios", "logs", "soft-tyre.csv");
    private static readonly string s_readings = Path.Combine(Repository.Root, "scenarios", "logs", "readings.csv");
    private static readonly string s_mole = Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml");

    // A pasted tyre must not lose what the pull did not measure.
    [Fact]
    public void The_block_to_paste_keeps_the_rest_of_the_robots_tyre()
    {
        Cli cli = Cli.Run("fit", Path.Combine(Repository.Root, "scenarios", "logs", "soft-tyre.csv"), "--robot", Repository.Scenario("pull-test"), "--tyre", "soft", "--details", "--no-plots");
        Assert.Equal(ExitCode.Done, cli.Code);
        string[] kept = ["slip_speed = \"0.5 m/s\"", "vertical_damping = \"8 s/m\"", "breakaway_deflection = \"0.4 mm\"", "contact_length = \"12 mm\"", "wear = \"200 mm3\"", "rolling_resistance = 0.03"];
        Assert.All(kept, line => Assert.Contains("\n" + line + "\n", cli.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal));
        Assert.Contains("at 60 % throttle", cli.Output, StringComparison.Ordinal);
    }

    // the pasted tyre stands for the one it was measured on: the same but for its friction, which is the fitted one at the load of the test
    [Fact]
    public void A_pasted_tyre_of_the_same_name_keeps_wear_dust_cover_and_load_dependence()
    {
        const string More = "wear = \"200 mm3\"\ntread_area = \"70 %\"\ndusty_friction = \"60 %\"\nfouling_distance = \"2 m\"\nwidth = \"20 mm\"\ntread_thickness = \"8 mm\"\ndensity = \"0.25 g/cm3\"\nload_exponent = 0.1\nfriction_rise = 0.05\n";
        using var scratch = new ScratchFolder();
        string old = File.ReadAllText(s_mole).Replace("wear = \"200 mm3\"\n", More, StringComparison.Ordinal);
        File.WriteAllText(scratch["mole.toml"], old);
        Assert.Equal(ExitCode.Done, Cli.Run("fit", s_log, "--robot", scratch["mole.toml"], "--tyre", "soft", "--no-plots", "--out", scratch["out"]).Code);
        string block = File.ReadAllText(scratch["out/tyres.toml"]);
        Assert.Contains("without its curve of friction against slip", block);
        int from = old.IndexOf("[[tyre]]", StringComparison.Ordinal);
        File.WriteAllText(scratch["pasted.toml"], old[..from] + block + "\n" + old[old.IndexOf("[[wheel]]", StringComparison.Ordinal)..]);
        TyreSettings before = TyreOf(scratch["mole.toml"]);
        TyreSettings after = TyreOf(scratch["pasted.toml"]);
        Assert.Equal(1.36 * 9.80665 / 4.0 / 0.7, after.ReferenceLoad, 1e-3);
        Assert.Equal(0.0, after.FrictionRise);
        Assert.InRange(after.KineticFriction, 0.78, 0.83);
        TyreSettings rest = after with
        {
            StaticFriction = before.StaticFriction, KineticFriction = before.KineticFriction, ReferenceLoad = before.ReferenceLoad, FrictionRise = before.FrictionRise,
        };
        Assert.Equal(before, rest);
    }

    // all four wheels of a robot that no motor turns share the load of its test
    [Fact]
    public void A_tyre_of_a_robot_without_motors_is_pasted_with_the_load_of_one_wheel()
    {
        using var scratch = new ScratchFolder();
        string mole = File.ReadAllText(s_mole);
        File.WriteAllText(scratch["mole.toml"], mole[..mole.IndexOf("[[motor]]", StringComparison.Ordinal)]);
        Assert.Equal(ExitCode.Done, Cli.Run("fit", s_log, "--robot", scratch["mole.toml"], "--tyre", "soft", "--drag", "--no-plots", "--out", scratch["out"]).Code);
        string load = FormattableString.Invariant($"{1.36 * 9.80665 / 4.0:0.###}");
        Assert.Contains($"\nreference_load = \"{load} N\"", File.ReadAllText(scratch["out/tyres.toml"]));
    }

    [Fact]
    public void A_tyre_of_another_name_says_what_it_leaves_out()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("fit", s_log, "--robot", s_mole, "--no-plots", "--out", scratch["out"]);
        string block = File.ReadAllText(scratch["out/tyres.toml"]);
        Assert.Contains("the material is not known: stiffness and damping are those of \"soft\", a guess", block);
        Assert.DoesNotContain("\nwear", block);
    }

    private static TyreSettings TyreOf(string file)
    {
        ReadResult read = ScenarioReader.Check(file);
        Assert.Empty(read.Problems);
        return read.Robot!.Wheels[0].Tyre;
    }

    // the log was made with 0.80 sliding and 0.97 at breakaway, each with 1.5 % scatter from pull to pull, and one spike
    [Fact]
    public void Json_has_the_promised_keys()
    {
        Cli cli = Cli.Run("fit", s_log, "--robot", s_mole, "--json");
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Equal("", cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement root = json.RootElement;
        Assert.All(new[] { "schema_version", "command", "verdict", "warnings", "tyres" }, key => Assert.True(root.TryGetProperty(key, out _), key));
        JsonElement tyre = Assert.Single(root.GetProperty("tyres").EnumerateArray());
        Assert.Equal("soft-tyre", tyre.GetProperty("name").GetString());
        Assert.Equal(5, tyre.GetProperty("pulls").GetInt32());
        Assert.Equal("tyre", tyre.GetProperty("limited_by").GetString());
        Assert.InRange(0.80, Number(tyre, "kinetic_friction_low"), Number(tyre, "kinetic_friction_high"));
        Assert.InRange(0.97, Number(tyre, "static_friction_low"), Number(tyre, "static_friction_high"));
        Assert.InRange(Number(tyre, "kinetic_friction"), Number(tyre, "kinetic_friction_low"), Number(tyre, "kinetic_friction_high"));
        Assert.False(tyre.GetProperty("static_friction_is_lower_bound").GetBoolean());
        Assert.Contains("spike", root.GetProperty("warnings")[0].GetString());
    }

    // 180 gf and 190 gf at breakaway over 200 gf, 150 gf sliding over 200 gf: a row may hold a peak alone, and none may hold a steady force
    [Theory]
    [InlineData("200,,180\nsoft,200,,190\n", 0.925, null)]
    [InlineData("200,150,180\nsoft,200,,190\n", 0.925, 0.75)]
    public void A_row_of_a_table_with_loads_may_hold_a_peak_alone(string rows, double atRest, double? sliding)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["table.csv"], "tyre,load [gf],force [gf],peak [gf]\nsoft," + rows);
        Cli cli = Cli.Run("fit", scratch["table.csv"], "--json");
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement tyre = Assert.Single(json.RootElement.GetProperty("tyres").EnumerateArray());
        Assert.Equal(atRest, Number(tyre, "static_friction"), 1e-9);
        JsonElement kinetic = tyre.GetProperty("kinetic_friction");
        Assert.Equal(sliding is null ? JsonValueKind.Null : JsonValueKind.Number, kinetic.ValueKind);
        if (sliding is double friction)
        {
            Assert.Equal(friction, kinetic.GetDouble(), 1e-9);
        }
    }

    // slack for a second, or a third of a short log, then a saw-tooth of 5 to 13 N at 33 Hz in a log of 80 readings a second; and the same slack for ever
    [Theory]
    [InlineData(4.0, 400, 82, "the pull swings too much from here on")]
    [InlineData(0.0, 400, 2, "the force never rises out of its noise")]
    [InlineData(0.0, 64, 2, "the force never rises out of its noise")]
    [InlineData(4.0, 24, 2, "no pull found, and 24 readings are too few to tell a pull that swings from noise")]
    [InlineData(4.0, 40, 2, "no pull found, and 40 readings are too few to tell a pull that swings from noise")]
    [InlineData(4.0, 63, 23, "the pull swings too much from here on")]
    [InlineData(0.0, 24, 2, "no pull found, and 24 readings are too few to tell a pull that swings from noise")]
    public void A_pull_that_sticks_and_slips_is_told_from_none(double swing, int count, int line, string words)
    {
        using var scratch = new ScratchFolder();
        var noise = new Random(5);
        var text = new System.Text.StringBuilder("time [s],force [N]\n");
        for (int i = 0; i < count; i++)
        {
            double t = i / 80.0;
            double pull = i < Math.Min(80, count / 3) ? 0.0 : swing * (2.25 + (2.0 * (33.3 * t % 1.0)) - 1.0);
            text.Append(CultureInfo.InvariantCulture, $"{t:0.0000},{pull + (0.05 * (noise.NextDouble() - 0.5)):0.000}\n");
        }

        File.WriteAllText(scratch["log.csv"], text.ToString());
        Cli cli = Cli.Run("fit", scratch["log.csv"], "--load", "1360 gf", "--json");
        Assert.Equal(ExitCode.WrongInput, cli.Code);
        Assert.Contains($"log.csv:{line}:1: error: ", cli.Error);
        Assert.Contains(words, cli.Error);
    }

    // right is 1360 gf; a tenth and ten times of it are slips of unit or mass. The number stays.
    [Theory]
    [InlineData("136 gf", true)]
    [InlineData("1360 gf", false)]
    [InlineData("13600 gf", true)]
    public void A_friction_that_no_tyre_has_is_told_with_what_to_check(string load, bool isOdd)
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", s_log, "--load", load, "--json").Output);
        JsonElement[] odd = [.. json.RootElement.GetProperty("warnings").EnumerateArray().Where(w => w.GetString()!.Contains("tyres of small robots lie between 0.1 and 1.5", StringComparison.Ordinal))];
        Assert.Equal(isOdd ? 1 : 0, odd.Length);
        Assert.All(odd, w => Assert.Contains("check the load on the tyres or the robot's mass", w.GetString()));
        Assert.True(Number(json.RootElement.GetProperty("tyres")[0], "kinetic_friction") > 0.0);
    }

    // motors that give out at 8 % of the load say nothing against the tyre, whose friction is at least that
    [Fact]
    public void A_low_friction_that_is_only_a_lower_bound_is_not_odd()
    {
        using var scratch = new ScratchFolder();
        string weak = File.ReadAllText(s_mole).Replace("mass = \"1360 g ± 10 g\"", "mass = \"40 kg\"", StringComparison.Ordinal).Replace("current_limit = ", "current_limit = \"1.5 A\" # ", StringComparison.Ordinal);
        File.WriteAllText(scratch["weak.toml"], weak);
        Cli cli = Cli.Run("fit", s_log, "--robot", scratch["weak.toml"], "--json");
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement tyre = json.RootElement.GetProperty("tyres")[0];
        Assert.Equal("motors", tyre.GetProperty("limited_by").GetString());
        Assert.True(Number(tyre, "kinetic_friction") < 0.1);
        Assert.DoesNotContain("tyres of small robots", string.Join("\n", json.RootElement.GetProperty("warnings").EnumerateArray().Select(w => w.GetString())));
    }

    [Fact]
    public void The_verdict_comes_first_and_the_pictures_are_there()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("fit", s_log, "--load", "1360 gf", "--details", "--format", "png,svg", "--out", scratch["out"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.StartsWith("soft-tyre: sliding friction at least 0.8", cli.Output);
        Assert.DoesNotContain('\u001b', cli.Output);
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(cli.Output, @"keep clear of taut\s+tethers"));
        Assert.True(new FileInfo(scratch["out/plot.png"]).Length > 10_000);
        Assert.Contains("<svg", File.ReadAllText(scratch["out/plot.svg"]));
        Assert.Contains("[[tyre]]", File.ReadAllText(scratch["out/tyres.toml"]));
    }

    [Theory]
    [InlineData("--robot", "mole")]
    [InlineData("--load", "1360 gf", "--material", "silicone")]
    public void The_tyre_block_can_be_pasted(params string[] given)
    {
        using var scratch = new ScratchFolder();
        string[] load = [.. given.Select(g => g == "mole" ? s_mole : g)];
        Assert.Equal(ExitCode.Done, Cli.Run(["fit", s_log, .. load, "--out", scratch["out"], "--no-plots", "--quiet"]).Code);
        string text = File.ReadAllText(s_mole).Replace("tyre = \"soft\"", "tyre = \"soft-tyre\"");
        File.WriteAllText(scratch["robot.toml"], text + "\n" + File.ReadAllText(scratch["out/tyres.toml"]));
        Cli check = Cli.Run("check", scratch["robot.toml"]);
        Assert.Equal(ExitCode.Done, check.Code);
        Assert.DoesNotContain("error", check.Error);
    }

    [Fact]
    public void A_table_gives_a_tyre_a_name_each()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", s_readings, "--load", "13.3 N", "--json").Output);
        JsonElement[] tyres = [.. json.RootElement.GetProperty("tyres").EnumerateArray()];
        Assert.Equal(["tape", "soft", "neoprene"], tyres.Select(t => t.GetProperty("name").GetString()));
        Assert.Equal(2.578 / 13.3, Number(tyres[0], "kinetic_friction"), 1e-12);
        Assert.All(tyres, t => Assert.Equal("unknown", t.GetProperty("limited_by").GetString()));
    }

    // the shelf knows its wear, which the robot's own tyres cannot
    [Fact]
    public void A_tyre_named_after_a_material_of_the_shelf_takes_the_rest_from_there()
    {
        Cli cli = Cli.Run("fit", s_log, "--tyre", "Foamed TPU", "--robot", Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"), "--height", "25 mm", "--json");
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        Assert.True(json.RootElement.GetProperty("on_the_robot").GetProperty("tyres")[0].GetProperty("wear_known").GetBoolean());
    }

    [Fact]
    public void A_drag_needs_no_motors() => Assert.Contains("\"limited_by\": \"tyre\"", Cli.Run("fit", s_log, "--load", "1360 gf", "--drag", "--json").Output);

    // two files of one pull each are two pulls of one tyre
    [Fact]
    public void Numbered_files_are_pulls_of_one_tyre()
    {
        using var scratch = new ScratchFolder();
        string[] lines = File.ReadAllLines(s_log);
        File.WriteAllLines(scratch["foam-1.csv"], lines[..560]);
        File.WriteAllLines(scratch["foam-2.csv"], [.. lines[..3], .. lines[560..]]);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", scratch["foam-1.csv"], scratch["foam-2.csv"], "--load", "1360 gf", "--json").Output);
        JsonElement tyre = Assert.Single(json.RootElement.GetProperty("tyres").EnumerateArray());
        Assert.Equal("foam", tyre.GetProperty("name").GetString());
        Assert.Equal(5, tyre.GetProperty("pulls").GetInt32());
    }

    // pulls at several loads: the exponent put in comes back
    [Fact]
    public void A_load_column_gives_the_exponent()
    {
        using var scratch = new ScratchFolder();
        string rows = string.Concat(new[] { 2.0, 2.0, 4.0, 4.0, 8.0, 8.0 }.Select((n, i) => FormattableString.Invariant($"{n},{(1.0 + (0.01 * ((i % 3) - 1))) * 0.8 * n * Math.Pow(n / 4.0, -0.15):0.0000}\n")));
        File.WriteAllText(scratch["a.csv"], "load [N],force [N]\n" + rows);
        Cli cli = Cli.Run("fit", scratch["a.csv"], "--json");
        Assert.Equal("", cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement tyre = json.RootElement.GetProperty("tyres")[0];
        Assert.InRange(0.15, Number(tyre, "load_exponent_low"), Number(tyre, "load_exponent_high"));
        string told = FormattableString.Invariant($"\nload_exponent = {Number(tyre, "load_exponent"):0.###}\n");
        Assert.Contains(told, Cli.Run("fit", scratch["a.csv"], "--details", "--out", scratch["out"], "--no-plots").Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
    }

    // a row's own load stands; those without take that of the command line: 3 N of 6 N and 2.5 N of 5 N are the same friction
    [Fact]
    public void A_load_in_a_row_stands_before_that_of_the_command_line()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["a.csv"], "load [N],force [N]\n6,3.00\n6,3.03\n6,2.97\n,2.50\n,2.51\n,2.49\n");
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", scratch["a.csv"], "--load", "5 N", "--json").Output);
        Assert.Equal(0.5, Number(json.RootElement.GetProperty("tyres")[0], "kinetic_friction"), 5e-3);
        Assert.Contains("3 rows give loads of their own, which were taken in place of --load 5 N", json.RootElement.GetProperty("warnings").EnumerateArray().Select(w => w.GetString()));
    }

    // half a kilogram on two wheels and a ball ahead of them: 5 N on a tether 0.2 m high pull 1 N m, its weight holds less than a third of that; a pull behind rears it up on its wheels
    [Fact]
    public void A_drag_that_lifts_the_tested_tyres_is_told()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("new", "--kind", "pull-test", "--mass", "500g", "--wheels", "2", "--out", scratch["a"]).Code);
        File.WriteAllText(scratch["a.csv"], "tyre,force [N]\nsoft,5\nsoft,5.1\nsoft,4.9\n");
        Cli drag = Cli.Run("fit", scratch["a.csv"], "--robot", scratch["a/robot.toml"], "--drag", "--height", "200 mm", "--json");
        Assert.Equal(ExitCode.WrongCommandLine, drag.Code);
        Assert.Contains("5.10 N at the height of the tether would lift the tested tyres", drag.Error);
        Cli pull = Cli.Run("fit", scratch["a.csv"], "--robot", scratch["a/robot.toml"], "--height", "200 mm", "--json");
        Assert.Equal(ExitCode.Done, pull.Code);
        using JsonDocument json = JsonDocument.Parse(pull.Output);
        Assert.Equal(5.0 / (0.5 * 9.80665), Number(json.RootElement.GetProperty("tyres")[0], "kinetic_friction"), 1e-3);
    }

    // text in the file, exit code, what and where
    [Theory]
    [InlineData("", ExitCode.WrongInput, "a.csv: error: the file is empty")]
    [InlineData("time_s,force_n\n0,1\n", ExitCode.WrongInput, "a.csv:2:1: error: there is one row")]
    [InlineData("zeros", ExitCode.WrongInput, "a.csv:2:1: error: every reading of the force is zero")]
    [InlineData("saturated", ExitCode.WrongInput, "saturated")]
    [InlineData("reversed", ExitCode.WrongInput, "--flip")]
    [InlineData("flat", ExitCode.WrongInput, "no pull found")]
    [InlineData("taut", ExitCode.WrongInput, "--tare")]
    [InlineData("time_s,force_n\n0,1\n1,=2+2\n2,3\n", ExitCode.WrongInput, "a.csv:3:3: error: \"=2+2\" in the force column is a formula")]
    [InlineData("tyre,force [gf]\nsoft,-20\n", ExitCode.WrongInput, "a.csv:2:1: error: this reading is negative")]
    [InlineData("tyre,force [gf]\nsoft,0\n", ExitCode.WrongInput, "every reading is zero")]
    public void Bad_input_is_answered_with_what_and_where(string text, int code, string answer)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["a.csv"], Text(text));
        Cli cli = Cli.Run("fit", scratch["a.csv"], "--load", "12 N", "--json");
        Assert.Equal(code, cli.Code);
        Assert.Contains(answer, cli.Error);
        Assert.Equal("", cli.Output);
    }

    [Theory]
    [InlineData("reversed", "--flip")]
    [InlineData("taut", "--tare", "0 gf")]
    public void The_advice_helps(string text, params string[] advice)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["a.csv"], Text(text));
        Cli cli = Cli.Run(["fit", scratch["a.csv"], "--load", "12 N", "--json", .. advice]);
        Assert.Equal("", cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        Assert.Equal(8.0 / 12.0, Number(json.RootElement.GetProperty("tyres")[0], "kinetic_friction"), 0.002);
    }

    [Theory]
    [InlineData("fit")]
    [InlineData("fit", "a.csv", "--load", "heavy")]
    [InlineData("fit", "a.csv", "--load", "-2 N")]
    [InlineData("fit", "a.csv", "--unit", "smoots")]
    [InlineData("fit", "a.csv", "--calibration", "25 gf")]
    [InlineData("fit", "a.csv", "--height", "2 kg")]
    public void A_wrong_call_says_so(params string[] args)
    {
        Cli cli = Cli.Run(args);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("help: pushsim fit --help", cli.Error);
    }

    [Fact]
    public void Without_a_load_it_asks_for_one()
    {
        Cli cli = Cli.Run("fit", s_log);
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("--load", cli.Error);
        Assert.Equal(ExitCode.CannotReadOrWrite, Cli.Run("fit", "no such.csv", "--load", "2 N").Code);
    }

    [Fact]
    public void A_run_lays_the_measured_pull_over_its_own()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("run", Repository.Scenario("measured-pull"), "--format", "png,svg", "--out", scratch["out"], "--json");
        Assert.Equal("", cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        double measured = Number(json.RootElement, "measured_pull_plateau_n");
        Assert.Equal(measured, Number(json.RootElement, "pull_plateau_n"), 0.03 * measured);
        Assert.True(new FileInfo(scratch["out/plot.svg"]).Length > 10_000);
    }

    [Theory]
    [InlineData("file = \"none.csv\"", "it is not there")]
    [InlineData("file = \"../soft-tyre.csv\"", "leaves the scenario's folder")]
    [InlineData("file = \"logs/readings.csv\"", "no column of time")]
    [InlineData("file = \"logs/soft-tyre.csv\"\nforce_unit = \"smoots\"", "no unit known")]
    public void A_measured_log_that_cannot_be_used_is_named(string key, string answer)
    {
        using var scratch = new ScratchFolder();
        Directory.CreateDirectory(scratch["logs"]);
        Directory.CreateDirectory(scratch["robots"]);
        File.Copy(s_log, scratch["logs/soft-tyre.csv"]);
        File.Copy(s_readings, scratch["logs/readings.csv"]);
        File.Copy(s_mole, scratch["robots/mole.toml"]);
        string text = File.ReadAllText(Repository.Scenario("measured-pull"));
        File.WriteAllText(scratch["a.toml"], text.Replace("file = \"logs/soft-tyre.csv\"", key));
        Cli cli = Cli.Run("check", scratch["a.toml"]);
        Assert.Equal(ExitCode.WrongInput, cli.Code);
        Assert.Contains(answer, cli.Error);
        Assert.Contains("a.toml:", cli.Error);
    }

    private static double Number(JsonElement element, string key) => element.GetProperty(key).GetDouble();

    private static string Text(string kind)
    {
        var random = new Random(4);
        double Noise() => 0.02 * (random.NextDouble() + random.NextDouble() + random.NextDouble() - 1.5);
        Func<int, double>? force = kind switch
        {
            "zeros" => _ => 0.0,
            "flat" => _ => 3.0 + Noise(),
            "saturated" => i => Math.Min(6.0, Pull(i) + Noise()),
            "reversed" => i => 1.0 - Pull(i) + Noise(),
            "taut" => i => (i < 80 ? 10.0 : 8.0) + Noise(),
            _ => null,
        };
        return force is null ? kind : "time_s,force_n\n" + string.Concat(Enumerable.Range(0, 600).Select(i => string.Create(CultureInfo.InvariantCulture, $"{i * 0.0125:0.0000},{force(i):0.0000}\n")));
    }

    // slack, a ramp to 10 N, sliding at 8 N, slack
    private static double Pull(int i) => i < 100 ? 0.0 : i < 200 ? 0.1 * (i - 100) : i < 450 ? 8.0 : 0.0;
}
