using System.Text.Json;
using Xunit;

namespace PushSim.Cli.Tests.Odds;

/// <summary>What carries the doubt, with how sure that is.</summary>
public class SureBarTests
{
    // both robots are built alike and start alike, so an input of the one carries as much as that of the other: the difference of two independent estimates is within both intervals together
    [Fact]
    public void Inputs_of_equal_robots_come_out_equal_within_their_bars()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("odds", Repository.Scenario("shove-equals"), "--matches", "600", "--json").Output);
        var shares = json.RootElement.GetProperty("inputs_that_matter").EnumerateArray()
            .ToDictionary(i => i.GetProperty("input").GetString()!, i => (Share: Number(i, "variance_share"), Half: Math.Max(Number(i, "variance_share_high") - Number(i, "variance_share"), Number(i, "variance_share") - Number(i, "variance_share_low"))));
        string[] both = [.. shares.Keys.Where(k => shares.ContainsKey("opponent." + k))];
        Assert.NotEmpty(both);
        Assert.All(both, k => Assert.True(
            Math.Abs(shares[k].Share - shares["opponent." + k].Share) <= Math.Sqrt((shares[k].Half * shares[k].Half) + (shares["opponent." + k].Half * shares["opponent." + k].Half)),
            $"{k}: {shares[k]} and {shares["opponent." + k]}"));

        JsonElement rest = json.RootElement.GetProperty("together_or_not_told");
        Assert.Equal(1.0, Number(rest, "variance_share") + shares.Values.Sum(s => s.Share), 9);
        Assert.True(Number(rest, "variance_share_low") < Number(rest, "variance_share") && Number(rest, "variance_share") < Number(rest, "variance_share_high"));
    }

    // the table has the grey bar's row, and an interval behind each share
    [Fact]
    public void The_table_has_intervals_and_what_is_not_told()
    {
        using var scratch = new ScratchFolder();
        string output = Cli.Run("odds", Repository.Scenario("shove-equals"), "--matches", "200", "--details", "--no-plots", "--out", scratch["out"]).Output;
        Assert.Matches(@"together with others, or not told +│ +\d+\.\d % │ \d+\.\d to \d+\.\d %", output);
    }

    private static double Number(JsonElement e, string name) => e.GetProperty(name).GetDouble();
}
