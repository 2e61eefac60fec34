using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Runs;
using PushSim.Scenarios;
using PushSim.Simulation;
using PushSim.Words.Answers;
using PushSim.Words.Terms;
using Xunit;

namespace PushSim.Cli.Tests.Words;

/// <summary>The catalogue of answers against what the commands print.</summary>
public class AnswerCatalogueTests
{
    private const string Page = "src/docs/answers.md";

    public static TheoryData<string> Scenarios => [.. Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml").Select(f => Path.GetFileNameWithoutExtension(f)).Order()];

    [Fact]
    public void Keys_are_unique_and_each_has_words() => Assert.All(
        AnswerCatalogue.All.GroupBy(a => a.Key), g => Assert.True(g.Count() == 1 && g.First().Words.Length > 0 && g.First().Digits >= 0, g.Key));

    [Fact]
    public void Files_may_ask_each_answer_and_no_other() => Assert.Equal(
        [.. AnswerCatalogue.All.Select(a => a.Key), .. AnswerCatalogue.All.Where(a => a.IsToldOfOpponent).Select(a => "opponent." + a.Key), .. EnergyWords.Keys.Select(k => "energy." + k)], AskedKeys.All);

    [Fact]
    public void Each_manoeuvre_has_a_default_answer_of_its_own() => Assert.All(Enum.GetValues<ManoeuvreKind>(), k => Assert.All(AnswerCatalogue.Defaults(k), a => Assert.True(a.IsOf(k), k.ToString())));

    // one scenario of each kind of manoeuvre, whose table is read too
    private static readonly Lazy<HashSet<string>> s_tabled = new(() => [.. Scenarios.Select(n => (string)n).GroupBy(n => ScenarioReader.Check(Repository.Scenario(n)).Scenario!.Manoeuvre.Kind).Select(g => g.First())]);

    // what has a value belongs to the manoeuvre, JSON holds each answer as the catalogue reads it, and the table shows those that it is to show
    [Theory]
    [MemberData(nameof(Scenarios))]
    public void Run_prints_what_the_catalogue_reads(string name)
    {
        RunResult result = Simulator.Run(ScenarioReader.Check(Repository.Scenario(name)).Scenario!);
        JsonElement json = Shipped.Json(name).Root;
        string? screen = s_tabled.Value.Contains(name) ? Shipped.Details(name).Cli.Output : null;
        foreach (Answer a in AnswerCatalogue.All)
        {
            double? value = a.Of(result);
            JsonElement told = json.GetProperty(a.Key);
            Assert.Equal(value, told.ValueKind == JsonValueKind.Null ? null : told.GetDouble());
            Assert.True(value is null || a.IsOf(result.Scenario.Manoeuvre.Kind), a.Key);
            if (screen is not null && !a.IsForScripts && value is not null)
            {
                Assert.Contains(a.WordsIn(result), screen, StringComparison.Ordinal);
            }
        }
    }

    [Theory]
    [InlineData("turn_current_a")]
    [InlineData("wear_mm3")]
    [InlineData("chatter_hz")]
    [InlineData("effective_track_ratio")]
    public void A_turn_is_swept_by_its_own_answers(string key)
    {
        Cli cli = Cli.Run("sweep", Repository.Scenario("spot-turn"), "--vary", "drive.*.gear_ratio=15,25", "--ask", key, "--json");
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        Assert.Contains($"\"{key}\"", cli.Output, StringComparison.Ordinal);
    }

    [Fact]
    public void The_page_of_answers_is_up_to_date()
    {
        string path = Path.Combine(Repository.Root, Page);
        if (Environment.GetEnvironmentVariable("PUSHSIM_REWRITE") == "1")
        {
            File.WriteAllText(path, AnswerReference.Make());
        }

        Assert.True(File.Exists(path) && File.ReadAllText(path).ReplaceLineEndings("\n") == AnswerReference.Make(), $"{Page} is not what the catalogue makes: run this test once with PUSHSIM_REWRITE=1 and commit it");
    }
}
