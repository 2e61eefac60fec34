using System.Globalization;
using System.Text.Json;
using PushSim.Analysis.Turning;
using PushSim.Analysis.Wear;
using PushSim.Cli.Shared;
using PushSim.Runs;
using PushSim.Scenarios;
using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>Chatter and hops as the commands tell them: one verdict for one tyre and manoeuvre.</summary>
public class ChatterCommandTests
{
    public static TheoryData<string> Turns => [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Order(StringComparer.Ordinal)
        .Where(f => ScenarioReader.Read(f).Scenario?.Manoeuvre.Traits.Family == ManoeuvreFamily.Turn).Select(f => Path.GetFileNameWithoutExtension(f)!)];

    [Theory]
    [MemberData(nameof(Turns))]
    public void Run_sweep_ranking_and_map_agree_on_a_shipped_turn(string name)
    {
        string file = Repository.Scenario(name);
        ScenarioSettings scenario = ScenarioReader.Read(file).Scenario!;
        JsonElement json = Shipped.Json(name).Root;
        string chatter = json.GetProperty("chatter").GetString()!;
        double? hz = Number(json, "chatter_hz");
        Assert.Equal(chatter == "buzzes", hz is not null);
        Assert.Equal(chatter == "close", json.GetProperty("chatter_tipped_by").ValueKind == JsonValueKind.Object);
        string verdict = json.GetProperty("verdict").GetString()!;
        Assert.Equal(chatter == "buzzes", verdict.Contains("chatter at about", StringComparison.Ordinal) || verdict.Contains("expect chatter", StringComparison.Ordinal));
        Assert.Equal(chatter == "close", verdict.Contains("close to chatter", StringComparison.Ordinal));

        RankedTyre ranked = RankedTyre.Rank([("own", scenario, "")], false, CancellationToken.None)[0];
        Assert.Equal((chatter, hz), (ranked.Chatter.Kind.ToString().ToLowerInvariant(), ranked.Chatter.Frequency));
        Assert.Equal(chatter, StabilityMap.Compute([1.0], [1.0], (_, _) => scenario, 2, 2).Points[0, 0]!.Chatter.ToString().ToLowerInvariant());

        string friction = FormattableString.Invariant($"{scenario.Floor.FrictionScale},{1.1 * scenario.Floor.FrictionScale:0.###}");
        using var scratch = new ScratchFolder();
        Cli sweep = Cli.Run("sweep", file, "--vary", $"floor.friction={friction}", "--ask", "chatter_hz", "--no-plots", "--out", scratch["out"]);
        Assert.Equal(ExitCode.Done, sweep.Code);
        string[] cells = File.ReadAllLines(scratch["out/sweep.csv"])[1].Split(',');
        Assert.Contains(hz is double f ? f.ToString("G8", CultureInfo.InvariantCulture) : "", cells);
    }

    // the shelf's own foam under both commands
    [Theory]
    [InlineData("cast silicone 30A")]
    [InlineData("moulded natural rubber 60A")]
    [InlineData("printed PLA")]
    public void Ranking_tells_of_a_material_what_a_run_on_it_tells(string material)
    {
        JsonElement row = Ranked().Single(r => r.GetProperty("material").GetString() == material);
        ChatterVerdict own = ChatterReview.Of(Simulator.Run(ScenarioReader.Read(Repository.Scenario("tyre-wear"), new ReadOptions { TyreMaterial = material }).Scenario!));
        Assert.Equal(own.Kind.ToString().ToLowerInvariant(), row.GetProperty("chatter").GetString());
        Assert.Equal(own.Frequency, Number(row, "chatter_hz"));
    }

    [Fact]
    public void An_even_floor_without_dust_says_nothing_of_grip_over_runs() => Assert.All(Ranked(), r => Assert.False(r.GetProperty("grip_over_runs_known").GetBoolean()));

    private static JsonElement[] Ranked() => [.. Shipped.Json("tyre-wear", "--rank-tyres").Root.GetProperty("tyre_ranking").EnumerateArray()];

    [Fact]
    public void A_dusty_ranking_tells_grip_over_runs_and_when_to_wipe()
    {
        // the page has the tables of the screen
        Shipped run = Shipped.Json("tyre-dust", "--rank-tyres", "--report", "--no-plots", "--set", "tyre_life.runs=7");
        string page = File.ReadAllText(run["report.html"]);
        Assert.Contains("Grip over runs", page);
        Assert.Contains("wipe every [runs]", page);
        foreach (JsonElement row in run.Root.GetProperty("tyre_ranking").EnumerateArray())
        {
            (double clean, double one, double six) = (Number(row, "grip_clean")!.Value, Number(row, "grip_after_1_run")!.Value, Number(row, "grip_after_6_runs")!.Value);
            Assert.True(clean > one && one > six, row.GetProperty("material").GetString());
            Assert.Equal(clean, Number(row, "clean_friction")!.Value, 1e-9);
            bool hasFallen = six <= 0.8 * clean;
            Assert.Equal(hasFallen, Number(row, "wipe_every_runs") is <= 6.0);
        }
    }

    // a fitted tyre of a material that is known gets grip over runs, one that is not does not
    [Fact]
    public void Fit_tells_grip_over_runs_where_the_material_is_known()
    {
        string[] call = ["fit", Path.Combine(Repository.Root, "scenarios", "logs", "readings.csv"), "--load", "13.3 N", "--robot", Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"), "--json"];
        using JsonDocument unknown = JsonDocument.Parse(Cli.Run(call).Output);
        JsonElement[] none = [.. unknown.RootElement.GetProperty("on_the_robot").GetProperty("tyres").EnumerateArray()];
        Assert.All(none, t => Assert.Equal(t.GetProperty("material_known").GetBoolean(), t.GetProperty("chatter").GetString() != "unknown"));
        Assert.Contains(none, t => t.GetProperty("chatter").GetString() == "unknown" && !t.GetProperty("grip_over_runs_known").GetBoolean());
        using JsonDocument known = JsonDocument.Parse(Cli.Run([.. call, "--material", "silicone"]).Output);
        Assert.All(known.RootElement.GetProperty("on_the_robot").GetProperty("tyres").EnumerateArray(), t =>
        {
            Assert.True(t.GetProperty("grip_over_runs_known").GetBoolean());
            Assert.True(Number(t, "grip_clean") > Number(t, "grip_after_6_runs"));
            Assert.Equal(0.3, Number(t, "floor_dust"));
        });
    }

    // faces bear over their height, so that the thrust of its grippy tyres feeds no hop; the same law in C++ left the wheels down in 26 variants (computed elsewhere)
    [Fact]
    public void Grippy_tyres_against_a_heavy_robot_do_not_hop()
    {
        JsonElement json = Shipped.Json("shove-heavy-grippy").Root;
        Assert.All(new[] { json, json.GetProperty("opponent") }, robot =>
        {
            Assert.Equal("quiet", robot.GetProperty("chatter").GetString());
            Assert.Equal(JsonValueKind.Null, robot.GetProperty("hop_wheel").ValueKind);
        });

        // from the end of the bump on every wheel stays down
        RunResult run = Simulator.Run(ScenarioReader.Check(Repository.Scenario("shove-heavy-grippy")).Scenario!);
        int from = run.Trace.IndexAt(0.4);
        Assert.All(run.Trace.Wheels.Concat(run.Opponent!.Trace.Wheels), w => Assert.All(w.Load.Values[from..].ToArray(), load => Assert.True(load > 0.0)));
    }

    [Fact]
    public void A_quiet_shove_says_nothing_of_hops()
    {
        Cli cli = Shipped.Details("shove-equals").Cli;
        Assert.DoesNotContain("hop", cli.Output);
        Assert.DoesNotContain("since the touch", cli.Output);
    }

    [Fact]
    public void The_starter_of_a_tyres_life_asks_when_to_wipe()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("new", "--kind", "tyre-life", "--out", scratch["life"]).Code);
        Cli cli = Cli.Run("run", scratch["life/tyre-life.toml"], "--details", "--no-plots", "--out", scratch["out"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Matches("grip has fallen by 20 % after [2-9] runs", cli.Output);
        Assert.DoesNotContain("warning", cli.Output);
    }

    private static double? Number(JsonElement element, string key) => element.GetProperty(key) is { ValueKind: JsonValueKind.Number } value ? value.GetDouble() : null;
}
