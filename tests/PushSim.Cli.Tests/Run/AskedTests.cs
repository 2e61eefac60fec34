using System.Globalization;
using System.Text.Json;
using System.Text.RegularExpressions;
using PushSim.Cli.Shared;
using PushSim.Scenarios;
using PushSim.Simulation;
using PushSim.Words.Answers;
using Xunit;

namespace PushSim.Cli.Tests.Run;

/// <summary>A verdict tells every quantity that its file asks, with the value of the table.</summary>
public class AskedTests
{
    public static TheoryData<string> Scenarios => [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order()];

    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Every_shipped_verdict_tells_what_is_asked(string name)
    {
        ScenarioSettings scenario = ScenarioReader.Read(Repository.Scenario(name)).Scenario!;
        Answer[] asked = [.. AnswerCatalogue.Asked(scenario)];
        Assert.NotEmpty(asked);
        using JsonDocument json = JsonDocument.Parse(Cli.Run("run", Repository.Scenario(name), "--json").Output);
        string verdict = json.RootElement.GetProperty("verdict").GetString()!;
        Assert.All(asked, a => Assert.True(IsTold(a, json.RootElement.GetProperty(a.Key), verdict), $"{a.Key} is not in: {verdict}"));

        // the sentence without its numbers tells none of them
        string mute = Regex.Replace(verdict, @"\d+(\.\d+)?", "some");
        Assert.All(asked.Where(a => json.RootElement.GetProperty(a.Key).ValueKind == JsonValueKind.Number), a => Assert.False(IsTold(a, json.RootElement.GetProperty(a.Key), mute), a.Key));
    }

    // of a launch: what belongs to it, what it leaves out of its sentence, what it has none of, and what has no value
    [Theory]
    [InlineData("peak_battery_current_a", @" Its battery current peaks at \d+\.\d A\.$")]
    [InlineData("energy.copper_j", @" Energy: motor windings \d+\.\d{3} J\.$")]
    [InlineData("chatter_hz", " No chatter of its tyres is found\\.$")]
    [InlineData("pull_plateau_n", " Pull, steady: none\\.$")]
    [InlineData("opponent.chatter_hz", " No chatter of the opponent's tyres is found\\.$")]
    public void What_the_sentence_leaves_out_stands_behind_it(string key, string end)
    {
        using var scratch = new ScratchFolder();
        Assert.DoesNotMatch(end, Verdict(scratch, "top_speed_m_per_s"));
        Assert.Matches(end, Verdict(scratch, key));
    }

    [Fact]
    public void A_question_is_not_needed() => Assert.Equal(ExitCode.Done, Cli.Run("check", File(new ScratchFolder(), "robot = \"robots/mole.toml\"\n")).Code);

    [Theory]
    [InlineData("top_sped_m_per_s", "did you mean \"top_speed_m_per_s\"?")]
    [InlineData("oponent.chatter_hz", "did you mean \"opponent.chatter_hz\"?")]
    [InlineData("colour", "the keys are those of run --json")]
    public void An_unknown_key_draws_the_nearest(string key, string advice)
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("check", File(scratch, $"ask = [\"travel_m\", \"{key}\"]\nrobot = \"robots/mole.toml\"\n"));
        Assert.Equal(ExitCode.WrongInput, cli.Code);
        Assert.Contains($"asked.toml:1:20: error: no run gives \"{key}\"", cli.Error);
        Assert.Contains(advice, cli.Error);
    }

    private static string Verdict(ScratchFolder scratch, string key) =>
        JsonDocument.Parse(Cli.Run("run", File(scratch, $"ask = [\"{key}\"]\nrobot = \"robots/mole.toml\"\n"), "--json").Output).RootElement.GetProperty("verdict").GetString()!;

    private static string File(ScratchFolder scratch, string head)
    {
        Directory.CreateDirectory(scratch["robots"]);
        System.IO.File.Copy(Path.Combine(Repository.Root, "scenarios", "robots", "mole.toml"), scratch["robots/mole.toml"], overwrite: true);
        System.IO.File.WriteAllText(scratch["asked.toml"], head + "[manoeuvre]\nkind = \"launch\"\nend = \"1 s\"\n");
        return scratch["asked.toml"];
    }

    // by the printed value, apart from what the program itself looks for
    private static bool IsTold(Answer a, JsonElement value, string verdict)
    {
        if (value.ValueKind == JsonValueKind.Null)
        {
            return Regex.IsMatch(verdict, @"\bnone\b|\b[Nn]o \w+|not known|never|does not");
        }

        string shown = a.Shown(Math.Abs(value.GetDouble()));
        return double.Parse(shown, CultureInfo.InvariantCulture) >= 0.0 && Regex.IsMatch(verdict, $@"(?<![\d.]){Regex.Escape(shown)}{(a.Unit.Length > 0 ? " " + Regex.Escape(a.Unit) : "")}(?![\w/]|\.\d)");
    }
}
