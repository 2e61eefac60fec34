using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>Designs side by side: each says what it says alone, and the difference adds up.</summary>
public class BesideTests
{
    private static readonly string[] s_own = ["name", "verdict", "warnings"];

    private static string Robot(string name) => Path.Combine(Repository.Root, "scenarios", "robots", name + ".toml");

    // a variant, a scenario and a robot, in a shove too
    [Theory]
    [InlineData("spot-bouncy-tyre", null, "--set tyre.sleeve.rebound_height=60mm")]
    [InlineData("launch-hard", "scenario:launch-soft", "--set tyre.printed.static_friction=1 --set tyre.printed.kinetic_friction=0.85")]
    [InlineData("shove-downforce", "robot:wombat", "--set chassis.downforce.force=0N")]
    public void Run_tells_of_each_design_what_it_tells_of_it_alone(string name, string? beside, string variant)
    {
        JsonElement own = Json("run", Repository.Scenario(name), beside);
        JsonElement alone = Json(["run", Repository.Scenario(name), .. variant.Split(' ')]);
        Same(own.GetProperty("variants")[0], alone.GetProperty("variants")[0]);

        // what --set makes of the file is the variant
        Same(alone, own.GetProperty("variants")[0], leftOut: ["scenario"]);
        if (beside?.StartsWith("scenario:", StringComparison.Ordinal) == true)
        {
            Same(Shipped.Json("launch-soft").Root, own.GetProperty("variants")[1]);
        }
        else if (beside is not null)
        {
            using var scratch = new ScratchFolder();
            Directory.CreateDirectory(scratch["robots"]);
            Array.ForEach(["mole", "wombat"], r => File.Copy(Robot(r), scratch[$"robots/{r}.toml"]));
            File.WriteAllText(scratch["shove-downforce.toml"], """
                robot = "robots/wombat.toml"
                [floor]
                friction = 1.0
                abrasiveness = 0.005
                air_temperature = "20 °C"
                [manoeuvre]
                kind = "shove"
                [opponent]
                robot = "robots/mole.toml"
                """);
            Same(Json("run", scratch["shove-downforce.toml"]), own.GetProperty("variants")[1]);
        }

        string said = own.GetProperty("verdict").GetString()!;
        Assert.StartsWith(Shipped.Json(name).Root.GetProperty("verdict").GetString()!, said, StringComparison.Ordinal);
    }

    [Fact]
    public void Limits_tell_of_two_robots_what_they_tell_of_each()
    {
        JsonElement both = Json("limits", Robot("mole"), "--beside", Robot("badger"));
        Same(Json("limits", Robot("mole")), both, leftOut: ["verdict", "variants"]);
        JsonElement other = Json("limits", Robot("badger"));
        Same(other, both.GetProperty("variants")[0], leftOut: ["run_binding"]);
        string difference = (Math.Round(both.GetProperty("pull_n").GetDouble(), 2) - Math.Round(other.GetProperty("pull_n").GetDouble(), 2)).ToString("0.00", System.Globalization.CultureInfo.InvariantCulture);
        Assert.Matches($@" badger pulls {other.GetProperty("pull_n").GetDouble():0.00} N, {difference} N \([\d.]+ %\) less than mole\. The tyres limit both\.$", both.GetProperty("verdict").GetString());
    }

    [Fact]
    public void Odds_tell_of_each_design_what_they_tell_of_it_alone_on_the_same_draws()
    {
        string[] few = ["--matches", "30", "--seed", "4"];
        JsonElement both = Json(["odds", Repository.Scenario("shove-downforce"), .. few, "--beside", Robot("wombat")]);
        string contest = both.GetProperty("contest").GetString()!;
        JsonElement magnet = Json(["odds", Repository.Scenario("shove-downforce"), .. few, "--set", "chassis.downforce.force=0 N", "--contest", contest]);
        JsonElement[] variants = [.. both.GetProperty("variants").EnumerateArray()];
        Assert.Equal(["no magnet", "wombat"], variants.Select(v => v.GetProperty("name").GetString()));
        foreach (string key in (string[])["win_share", "lose_share", "stalemate_share", "matches", "failed_matches", "lead_low", "lead_high"])
        {
            Assert.Equal(magnet.GetProperty(key).GetDouble(), variants[0].GetProperty(key).GetDouble());
        }

        Assert.All(variants, v => Assert.Equal(both.GetProperty("win_share").GetDouble() - v.GetProperty("win_share").GetDouble(), v.GetProperty("win_share_difference").GetDouble(), 1e-12));
        Assert.Equal(2, both.GetProperty("verdict").GetString()!.Split("On the same draws").Length - 1);
    }

    [Fact]
    public void The_screen_has_one_table_of_differences_and_the_picture_the_curves_of_both()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("run", Repository.Scenario("launch-soft"), "--beside", Robot("badger"), "--details", "--out", scratch["out"], "--report");
        Assert.Equal((ExitCode.Done, ""), (cli.Code, cli.Error));
        Assert.Single(cli.Output.Split('\n'), l => l.Contains("Side by side", StringComparison.Ordinal));
        Assert.Matches(@"top speed +│ +2\.04 │ +1\.97 │ +-0\.07 \(3\.5 %\), worse", cli.Output);
        Assert.Contains("Speed of the robot, side by side", File.ReadAllText(scratch["out/report.html"]));
        Assert.DoesNotContain("side by side", Cli.Run("run", Repository.Scenario("launch-soft"), "--no-plots", "--out", scratch["out"]).Output, StringComparison.OrdinalIgnoreCase);
    }

    [Fact]
    public void A_file_beside_that_is_wrong_ends_it()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["wrong.toml"], "name = \"x\"\n[chassis]\n");
        Assert.Equal(ExitCode.WrongInput, Cli.Run("run", Repository.Scenario("launch-soft"), "--json", "--beside", scratch["wrong.toml"]).Code);
        Assert.Equal(ExitCode.CannotReadOrWrite, Cli.Run("limits", Repository.Scenario("launch-soft"), "--json", "--beside", scratch["none.toml"]).Code);
    }

    private static JsonElement Json(params string?[] args)
    {
        string[] given = [.. args.OfType<string>().SelectMany(a => a.StartsWith("scenario:", StringComparison.Ordinal) ? ["--beside", Repository.Scenario(a[9..])] : a.StartsWith("robot:", StringComparison.Ordinal) ? ["--beside", Robot(a[6..])] : new[] { a }), "--json"];
        Cli cli = Cli.Run(given);
        Assert.Equal(ExitCode.Done, cli.Code);
        return JsonDocument.Parse(cli.Output).RootElement;
    }

    // every value of the block that stands in the other too
    private static void Same(JsonElement expected, JsonElement actual, string[]? leftOut = null)
    {
        int compared = 0;
        foreach (JsonProperty p in expected.EnumerateObject().Where(p => !s_own.Contains(p.Name) && leftOut?.Contains(p.Name) != true && p.Name is not ("simulation_ms" or "total_ms" or "total_rhs_evaluations" or "variants")))
        {
            if (actual.TryGetProperty(p.Name, out JsonElement other))
            {
                Assert.Equal(p.Value.GetRawText().Replace(" ", "", StringComparison.Ordinal), other.GetRawText().Replace(" ", "", StringComparison.Ordinal));
                compared++;
            }
        }

        Assert.InRange(compared, 20, int.MaxValue);
    }
}
