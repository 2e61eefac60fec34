using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Fit;

/// <summary>Weighed tyres correct the floor: what the block says, set in the scenario, gives back the loss on the scale.</summary>
public class WeighedCommandTests
{
    private static readonly string s_weighings = Path.Combine(Repository.Root, "scenarios", "logs", "weighings.csv");

    [Fact]
    public void The_floor_to_paste_loses_what_the_scale_says()
    {
        Cli fit = Cli.Run("fit", s_weighings, "--robot", Repository.Scenario("tyre-wear"), "--json");
        Assert.True(fit.Code == ExitCode.Done, fit.Error);
        JsonElement root = JsonDocument.Parse(fit.Output).RootElement;
        double a = root.GetProperty("abrasiveness").GetDouble();
        Assert.InRange(a, root.GetProperty("abrasiveness_low").GetDouble(), root.GetProperty("abrasiveness_high").GetDouble());
        Assert.StartsWith("[floor]\nabrasiveness = \"", root.GetProperty("toml").GetString());

        // 39 mg in three hours of turning
        Cli run = Cli.Run("run", Repository.Scenario("tyre-wear"), "--set", FormattableString.Invariant($"floor.abrasiveness={a:R}"), "--json");
        double grams = JsonDocument.Parse(run.Output).RootElement.GetProperty("tyre_wear").GetProperty("wheels").EnumerateArray().Sum(w => w.GetProperty("minute_wear_kg").GetDouble());
        Assert.Equal(39e-6 / 180.0, grams, 1e-3 * 39e-6 / 180.0);
    }

    [Fact]
    public void The_screen_shows_the_block_and_the_scenario_is_asked_for()
    {
        Cli fit = Cli.Run("fit", s_weighings, "--robot", Repository.Scenario("tyre-wear"));
        Assert.Contains("\n[floor]\nabrasiveness = ", fit.Output.ReplaceLineEndings("\n"), StringComparison.Ordinal);
        Assert.Contains("mm³/kJ", fit.Output, StringComparison.Ordinal);
        Cli lacks = Cli.Run("fit", s_weighings);
        Assert.Equal(ExitCode.WrongCommandLine, lacks.Code);
        Assert.Contains("--robot", lacks.Error, StringComparison.Ordinal);
    }
}
