using System.Text.Json;
using PushSim.Analysis.Limits;
using PushSim.Cli.Limits;
using PushSim.Cli.Shared;
using PushSim.Scenarios;
using PushSim.Words.Designs;
using PushSim.Words.Limits;
using PushSim.Words.Tables;
using Xunit;

namespace PushSim.Cli.Tests.Limits;

public class LimitsCommandTests
{
    public static TheoryData<string> Files() =>
    [
        .. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Select(f => Path.Combine("scenarios", Path.GetFileName(f))).Order(StringComparer.Ordinal),
        .. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios", "robots"), "*.toml").Select(f => Path.Combine("scenarios", "robots", Path.GetFileName(f))).Order(StringComparer.Ordinal),
    ];

    // Keys that scripts read
    [Theory]
    [MemberData(nameof(Files))]
    public void Every_shipped_file_has_limits(string file)
    {
        Cli cli = Cli.Run("limits", Path.Combine(Repository.Root, file), "--json");
        Assert.Equal("", cli.Error);
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement root = json.RootElement;
        Assert.Equal("limits", root.GetProperty("command").GetString());
        Assert.Equal(1, root.GetProperty("schema_version").GetInt32());
        Assert.NotEmpty(root.GetProperty("verdict").GetString()!);
        Assert.Equal(JsonValueKind.Array, root.GetProperty("warnings").ValueKind);
        double motor = root.GetProperty("motor_force_n").GetDouble();
        double traction = root.GetProperty("traction_force_n").GetDouble();
        Assert.Equal(traction, root.GetProperty("traction_peak_force_n").GetDouble());
        Assert.True(root.GetProperty("traction_sliding_force_n").GetDouble() <= traction * (1.0 + 1e-9));
        string binding = root.GetProperty("binding").GetString()!;
        Assert.Contains(binding, new[] { "tyres", "motors", "controllers", "battery" });
        Assert.Equal(motor > traction, binding == "tyres");
        Assert.Equal(motor > traction, root.GetProperty("crossing_speed_m_per_s").ValueKind == JsonValueKind.Number);
        JsonElement[] gains = [.. root.GetProperty("gains").EnumerateArray()];
        Assert.NotEmpty(gains);
        Assert.All(gains, g => Assert.NotEmpty(g.GetProperty("input").GetString()! + g.GetProperty("output").GetString()!));
        Assert.All(gains, g => Assert.True(double.IsFinite(g.GetProperty("change_percent").GetDouble())));
        foreach (JsonElement wheel in root.GetProperty("run_binding").EnumerateArray())
        {
            Assert.Equal(1.0, wheel.GetProperty("time_share").EnumerateObject().Sum(p => p.Value.GetDouble()), 1e-9);
            Assert.Equal(1.0, wheel.GetProperty("impulse_share").EnumerateObject().Sum(p => p.Value.GetDouble()), 1e-9);
        }
    }

    [Fact]
    public void Limits_and_run_agree_on_the_shipped_pull_test()
    {
        using JsonDocument limits = JsonDocument.Parse(Cli.Run("limits", Repository.Scenario("pull-test"), "--json").Output);
        using JsonDocument run = JsonDocument.Parse(Cli.Run("run", Repository.Scenario("pull-test"), "--json").Output);
        double plateau = run.RootElement.GetProperty("pull_plateau_n").GetDouble();
        Assert.Equal(plateau, limits.RootElement.GetProperty("pull_n").GetDouble(), 0.02 * plateau);
        Assert.Equal(run.RootElement.GetProperty("limited_by").GetString(), limits.RootElement.GetProperty("binding").GetString());
    }

    [Fact]
    public void Text_starts_with_the_verdict_and_files_are_written()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("limits", Repository.Scenario("pull-test"), "--details", "--format", "png,svg", "--out", scratch["out"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.StartsWith("The tyres limit mole", cli.Output);
        Assert.DoesNotContain('\u001b', cli.Output);
        Assert.All(new[] { "plot.png", "plot.svg", "force-curve.csv", "gains.csv", "ratio.csv", "binding.csv" }, f => Assert.True(File.Exists(scratch["out/" + f]), f));
        Assert.StartsWith("speed_m_per_s,motor_force_n,traction_peak_force_n", File.ReadLines(scratch["out/force-curve.csv"]).First());
        Assert.StartsWith("time_s,wheel_front_left_binding", File.ReadLines(scratch["out/binding.csv"]).First());
        Assert.Single(System.Text.RegularExpressions.Regex.Matches(cli.Output, "keep\\s+clear\\s+of\\s+taut\\s+tethers"));
    }

    // badger's tyres hold its pull at every ratio and grip a little more the slower they spin: the deepest gear is no answer, and one at the end of the range is told as such
    [Fact]
    public void The_least_ratio_of_a_robot_whose_tyres_hold_its_pull_is_not_the_deepest()
    {
        using var scratch = new ScratchFolder();
        string output = string.Join(" ", Cli.Run("limits", Path.Combine(Repository.Root, "scenarios", "robots", "badger.toml"), "--details", "--format", "png,svg", "--out", scratch["out"]).Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries));
        Assert.Contains("Best gear ratio for a dash of 1 m: 8:1, the lowest tried, so a lower one may be quicker still", output);
        Assert.Contains("Least within 5 % of the greatest pull: 8:1, the lowest tried, so a lower one may do too", output);
        Assert.Contains("The pull hardly depends on the ratio", output);
        string picture = File.ReadAllText(scratch["out/plot.svg"]);
        Assert.Contains("fastest 8:1, lowest tried", picture);
        Assert.Contains("least within 5 % of full pull 8:1, lowest tried", picture);
    }

    // without an opponent the margin over a twin says nothing to a person; scripts keep it
    [Theory]
    [InlineData("pull-test", false)]
    [InlineData("shove-heavy-grippy", true)]
    public void The_shove_margin_is_shown_against_an_opponent_only(string scenario, bool isShown)
    {
        using var scratch = new ScratchFolder();
        string file = Repository.Scenario(scenario);
        Assert.Equal(isShown, Cli.Run("limits", file, "--details", "--format", "png,svg", "--out", scratch["out"]).Output.Contains("hove margin", StringComparison.Ordinal));
        Assert.Equal(isShown, File.ReadAllText(scratch["out/plot.svg"]).Contains("shove margin", StringComparison.Ordinal));
        Assert.Contains("shove_margin_n", File.ReadAllText(scratch["out/gains.csv"]), StringComparison.Ordinal);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("limits", file, "--json").Output);
        Assert.Contains(json.RootElement.GetProperty("gains").EnumerateArray(), g => g.GetProperty("output").GetString() == "shove_margin_n");
    }

    // a match's dashes are starts of a second each, whatever they add up to
    [Theory]
    [InlineData("3:3:1:3", "over and over 3 s of dashes, each 1 s from standstill, 3 s pushing")]
    [InlineData("3:0.5:1:3", "over and over 0.5 s of dashes from standstill, 3 s pushing")]
    public void Dashes_are_told_as_what_they_are(string duty, string words)
    {
        using var scratch = new ScratchFolder();
        string output = Cli.Run("limits", Repository.Scenario("pull-test"), "--duty", duty, "--details", "--no-plots", "--out", scratch["out"]).Output;
        Assert.Contains(words, string.Join(" ", output.Split([' ', '\n', '\r', '│'], StringSplitOptions.RemoveEmptyEntries)).Replace(" value", "", StringComparison.Ordinal), StringComparison.Ordinal);
    }

    [Fact]
    public void Quiet_prints_the_verdict_only()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("limits", Repository.Scenario("pull-test"), "--quiet", "--no-plots", "--out", scratch["out"]);
        Assert.Single(cli.Output.Trim().Split('\n'));
        Assert.False(File.Exists(scratch["out/plot.png"]));
    }

    [Theory]
    [InlineData("--throttle", "0")]
    [InlineData("--throttle", "1,5")]
    [InlineData("--throttle", "NaN")]
    [InlineData("--duty", "1:2:3")]
    [InlineData("--duty", "0:0:0:0")]
    [InlineData("--duty", "0.1:0.2:0:0.5")]
    [InlineData("--duty", "1:-2:3:1")]
    [InlineData("--match", "1e9")]
    [InlineData("--out", " ")]
    public void A_wrong_option_is_a_wrong_command_line(string option, string value)
    {
        Cli cli = Cli.Run("limits", Repository.Scenario("pull-test"), option, value, "--json");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains(option, cli.Error);
        Assert.Equal("", cli.Output);
    }

    [Fact]
    public void A_missing_file_cannot_be_read() => Assert.Equal(ExitCode.CannotReadOrWrite, Cli.Run("limits", "no-such.toml", "--json").Code);

    [Fact]
    public void Throttle_and_duty_reach_the_answer()
    {
        using JsonDocument half = JsonDocument.Parse(Cli.Run("limits", Repository.Scenario("pull-test"), "--json", "--throttle", "0.3", "--duty", "9:0:0:1", "--match", "60").Output);
        using JsonDocument full = JsonDocument.Parse(Cli.Run("limits", Repository.Scenario("pull-test"), "--json", "--throttle", "1").Output);
        Assert.True(half.RootElement.GetProperty("motor_force_n").GetDouble() < full.RootElement.GetProperty("motor_force_n").GetDouble());
        Assert.Equal(60.0, half.RootElement.GetProperty("match").GetProperty("length_s").GetDouble());
        Assert.Equal(9.0, half.RootElement.GetProperty("match").GetProperty("push_s").GetDouble());
    }

    // on a level floor what the wheels give is what the tether holds; the ball in front is dragged along, and the range that it leaves is told
    [Fact]
    public void What_the_wheels_give_sums_to_the_pull_with_a_skid_too()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("new", "--mass", "1kg", "--wheels", "2", "--motor", "20 mm brushed gearmotor, 12 V, 50:1", "--tyre", "PLA", "--out", scratch["a"]);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("limits", scratch["a/robot.toml"], "--json").Output);
        double[] given = [.. json.RootElement.GetProperty("wheels").EnumerateArray().Select(w => w.GetProperty("force_n").GetDouble())];
        double pull = json.RootElement.GetProperty("states")[0].GetProperty("pull_n").GetDouble();
        Assert.Single(given, f => f < 0.0);
        Assert.Equal(pull, given.Sum(), 1e-6 * pull);
        Assert.Contains("creeps forward", Assert.Single(json.RootElement.GetProperty("warnings").EnumerateArray(), w => w.GetString()!.Contains("skids", StringComparison.Ordinal)).GetString());
    }

    // the words "rears up" stand only where the robot does; what was not found is told as such
    [Theory]
    [InlineData(PullStatus.Found, "While it pulls", "^tyres$", "found")]
    [InlineData(PullStatus.RearsUp, "As it rears up", "^rears up$", "rears up")]
    [InlineData(PullStatus.NotFound, "As its tyres break away", "^not found$", "not found")]
    public void Each_end_of_the_search_for_the_pull_has_its_words(PullStatus status, string moment, string binds, string word)
    {
        LimitResult found = LimitFinder.Find(ScenarioReader.Check(Repository.Scenario("pull-test")).Scenario!);
        LimitState now = found.Now with { Status = status, Bound = status == PullStatus.Found ? found.Now.Bound : [], Pull = status == PullStatus.Found ? found.Now.Pull : null };
        LimitResult report = found with { Now = now, States = [.. found.States.Select(s => s with { Status = status, Bound = now.Bound, Pull = now.Pull })] };
        IReadOnlyList<AnswerTable> tables = LimitTables.Of(report, null);
        Assert.Equal(moment, tables[1].Caption);
        Assert.All(tables[0].Rows.Single(row => row[0] == "what binds").Skip(1), cell => Assert.Matches(binds, cell));
        using JsonDocument json = JsonDocument.Parse(LimitsJson.Of([ComparedDesign.Of("pull-test", report)], null));
        Assert.Equal(word, json.RootElement.GetProperty("pull_status").GetString());
        Assert.All(json.RootElement.GetProperty("states").EnumerateArray(), s => Assert.Equal(word, s.GetProperty("pull_status").GetString()));
    }
}
