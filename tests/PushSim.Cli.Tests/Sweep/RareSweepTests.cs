using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Sweep;

/// <summary>What is seldom asked of a sweep: it must come all the same, and whole.</summary>
public class RareSweepTests
{
    [Theory]
    [InlineData("brake", "stop_distance_m")]
    [InlineData("launch-soft", "time_to_1_m_s")]
    [InlineData("spot-turn", "yaw_rate_rad_per_s")]
    [InlineData("arc", "effective_track_ratio")]
    [InlineData("drag-test", "pull_plateau_n")]
    public void A_sweep_shows_what_its_manoeuvre_is_about(string scenario, string key)
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario(scenario), "--vary", "chassis.mass=1.2 kg,1.3 kg", "--json");
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement[] points = [.. json.RootElement.GetProperty("points").EnumerateArray()];
        Assert.Equal(2, points.Length);
        Assert.All(points, p => Assert.NotEqual(0.0, p.GetProperty(key).GetDouble()));
    }

    // files and screen, with drawn matches and without, over several threads
    [Theory]
    [InlineData("pull-test", "drive.*.gear_ratio=10..40", "--points", "5", "--report")]
    [InlineData("shove-equals", "chassis.mass=1.2 kg,1.4 kg", "--odds", "8")]
    public void A_sweep_twice_gives_the_same_bytes(string scenario, string vary, params string[] more)
    {
        using var scratch = new ScratchFolder();
        string[] Files(string name, string threads)
        {
            Cli cli = Cli.Run(["sweep", Repository.Scenario(scenario), "--vary", vary, .. more, "--out", scratch[name], .. more.Contains("--odds") ? ["--threads", threads] : Array.Empty<string>()]);
            Assert.True(cli.Code == ExitCode.Done, cli.Error);

            // journals begin with the order in which threads came, which is no result
            return [.. Directory.GetFiles(scratch[name]).Where(f => !Path.GetFileName(f).StartsWith("part-", StringComparison.Ordinal) && !Path.GetFileName(f).StartsWith('.')).Order(StringComparer.Ordinal)];
        }

        (string[] first, string[] second) = (Files("first", "1"), Files("second", "3"));
        Assert.True(first.Length > 1);
        Assert.Equal(first.Select(Path.GetFileName), second.Select(Path.GetFileName));
        Assert.All(first.Zip(second), p => Assert.True(File.ReadAllBytes(p.First).AsSpan().SequenceEqual(File.ReadAllBytes(p.Second)), Path.GetFileName(p.First)));
    }

    [Fact]
    public void A_sweep_of_too_many_points_says_how_many()
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("launch-soft"), "--vary", "chassis.mass=1 kg..2 kg", "--vary", "drive.*.gear_ratio=10..40", "--points", "101");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("10201 points; at most 10000", cli.Error);
    }

    [Fact]
    public void Odds_in_a_sweep_need_an_opponent()
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("launch-soft"), "--vary", "chassis.mass=1 kg,2 kg", "--odds", "10");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("needs a scenario with an opponent", cli.Error);
    }

    [Fact]
    public void A_swept_number_without_its_unit_is_told_to_have_it_behind()
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("pull-test"), "--vary", "chassis.mass=1..2");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Contains("advice: write it behind each number: kg, g", cli.Error);
        Assert.DoesNotContain("quotes", cli.Error);
    }
}
