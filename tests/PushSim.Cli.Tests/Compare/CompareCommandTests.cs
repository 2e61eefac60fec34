using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Compare;

/// <summary>A log beside a run. The own history of a run must come out as it went in; a value that made a log is found again.</summary>
public class CompareCommandTests
{
    private static readonly string s_drive = Path.Combine(Repository.Root, "scenarios", "logs", "drive.csv");

    private static JsonElement Json(params string[] arguments)
    {
        Cli cli = Cli.Run(["compare", .. arguments, "--json"]);
        Assert.Equal("", cli.Error);
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        return json.RootElement.Clone();
    }

    private static JsonElement Channel(JsonElement root, string name) => Assert.Single(root.GetProperty("channels").EnumerateArray(), c => c.GetProperty("name").GetString() == name);

    [Theory]
    [InlineData("commands", 0.02)]
    [InlineData("wheels", 0.05)]
    public void The_history_of_a_run_is_met(string replay, double bound)
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("run", Repository.Scenario("arc"), "--csv", "--no-plots", "--quiet", "--out", scratch["run"]).Code);
        JsonElement root = Json(scratch["run/history.csv"], Repository.Scenario("arc"), "--replay", replay);
        foreach (JsonElement c in root.GetProperty("channels").EnumerateArray())
        {
            Assert.True(c.GetProperty("rms").GetDouble() < bound * c.GetProperty("range").GetDouble(), c.ToString());
            Assert.False(c.GetProperty("identified").GetBoolean());
        }

        Assert.Equal("rad/s", Channel(root, "yaw_rate").GetProperty("unit").GetString());
        Assert.Equal(replay == "commands", root.GetProperty("channels").EnumerateArray().Any(c => c.GetProperty("name").GetString() == "battery_voltage"));
        if (replay == "commands")
        {
            Assert.Equal("rad/s", Channel(root, "left_motor_speed").GetProperty("unit").GetString());
        }
    }

    // made with 210 mohm in place of the file's
    [Fact]
    public void A_value_that_made_the_log_is_found_again_and_judged_on_the_rest()
    {
        JsonElement root = Json(s_drive, Repository.Scenario("arc"), "--identify", "battery.resistance", "--set", "tyre.*.static_friction=0.86", "--set", "tyre.*.kinetic_friction=0.75");
        JsonElement value = Assert.Single(root.GetProperty("values").EnumerateArray());
        Assert.InRange(value.GetProperty("value").GetDouble(), 0.195, 0.225);
        Assert.Equal(0.5 * root.GetProperty("judged_to_s").GetDouble(), root.GetProperty("judged_from_s").GetDouble(), 1e-9);
        Assert.All(root.GetProperty("channels").EnumerateArray(), c => Assert.True(c.GetProperty("identified").GetBoolean() && c.GetProperty("worst_at_s").GetDouble() >= root.GetProperty("judged_from_s").GetDouble()));
        Assert.True(Channel(root, "battery_voltage").GetProperty("rms").GetDouble() < 0.03);
    }

    [Fact]
    public void It_writes_curves_and_a_page()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("compare", s_drive, Repository.Scenario("arc"), "--report", "--format", "png,svg", "--out", scratch["out"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Contains("yaw rate", string.Join(' ', cli.Output.Split((char[]?)null, StringSplitOptions.RemoveEmptyEntries)), StringComparison.Ordinal);
        Assert.All(new[] { "compare.csv", "plot.svg", "report.html" }, f => Assert.True(File.Exists(Path.Combine(scratch["out"], f)), f));
        Assert.StartsWith("time_s,left_wheel_speed_log_rad_per_s,left_wheel_speed_run_rad_per_s", File.ReadAllText(Path.Combine(scratch["out"], "compare.csv")), StringComparison.Ordinal);
    }

    [Theory]
    [InlineData("time_s,yaw_rate_rad_per_s\n0,0\n1,0\n2,0\n", "neither commands nor the speeds of both sides' wheels")]
    [InlineData("yaw_rate_rad_per_s,left_command\n0,0\n1,0\n", "no column is the time")]
    [InlineData("time_s,colour\n0,1\n1,2\n", "no column is a command, speed, yaw rate, voltage, current or force")]
    [InlineData("time_s,throttle\n0,1\n2,1\n1,1\n", "time runs backwards")]
    public void What_is_no_log_is_told(string text, string message)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["log.csv"], text);
        Cli cli = Cli.Run("compare", scratch["log.csv"], Repository.Scenario("arc"));
        Assert.NotEqual(ExitCode.Done, cli.Code);
        Assert.Contains(message, cli.Error, StringComparison.Ordinal);
    }

    // heads as loggers write them; units by their text, commands by the full scale that holds them
    [Theory]
    [InlineData("time_ms,command_of_255,left_rpm,right_rpm\n0,0,0,0\n1000,128,300,300\n2000,255,600,600\n", "left_wheel_speed")]
    [InlineData("Time (s);Throttle [%];Yaw rate [deg/s]\n0;0;0\n1;50;1\n2;50;1\n", "yaw_rate")]
    [InlineData("t,cmd_left,cmd_right,battery_mV\n0,0,0,12000\n1,255,255,11900\n2,255,255,11800\n", "battery_voltage")]
    [InlineData("time_s,left_speed_m_s,right_speed_m_s,gyro_rad_s\n0,0,0,0\n1,0.2,0.3,0.1\n2,0.2,0.3,0.1\n", "yaw_rate")]
    public void Heads_are_matched_by_name_and_unit(string text, string channel)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["log.csv"], text);
        Assert.NotEqual(JsonValueKind.Undefined, Channel(Json(scratch["log.csv"], Repository.Scenario("arc")), channel).ValueKind);
    }
}
