using System.Globalization;
using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Runs;
using PushSim.Scenarios;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>Twenty invented robots across the trade: is each verdict what an experienced builder would believe?</summary>
public class TwentyRobotsTests
{
    // What a builder expects of each (common practice, no source): gearmotors of the usual size hold far more than the tyres, which then pull about weight times friction, a little more where the
    // wheels are lightly loaded; small motors at a low ratio under a heavy robot stall; heavy on sticky tyres hardly turns.
    // Sliding friction as the shelf prints it.
    [Theory]
    [InlineData("150g", 2, "12 mm brushed gearmotor, 6 V, 30:1", "TPU 85A", 0.5, "tyres", true)]
    [InlineData("150g", 4, "12 mm brushed gearmotor, 6 V, 50:1", "silicone", 1.0, "tyres", true)]
    [InlineData("250g", 2, "12 mm brushed gearmotor, 6 V, 100:1", "latex", 1.3, "tyres", true)]
    [InlineData("300g", 4, "12 mm brushed gearmotor, 12 V, 100:1", "PLA", 0.2, "tyres", true)]
    [InlineData("450g", 2, "16 mm brushed gearmotor, 12 V, 30:1", "silicone", 1.0, "tyres", true)]
    [InlineData("450g", 4, "16 mm brushed gearmotor, 12 V, 10:1", "latex", 1.3, "motors", true)]
    [InlineData("500g", 6, "16 mm brushed gearmotor, 12 V, 100:1", "craft foam", 0.65, "tyres", true)]
    [InlineData("900g", 4, "20 mm brushed gearmotor, 12 V, 20:1", "foamed TPU", 0.9, "tyres", true)]
    [InlineData("1kg", 2, "20 mm brushed gearmotor, 12 V, 50:1", "PLA", 0.2, "tyres", true)]
    [InlineData("1.2kg", 4, "25 mm", "rubber", 0.8, "tyres", true)]
    [InlineData("1.36kg", 4, "25 mm brushed gearmotor, 12 V, 50:1", "neoprene", 0.85, "tyres", true)]
    [InlineData("1.36kg", 6, "25 mm brushed gearmotor, 12 V, 10:1", "latex", 1.3, "tyres", true)]
    [InlineData("1.36kg", 8, "25 mm brushed gearmotor, 12 V, 30:1", "urethane 40A", 0.85, "tyres", true)]
    [InlineData("1.5kg", 4, "30 mm", "urethane 80A", 0.45, "tyres", true)]
    [InlineData("3kg", 4, "37 mm", "latex", 1.3, "tyres", true)]
    [InlineData("3kg", 6, "12 mm brushed gearmotor, 6 V, 10:1", "silicone", 1.0, "motors", false)]
    [InlineData("5kg", 4, "37 mm", "silicone", 1.0, "motors", true)]
    [InlineData("7kg", 8, "40 mm", "firm foamed TPU", 0.8, "tyres", true)]
    [InlineData("10kg", 4, "37 mm", "latex", 1.3, "motors", false)]
    [InlineData("15kg", 6, "40 mm", "rubber", 0.8, "tyres", true)]
    public void The_verdict_is_what_a_builder_would_believe(string mass, int wheels, string motor, string tyre, double sliding, string held, bool turns)
    {
        using var scratch = new ScratchFolder();
        foreach (string kind in new[] { "pull-test", "spot" })
        {
            Cli made = Cli.Run("new", "--kind", kind, "--mass", mass, "--wheels", wheels.ToString(CultureInfo.InvariantCulture), "--motor", motor, "--tyre", tyre, "--out", scratch[""]);
            Assert.True(made.Code == ExitCode.Done, made.Error);
        }

        // at the 60 % throttle of the starter
        JsonElement pull = Answer("run", scratch["pull-test.toml"]);
        RunResult spot = Simulator.Run(ScenarioReader.Read(scratch["spot.toml"]).Scenario!);
        Assert.Equal(held, pull.GetProperty("limited_by").GetString());
        double weight = 9.80665 * double.Parse(mass.TrimEnd('k', 'g'), CultureInfo.InvariantCulture) * (mass.EndsWith("kg", StringComparison.Ordinal) ? 1.0 : 1e-3);
        double ratio = pull.GetProperty("pull_plateau_n").GetDouble() / (sliding * weight);
        (double low, double high) = held == "motors" ? (0.0, 1.0) : wheels == 2 ? (0.5, 1.3) : (0.75, 1.4);
        Assert.InRange(ratio, low, high);

        // no builder has four wheels turn as if nothing scrubbed, nor six within the same length worse than four
        double? track = spot.Answers.EffectiveTrackRatio;
        Assert.Equal(turns, RunWords.Verdict(spot).Contains(" turns", StringComparison.Ordinal));
        if (turns)
        {
            (double least, double most) = wheels switch { 2 => (0.99, 1.4), 4 => (1.4, 1.6), _ => (1.05, 1.3) };
            Assert.InRange(track!.Value, least, most);
        }
    }

    // on the starter's low hook it pulls; sticky tyres on one axle rear it up, onto its tail, on a hook as high as its body
    [Fact]
    public void Sticky_tyres_on_two_wheels_rear_up_on_a_high_hook()
    {
        using var scratch = new ScratchFolder();
        Assert.Equal(ExitCode.Done, Cli.Run("new", "--kind", "pull-test", "--mass", "250g", "--wheels", "2", "--tyre", "latex", "--out", scratch[""]).Code);
        string file = scratch["pull-test.toml"];
        File.WriteAllText(file, System.Text.RegularExpressions.Regex.Replace(File.ReadAllText(file), "height = \"\\d+ mm\"", "height = \"25 mm\""));
        JsonElement pull = Answer("run", file, "--no-plots", "--out", scratch["out"]);
        Assert.Equal("finished", pull.GetProperty("status").GetString());
        double[] pitch = [.. File.ReadLines(scratch["out/history.csv"]).Select(l => l.Split(',')).ToArray() is var rows ? rows.Skip(1).Select(r => double.Parse(r[Array.IndexOf(rows[0], "pitch_rad")], System.Globalization.CultureInfo.InvariantCulture)) : []];
        Assert.True(pitch.Min() < -0.03, $"its nose came up by {-pitch.Min()} rad");
        Assert.Contains("rears up on its hook", Answer("limits", file).GetProperty("verdict").GetString());
    }

    private static JsonElement Answer(params string[] args)
    {
        Cli cli = Cli.Run([.. args, "--json"]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        using JsonDocument json = JsonDocument.Parse(cli.Output);
        return json.RootElement.Clone();
    }
}
