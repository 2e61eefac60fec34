using System.Diagnostics;
using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Check;

public class PlausibilityCommandTests
{
    private const string Launch = "question = \"How fast?\"\nrobot = \"robots/NAME.toml\"\n[manoeuvre]\nkind = \"launch\"\nthrottle = 1.0\nstart = \"0.05 s\"\nend = \"3 s\"\n";

    public static TheoryData<string> Robots => [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios", "robots"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order(StringComparer.Ordinal)];

    // one answer of three commands: limits is told by the same steps, the run integrates: 0.1 % apart in speed, 1.2 % in time, and 4 % less in current, whose
    // peak front and rear wheels do not pass at one time. Computed here
    [Theory]
    [MemberData(nameof(Robots))]
    public void Check_limits_and_run_tell_one_robot(string name)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        File.WriteAllText(scratch["launch.toml"], Launch.Replace("NAME", name, StringComparison.Ordinal));
        JsonElement ofFile = Assert.Single(Checked(scratch[$"robots/{name}.toml"]).GetProperty("plausibility").EnumerateArray());
        JsonElement check = Assert.Single(Checked(scratch["launch.toml"]).GetProperty("plausibility").EnumerateArray());
        foreach (string key in new[] { "top_speed_m_per_s", "pull_force_n", "weight_n", "first_metre_s", "current_a" })
        {
            Assert.Equal(Number(ofFile, key), Number(check, key));
        }

        JsonElement limits = Json("limits", scratch["launch.toml"], "--json", "--no-plots", "--out", scratch["l"]);
        Near(Number(limits, "top_speed_m_per_s"), Number(check, "top_speed_m_per_s"), 1e-12);
        Near(Number(limits, "pull_n"), Number(check, "pull_force_n"), 1e-12);
        Near(Number(limits, "launch_time_s"), Number(check, "first_metre_s"), 1e-12);
        JsonElement run = Json("run", scratch["launch.toml"], "--json", "--no-plots", "--out", scratch["r"]);
        Near(Number(run, "top_speed_m_per_s"), Number(check, "top_speed_m_per_s"), 0.02);
        Near(Number(run, "time_to_1_m_s"), Number(check, "first_metre_s"), 0.02);
        Near(Number(run, "peak_battery_current_a"), Number(check, "current_a"), 0.05);
        Assert.Empty(Checked(scratch["launch.toml"]).GetProperty("warnings").EnumerateArray());
    }

    [Fact]
    public void Check_ends_with_a_line_for_each_robot()
    {
        string[] lines = Whole(Cli.Run("check", Repository.Scenario("shove-heavy-grippy")).Output);
        Assert.Equal("No mistakes found.", lines[0].TrimEnd());
        Assert.Equal(3, lines.Length);
        Assert.All(lines[1..], l => Assert.Matches(@"^\w+: top speed about [0-9.]+ m/s, pulls [0-9.]+ N of its [0-9.]+ N weight \(tyres\), first metre about [0-9.]+ s, up to [0-9.]+ A", l));
    }

    // the shaft's speed taken for the bare motor's: 720 rpm behind 20:1 once more. By hand: 36 rpm of a wheel of 54 mm are 0.10 m/s less the sag
    [Fact]
    public void What_cannot_be_meant_is_a_warning_of_check_limits_and_run()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        string robot = File.ReadAllText(scratch["robots/vole.toml"]);
        string wrong = robot.Replace("gear_ratio = 20\n", "", StringComparison.Ordinal).Replace("stall_torque = \"5.4 kgf·cm\"\n", "", StringComparison.Ordinal)
            .Replace("[[drive]]\n", "[[drive]]\ngear_ratio = 20\n", StringComparison.Ordinal);
        Assert.NotEqual(robot, wrong);
        File.WriteAllText(scratch["robots/vole.toml"], wrong);
        File.WriteAllText(scratch["launch.toml"], Launch.Replace("NAME", "vole", StringComparison.Ordinal).Replace("3 s", "0.2 s", StringComparison.Ordinal));
        Cli check = Cli.Run("check", scratch["launch.toml"]);
        Assert.Equal(ExitCode.Done, check.Code);
        Assert.Contains("write output_speed in place of no_load_speed", check.Error);
        Assert.Contains("warnings.", check.Output.Split('\n')[0]);
        string[] told = [.. Whole(check.Output).Where(l => l.StartsWith("warning: vole: ", StringComparison.Ordinal)).Select(l => l["warning: vole: ".Length..])];
        Assert.Contains(told, t => t.Contains("times the", StringComparison.Ordinal) && t.StartsWith("its motors give", StringComparison.Ordinal));
        foreach (string command in new[] { "limits", "run" })
        {
            JsonElement json = Json(command, scratch["launch.toml"], "--json", "--no-plots", "--out", scratch[command]);
            string[] warnings = [.. json.GetProperty("warnings").EnumerateArray().Select(w => w.GetString()!)];
            Assert.All(told, t => Assert.Contains(t, warnings));
        }

        Assert.Equal(told.Select(t => "vole: " + t), Checked(scratch["launch.toml"]).GetProperty("warnings").EnumerateArray().Select(w => w.GetString()));
    }

    // lines as they were before they were wrapped
    private static string[] Whole(string output) => output.ReplaceLineEndings("\n").TrimEnd().Replace("\n  ", " ", StringComparison.Ordinal).Split('\n');

    // the process's first file pays for compilation, not counted here: about 0.2 s of one core, measured here
    [Fact]
    public void It_takes_no_time_that_anyone_notices()
    {
        string file = Repository.Scenario("shove-heavy-grippy");
        Cli.Run("check", file);
        long best = long.MaxValue;
        for (int i = 0; i < 5; i++)
        {
            var watch = Stopwatch.StartNew();
            Cli.Run("check", file);
            best = Math.Min(best, watch.ElapsedMilliseconds);
        }

        Assert.True(best < 300, $"{best} ms at best, 300 ms allowed");
    }

    private static void Near(double expected, double actual, double share) =>
        Assert.True(Math.Abs(actual - expected) <= share * Math.Abs(expected), FormattableString.Invariant($"expected {expected:R}, got {actual:R}, {100.0 * ((actual / expected) - 1.0):G3} % off, {100.0 * share:G3} % allowed"));

    private static double Number(JsonElement e, string key) => e.GetProperty(key).GetDouble();

    private static JsonElement Checked(string file) => Json("check", file, "--json");

    private static JsonElement Json(params string[] args)
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run(args).Output);
        return json.RootElement.Clone();
    }
}
