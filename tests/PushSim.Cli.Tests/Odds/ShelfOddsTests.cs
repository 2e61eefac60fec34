using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Odds;

/// <summary>Odds of robots whose parts come from the shelf: its tolerances are drawn, one draw for all wheels that share a tyre.</summary>
public class ShelfOddsTests
{
    private const string Motor = "[[motor]]\nname = \"gearmotor\"\nshelf = \"25 mm brushed gearmotor, 12 V, 20:1\"\n\n";
    private const string Tyre = "[[tyre]]\nname = \"soft\"\nshelf = \"moulded natural rubber 60A\"\nwidth = \"20 mm\"\ntread_thickness = \"5 mm\"\n\n";

    [Fact]
    public void Tolerances_of_shelf_parts_are_drawn_once_for_each_part()
    {
        using var scratch = new ScratchFolder();
        string mole = File.ReadAllText(Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"));
        string robot = Put(Put(mole, "[[motor]]", "[[drive]]", Motor).Replace("gear_ratio = 22\n", "", StringComparison.Ordinal), "[[tyre]]", "[[wheel]]", Tyre);
        File.WriteAllText(scratch["mole.toml"], robot);
        File.WriteAllText(scratch["shove.toml"], File.ReadAllText(Repository.Scenario("shove-equals")).Replace("robots/mole.toml", "mole.toml", StringComparison.Ordinal));
        Cli cli = Cli.Run("odds", scratch["shove.toml"], "--matches", "16", "--json");
        Assert.Equal(ExitCode.Done, cli.Code);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        JsonElement[] drawn = [.. json.RootElement.GetProperty("drawn").EnumerateArray()];
        foreach (string side in new[] { "", "opponent." })
        {
            JsonElement resistance = Assert.Single(drawn, d => d.GetProperty("key").GetString() == side + "motor.gearmotor.resistance");
            Assert.Equal(3.5, resistance.GetProperty("middle").GetDouble(), 1e-9);
            Assert.Equal(1.0, resistance.GetProperty("tolerance").GetDouble(), 1e-9);
            Assert.Single(drawn, d => d.GetProperty("key").GetString() == side + "tyre.soft.static_friction");
        }

        Assert.Equal(16, json.RootElement.GetProperty("matches").GetInt32());
        Assert.Equal(0, json.RootElement.GetProperty("failed_matches").GetInt32());

        // on the screen in units that builders write: the tyre's wear is 120 +- 40 mm3, the rotor's inertia 2.9 +- 0.6 g cm2
        string screen = Cli.Run("odds", scratch["shove.toml"], "--matches", "2", "--details", "--no-plots", "--out", scratch["out"]).Output;
        Assert.Matches("wear number of mole's soft tyre +│ +120 │ +± 40 │ mm3", screen);
        Assert.Matches("inertia of the rotor of mole's gearmotor +│ +2\\.9 │ +± 0\\.6 │ g cm2", screen);
        Assert.DoesNotMatch("[0-9]E[-+][0-9]", screen);
    }

    // both robots are the same file
    [Fact]
    public void A_mistake_in_a_file_that_both_use_is_said_once()
    {
        using var scratch = new ScratchFolder();
        string mole = File.ReadAllText(Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"));
        File.WriteAllText(scratch["mole.toml"], mole.Replace("length = \"170 mm\"", "length = \"170 furlongs\"", StringComparison.Ordinal));
        File.WriteAllText(scratch["shove.toml"], File.ReadAllText(Repository.Scenario("shove-equals")).Replace("robots/mole.toml", "mole.toml", StringComparison.Ordinal));
        Cli cli = Cli.Run("check", scratch["shove.toml"]);
        Assert.Equal(ExitCode.WrongInput, cli.Code);
        Assert.Single(cli.Error.Split('\n'), l => l.Contains("error:", StringComparison.Ordinal));
    }

    private static string Put(string text, string from, string to, string block)
    {
        int start = text.IndexOf(from, StringComparison.Ordinal);
        return text[..start] + block + text[text.IndexOf(to, start, StringComparison.Ordinal)..];
    }
}
