using System.Text.Json;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>Bump and best throttle in the JSON of a run: their keys, and that they hold together.</summary>
public class BumpJsonTests
{
    // a straight bump of two masses: any textbook of mechanics
    [Fact]
    public void The_bump_is_that_of_two_masses()
    {
        JsonElement bump = Json().GetProperty("bump");
        Assert.Equal(new[] { "closing_speed_m_per_s", "momentum_n_s", "energy_lost_j", "restitution", "ground_share" }, bump.EnumerateObject().Select(p => p.Name));
        double Number(string key) => bump.GetProperty(key).GetDouble();
        double mass = 1.36 / 2.0;
        (double speed, double share) = (Number("closing_speed_m_per_s"), Number("restitution"));
        Assert.InRange(speed, 0.5, 3.0);

        // stated 20 % at 1 m/s, less when faster
        Assert.InRange(share, 0.05, 0.2);
        Assert.Equal(mass * speed * (1.0 + share), Number("momentum_n_s"), 1e-6);
        Assert.Equal(0.5 * mass * speed * speed * (1.0 - (share * share)), Number("energy_lost_j"), 1e-6);
    }

    [Fact]
    public void The_best_throttle_of_both_is_told_with_its_range()
    {
        JsonElement json = Json();
        foreach (string key in new[] { "best_throttle", "opponent_best_throttle" })
        {
            JsonElement best = json.GetProperty(key);
            double Number(string name) => best.GetProperty(name).GetDouble();
            Assert.InRange(Number("throttle_ratio"), Number("throttle_low_ratio"), Number("throttle_high_ratio"));
            Assert.InRange(Number("worth_ratio"), Number("worth_low_ratio"), Number("worth_high_ratio"));
            Assert.Equal(1.0, Number("commanded_throttle_ratio"));
            Assert.Equal(Number("worth_ratio"), (Number("push_n") / Number("commanded_push_n")) - 1.0, 1e-6);
        }
    }

    private static JsonElement Json()
    {
        using JsonDocument json = JsonDocument.Parse(Cli.Run("run", Repository.Scenario("shove-equals"), "--json").Output);
        return json.RootElement.Clone();
    }
}
