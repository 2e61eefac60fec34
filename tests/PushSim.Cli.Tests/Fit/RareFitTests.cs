using System.Globalization;
using System.Text;
using System.Text.Json;
using Xunit;

namespace PushSim.Cli.Tests.Fit;

/// <summary>What is seldom asked of a fit: it must come all the same, and whole.</summary>
public class RareFitTests
{
    private static readonly string s_mole = Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml");

    // ten pulls near 0.8 and one of 0.5: odd by Grubbs' test (F. E. Grubbs, Procedures for detecting outlying observations in samples, Technometrics 11, 1969); numbers computed here
    [Fact]
    public void An_odd_pull_is_named_in_words_and_in_json()
    {
        using var scratch = new ScratchFolder();
        var table = new StringBuilder("tyre,force [gf]\n");
        foreach (double force in new[] { 160.0, 161.0, 159.0, 162.0, 100.0, 160.5, 159.5, 161.5, 158.5, 160.0, 161.0 })
        {
            table.Append(CultureInfo.InvariantCulture, $"soft,{force}\n");
        }

        File.WriteAllText(scratch["odd.csv"], table.ToString());
        Assert.Contains("odd pull: number 5 of soft reads 0.500", Cli.Run("fit", scratch["odd.csv"], "--load", "200 gf", "--details").Output.ReplaceLineEndings(" "));
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", scratch["odd.csv"], "--load", "200 gf", "--json").Output);
        JsonElement odd = Assert.Single(json.RootElement.GetProperty("comparison").GetProperty("odd_pulls").EnumerateArray());
        Assert.Equal(5, odd.GetProperty("pull").GetInt32());
        Assert.Equal(0.5, odd.GetProperty("friction").GetDouble(), 1e-9);
    }

    // mole's motors give 40 N at most; a pull of 47 N was no pull of mole
    [Fact]
    public void A_tyre_that_contradicts_the_robot_is_left_out_and_named_in_json()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["two.csv"], "tyre,load [gf],force [gf]\nsoft,200,120\nsoft,200,121\nsoft,200,119\nhard,8000,4800\nhard,8000,4810\nhard,8000,4790\n");
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", scratch["two.csv"], "--robot", s_mole, "--json").Output);
        JsonElement left = Assert.Single(json.RootElement.GetProperty("on_the_robot").GetProperty("left_out").EnumerateArray());
        Assert.Equal("hard", left.GetProperty("tyre").GetString());
        Assert.Contains("contradict", left.GetProperty("reason").GetString());
    }

    // mole weighs 1360 gf, all of it on its four driven wheels; a row's own load is checked as well, pulls at several loads are meant to differ
    [Theory]
    [InlineData("force [gf]\n900\n910\n890\n", "600 gf", true)]
    [InlineData("force [gf]\n900\n910\n890\n", "1300 gf", false)]
    [InlineData("force [gf]\n900\n910\n890\n", "1600 gf", true)]
    [InlineData("force [gf]\n900\n910\n890\n", null, false)]
    [InlineData("force [gf],load [gf]\n500,600\n510,600\n490,600\n", null, true)]
    [InlineData("force [gf],load [gf]\n300,400\n310,400\n900,1300\n910,1300\n", null, false)]
    public void A_load_that_the_robots_weight_contradicts_is_doubted(string table, string? load, bool isOdd)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["pulls.csv"], table);
        Cli cli = Cli.Run(["fit", scratch["pulls.csv"], "--robot", s_mole, "--json", .. load is null ? Array.Empty<string>() : ["--load", load]]);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        string[] odd = [.. json.RootElement.GetProperty("warnings").EnumerateArray().Select(w => w.GetString()!).Where(w => w.Contains("but the robot weighs 13.34 N (1360 gf)", StringComparison.Ordinal))];
        Assert.Equal(isOdd ? 1 : 0, odd.Length);
        Assert.All(odd, w => Assert.Contains("check --load or the load column", w));
    }

    [Theory]
    [InlineData(1.45, false)]
    [InlineData(1.55, true)]
    public void A_friction_above_one_and_a_half_is_doubted(double friction, bool isOdd)
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["pulls.csv"], FormattableString.Invariant($"force [N]\n{10.0 * friction}\n{10.01 * friction}\n{9.99 * friction}\n"));
        using JsonDocument json = JsonDocument.Parse(Cli.Run("fit", scratch["pulls.csv"], "--load", "10 N", "--drag", "--json").Output);
        Assert.Equal(isOdd, json.RootElement.GetProperty("warnings").EnumerateArray().Any(w => w.GetString()!.Contains("tyres of small robots lie between 0.1 and 1.5; check the load", StringComparison.Ordinal)));
    }

    // three pulls that never slid have no sliding friction to compare
    [Fact]
    public void A_tyre_that_never_slid_is_not_told_to_have_too_few_pulls()
    {
        using var scratch = new ScratchFolder();
        File.WriteAllText(scratch["two.csv"], "tyre,force [gf],peak [gf]\nsoft,120,140\nsoft,121,141\nsoft,119,139\nhard,,60\nhard,,61\nhard,,62\n");
        Assert.Contains("hard is not compared: it slid in fewer than three pulls.", Cli.Run("fit", scratch["two.csv"], "--load", "200 gf", "--details").Output);
    }

    // a two-wheeler on skids: how high the tether pulls decides the load on its tyres
    [Fact]
    public void A_height_of_the_tether_that_nobody_gave_is_warned_of()
    {
        using var scratch = new ScratchFolder();
        Cli.Run("new", "--kind", "pull-test", "--wheels", "2", "--mass", "900g", "--out", scratch["two"]);
        string robot = scratch["two/robot.toml"];
        string log = Path.Combine(Repository.Root, "scenarios", "logs", "soft-tyre.csv");
        Assert.Contains("warning: not all wheels are driven", Cli.Run("fit", log, "--robot", robot).Output);
        Assert.DoesNotContain("not all wheels are driven", Cli.Run("fit", log, "--robot", robot, "--height", "20 mm").Output);
        Assert.DoesNotContain("not all wheels are driven", Cli.Run("fit", log, "--robot", s_mole).Output);
    }
}
