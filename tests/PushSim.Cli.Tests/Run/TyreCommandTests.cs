using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Shelf;
using Xunit;

namespace PushSim.Cli.Tests.Run;

public class TyreCommandTests
{
    [Fact]
    public void The_shelf_lists_every_material_verdict_first()
    {
        Cli cli = Cli.Run("shelf");
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.StartsWith($"{PartShelf.Tyres.Parts.Count} tyre materials, {PartShelf.Motors.Parts.Count} motors, ", cli.Output);
        Assert.Contains(" on the shelf.", cli.Output);
        Assert.Equal(PartShelf.All.SelectMany(s => s.Parts).Select(m => m.Name), Cli.Run("shelf", "--quiet").Output.Split('\n').Select(l => l.TrimEnd('\r')).Where(l => l.Length > 0));
    }

    [Fact]
    public void A_material_shows_each_value_with_its_source()
    {
        Cli cli = Cli.Run("shelf", "sheet EVA foam", "--details");
        Assert.Contains("1 tyre material of that name.", cli.Output);
        Assert.Contains("275 mm3", cli.Output);
        Assert.Equal(cli.Output, Cli.Run("shelf", "Eva Foam", "--details").Output);
        Assert.Equal(cli.Output, Cli.Run("shelf", "craft foam, closed-cell", "--details").Output);
        Assert.Contains("Also: EVA, ", cli.Output);
        Assert.Contains("estimate", cli.Output);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("shelf", "cast polyurethane", "--json").Output);
        JsonElement tyres = json.RootElement.GetProperty("tyres");
        Assert.Equal(3, tyres.GetArrayLength());
        Assert.Contains("PU 40A", tyres[0].GetProperty("aliases").EnumerateArray().Select(a => a.GetString()));
        Assert.All(tyres[0].GetProperty("values").EnumerateArray(), v => Assert.NotEqual("", v.GetProperty("source").GetString()));
        Assert.Equal("shelf", json.RootElement.GetProperty("command").GetString());
    }

    // three of the 28 mm motors have 25:1
    [Fact]
    public void Words_in_a_row_go_before_words_apart()
    {
        string[] names = Cli.Run("shelf", "25 mm", "--quiet").Output.Split('\n', StringSplitOptions.RemoveEmptyEntries);
        Assert.Equal(4, names.Length);
        Assert.All(names, n => Assert.StartsWith("25 mm", n));
        Assert.NotEqual("", Cli.Run("shelf", "soft foam", "--quiet").Output.Trim());
    }

    [Fact]
    public void An_unknown_material_is_a_wrong_command_line()
    {
        Assert.Equal(Cli.Run("shelf", "tyres").Output, Cli.Run("shelf", "tyre").Output);
        Assert.Equal(Cli.Run("shelf", "cells").Output, Cli.Run("shelf", "battery").Output);
        Cli cli = Cli.Run("shelf", "granite");
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Equal("", cli.Output);
        Assert.Contains("granite", cli.Error);
        Assert.Equal(ExitCode.WrongCommandLine, Cli.Run("shelf", " ").Code);
    }

    [Fact]
    public void Derived_numbers_come_with_source_and_error()
    {
        Cli cli = Cli.Run("check", "--derived", Repository.Scenario("tyre-wear"));
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.StartsWith("No mistakes found.", cli.Output);
        foreach (string part in new[] { "vertical stiffness", "body stiffness", "body damping", "tread mass", "contact length", "breakaway deflection", "static_friction", "Kt =", "spin inertia" })
        {
            string[] lines = cli.Output.Split('\n');
            int line = Array.FindIndex(lines, l => l.Contains(part, StringComparison.Ordinal));
            Assert.True(line >= 0, part);
            Assert.Matches("^      uncertainty: \\S", lines[(line + 1)..].First(l => !l.StartsWith("    ", StringComparison.Ordinal) || l.StartsWith("      ", StringComparison.Ordinal)));
        }

        using JsonDocument json = JsonDocument.Parse(Cli.Run("check", "--derived", "--json", Repository.Scenario("tyre-wear")).Output);
        Assert.True(json.RootElement.GetProperty("derived").GetArrayLength() > 20);
        Assert.False(JsonDocument.Parse(Cli.Run("check", "--json", Repository.Scenario("tyre-wear")).Output).RootElement.TryGetProperty("derived", out _));
    }

    [Fact]
    public void Wheels_without_a_wear_number_are_named_where_wear_is_told()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        string robot = File.ReadAllText(scratch["robots/mole.toml"]);
        int wheel = robot.IndexOf("[[wheel]]", StringComparison.Ordinal);
        string tyre = robot[robot.IndexOf("[[tyre]]", StringComparison.Ordinal)..wheel].Replace("name = \"soft\"", "name = \"bare\"", StringComparison.Ordinal).Replace("wear = \"200 mm3\"", "", StringComparison.Ordinal);
        string first = robot[wheel..].Replace("tyre = \"soft\"", "tyre = \"bare\"", StringComparison.Ordinal)[..120] + robot[(wheel + 120)..];
        File.WriteAllText(scratch["robots/mole.toml"], robot[..wheel] + tyre + first);
        File.Copy(Repository.Scenario("spot-turn"), scratch["turn.toml"]);
        string output = Cli.Run("run", scratch["turn.toml"], "--details", "--no-plots", "--out", scratch["out"]).Output;
        Assert.Contains("tyre wear, where known", output, StringComparison.Ordinal);
        Assert.Contains("have a wear number (not front left)", output.ReplaceLineEndings(" ").Replace("  ", " ", StringComparison.Ordinal), StringComparison.Ordinal);
        Assert.DoesNotContain("all wheels", output, StringComparison.Ordinal);
    }

    [Fact]
    public void A_turn_tells_its_wear_and_the_limits_of_it()
    {
        Shipped run = Shipped.Text("tyre-wear");
        Cli cli = Shipped.Details("tyre-wear").Cli;
        Assert.Contains("a metre straight", cli.Output);
        Assert.Contains("times the mean of all wheels", cli.Output);
        Assert.Contains("rank, they do not forecast", cli.Output);
        Assert.True(new FileInfo(run["wear.png"]).Length > 5000);
        Assert.False(File.Exists(run["grip.png"]));
        Assert.False(File.Exists(run["tyres.png"]));
        JsonElement root = Shipped.Json("tyre-wear").Root;
        JsonElement wear = root.GetProperty("tyre_wear");
        Assert.Equal(60.0, wear.GetProperty("match_s").GetDouble());
        double sum = wear.GetProperty("wheels").EnumerateArray().Sum(w => w.GetProperty("run_wear_m3").GetDouble());
        Assert.Equal(root.GetProperty("wear_mm3").GetDouble(), 1e9 * sum, 1e-9);
        double work = wear.GetProperty("wheels").EnumerateArray().Sum(w => w.GetProperty("run_friction_work_j").GetDouble());
        Assert.Equal(root.GetProperty("wear_mm3_per_kj").GetDouble(), 1e12 * sum / work, 1e-9);
        double ledger = root.GetProperty("energy").GetProperty("tread_j").GetDouble();
        Assert.Equal(ledger, work, 1e-9 * ledger);
    }

    [Fact]
    public void Dust_tells_the_grip_over_the_runs()
    {
        Shipped run = Shipped.Json("tyre-dust");
        JsonElement grip = run.Root.GetProperty("tyre_grip");
        JsonElement[] runs = [.. grip.GetProperty("runs").EnumerateArray()];
        Assert.Equal(17, runs.Length);
        Assert.Equal(1.0, runs[0].GetProperty("grip_share").GetDouble());

        // the sticky front tyres foul faster than the plain rear ones
        JsonElement first = runs[1].GetProperty("wheel_grip_shares");
        Assert.True(first[0].GetDouble() < first[2].GetDouble());
        Assert.InRange(grip.GetProperty("runs_until_loss").GetInt32(), 1, 14);
        Assert.True(new FileInfo(run["grip.png"]).Length > 5000);
    }

    [Fact]
    public void The_shelf_is_ranked_on_the_robot()
    {
        Shipped run = Shipped.Json("tyre-wear", "--rank-tyres");
        JsonElement[] ranking = [.. run.Root.GetProperty("tyre_ranking").EnumerateArray()];
        Assert.Equal(PartShelf.Tyres.Parts.Count, ranking.Length);
        double[] depths = [.. ranking.Select(r => r.GetProperty("match_wear_depth_m").GetDouble())];
        Assert.Equal(depths.Order(), depths);
        Assert.Equal("sheet foamed TPU 0.12", Assert.Single(ranking, r => r.GetProperty("material").GetString() == "sheet foamed TPU 0.12").GetProperty("material").GetString());
        Assert.True(new FileInfo(run["tyres.png"]).Length > 5000);
    }
}
