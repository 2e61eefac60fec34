using System.Text.Json;
using PushSim.Words.Matches;
using Xunit;

namespace PushSim.Workbench.Tests.Server;

/// <summary>Strips and odds against the engine's own matches.</summary>
public class StripTests
{
    [Fact]
    public async Task The_winner_flips_where_the_strip_says()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        await open.PostAsync("/api/strips", "{\"keys\":[\"a.chassis.mass\",\"b.chassis.mass\"]}");
        JsonElement strip = await open.EventAsync("strip", s => s.GetProperty("key").GetString() == "a.chassis.mass" && s.GetProperty("done").GetBoolean());
        Assert.Equal(24, strip.GetProperty("points").GetArrayLength());
        double flip = strip.GetProperty("flip").GetProperty("x").GetDouble();
        Assert.Equal(1, Winner(open, flip - 10.0));
        Assert.Equal(0, Winner(open, flip + 10.0));
    }

    [Fact]
    public async Task Odds_are_those_of_the_command_and_narrow()
    {
        await using OpenServer open = await OpenServer.StartAsync();
        await open.PostAsync("/api/mode", "{\"mode\":\"odds\"}");
        JsonElement first = await open.EventAsync("odds", _ => true);
        JsonElement last = await open.EventAsync("odds", o => o.GetProperty("done").GetBoolean());
        double Width(JsonElement o) => o.GetProperty("high").GetDouble() - o.GetProperty("low").GetDouble();
        Assert.True(Width(last) < 0.5 * Width(first), $"first {Width(first):0.000}, last {Width(last):0.000}");
        Assert.True(Width(last) <= 0.06, $"expected 0.06 at most, actual {Width(last):0.000}");

        // the same draws by the scenario layer alone
        var scenario = Scenarios.Drawing.DrawableScenario.Open(open["shove-heavy-grippy.toml"]).Scenario!;
        var source = new Scenarios.Drawing.FileMatchSource(scenario, new Analysis.Chance.ContestKey(1, scenario.Label));
        int wins = 0;
        new Analysis.Chance.BatchMatchRunner(source.Middle).Run(source, [.. Enumerable.Range(0, (int)first.GetProperty("matches").GetInt64()).Select(i => (long)i)], e => wins += e.Winner == 0 ? 1 : 0, 1, CancellationToken.None);
        Assert.Equal(wins, first.GetProperty("win").GetInt32());
    }

    [Fact]
    public async Task A_pull_has_a_strip_of_its_number()
    {
        await using OpenServer open = await OpenServer.StartAsync("robots/mole.toml");
        await open.PostAsync("/api/strips", "{\"keys\":[\"a.tyre.soft.kinetic_friction\"]}");
        JsonElement strip = await open.EventAsync("strip", _ => true);
        double[] heights = [.. strip.GetProperty("points").EnumerateArray().Select(p => p.GetProperty("height").GetDouble())];
        Assert.Equal(heights.Order(), heights);
        Assert.Contains("best at 1", strip.GetProperty("words").GetString());
    }

    [Theory]
    [InlineData(1300.0, 10.0, "flips at 1230 g: 70 g to spare")]
    [InlineData(1235.0, 10.0, "flips at 1230 g, inside the ± 10 g: not safe")]
    [InlineData(1300.0, 0.0, "flips at 1230 g: 70 g to spare")]
    public void The_flip_in_words(double value, double tolerance, string expected) =>
        Assert.Equal(expected, StripWords.OfMatch([(1000.0, 1, 2.0), (1500.0, 0, 2.0)], [(1230.4, 1, 0)], value, tolerance, "g", ("mole", "badger")));

    // a fifth to five times the value, whatever its distance
    [Theory]
    [InlineData(250.0, "flips at 1230 g, inside the x/ 5: not safe")]
    [InlineData(240.0, "flips at 1230 g: 990 g to spare")]
    public void The_flip_inside_a_factor(double value, string expected) =>
        Assert.Equal(expected, StripWords.OfMatch([(1000.0, 1, 2.0), (1500.0, 0, 2.0)], [(1230.4, 1, 0)], value, 4.0 * value, "g", ("mole", "badger"), factor: 5.0));

    [Fact]
    public void A_flip_that_is_not_searched_closer_yet_is_said_to_be_about() => Assert.Equal(
        "flips at about 1150 g", StripWords.OfMatch([(1000.0, 1, 2.0), (1300.0, 0, 2.0)], [(1150.0, 1, 0)], 1100.0, 10.0, "g", ("mole", "badger"), isRough: true));

    [Fact]
    public void A_band_in_which_nobody_moves_in_words() => Assert.Equal(
        "flips at 3 A: 1 A to spare; nobody moves below 1.55 A",
        StripWords.OfMatch([(1.0, -1, 3.0), (2.0, 1, 2.0), (4.0, 0, 2.0)], [(1.55, -1, 1), (3.0, 1, 0)], 4.0, 0.0, "A", ("mole", "badger")));

    [Theory]
    [InlineData(0, "no flip; fastest win at 2: 1.50 s")]
    [InlineData(1, "no flip: badger wins; slowest at 1: 2.00 s")]
    [InlineData(-1, "nobody moves at any place")]
    public void No_flip_in_words(int winner, string expected) =>
        Assert.Equal(expected, StripWords.OfMatch([(1.0, winner, 2.0), (2.0, winner, 1.5)], [], 1.0, 0.0, "", ("mole", "badger")));

    private static int Winner(OpenServer open, double mass) =>
        Runs.Simulator.Run(Scenarios.ScenarioReader.Read(open["shove-heavy-grippy.toml"], new Scenarios.Sources.ReadOptions { Set = [("chassis.mass", $"{mass.ToString(System.Globalization.CultureInfo.InvariantCulture)} g")] }).Scenario!).Shove!.Winner;
}
