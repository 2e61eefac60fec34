using PushSim.Scenarios.Sources;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Scenarios.Tests;

/// <summary>Drivers in files: their table, its old keys, and who steers where nothing is said.</summary>
public class DriverKeysTests
{
    private const string Shove = "question = \"Who?\"\nrobot = \"shrew.toml\"\n[opponent]\nrobot = \"shrew.toml\"\n";

    [Fact]
    public void In_a_shove_both_steer_a_little_and_one_key_turns_it_off()
    {
        ScenarioSettings s = Read(Shove + "driver.steering = \"0 1/rad\"\n[manoeuvre]\nkind = \"shove\"\n");
        Assert.Equal(DriverSettings.ModestSteering, s.Manoeuvre.Driver.Steering);
        Assert.Equal(0.0, s.Opponent!.Manoeuvre.Driver.Steering);
        Assert.Equal(1.0, s.Manoeuvre.Driver.EaseTo);
    }

    [Fact]
    public void Alone_nobody_steers()
    {
        using var files = new SmallFiles();
        Assert.Equal(0.0, ScenarioReader.Read(files.ScenarioPath).Scenario!.Manoeuvre.Driver.Steering);
    }

    [Fact]
    public void The_old_names_are_read_from_where_they_were()
    {
        ScenarioSettings s = Read(Shove + "reaction_delay = \"0.3 s\"\n[manoeuvre]\nkind = \"shove\"\nheading_hold = \"2 1/rad\"\nheading_lag = \"20 ms\"\n[manoeuvre.driver]\nease_to = \"60 %\"\n");
        Assert.Equal((0.3, 0.0), (s.Opponent!.Manoeuvre.Driver.ReactionDelay, s.Manoeuvre.Driver.ReactionDelay));
        Assert.Equal((2.0, 0.02, 0.6), (s.Manoeuvre.Driver.HeadingHold, s.Manoeuvre.Driver.HeadingLag, s.Manoeuvre.Driver.EaseTo));
    }

    [Fact]
    public void Paths_with_the_old_names_are_those_of_today()
    {
        using var files = new SmallFiles(scenario: Shove + "[manoeuvre]\nkind = \"shove\"\n");
        ScenarioSettings s = ScenarioReader.Read(files.ScenarioPath, new ReadOptions { Set = [("manoeuvre.reaction_delay", "0.4 s"), ("opponent.driver.reaction", "0.1 s")] }).Scenario!;
        Assert.Equal((0.4, 0.1), (s.Manoeuvre.Driver.ReactionDelay, s.Opponent!.Manoeuvre.Driver.ReactionDelay));
    }

    [Fact]
    public void A_key_under_both_names_is_complained_about_once()
    {
        using var files = new SmallFiles(scenario: Shove + "[manoeuvre]\nkind = \"shove\"\nreaction_delay = \"0.1 s\"\ndriver.reaction = \"0.2 s\"\n");
        Problem problem = Assert.Single(ScenarioReader.Read(files.ScenarioPath).Problems);
        Assert.Equal((7, "\"reaction_delay\" is the old name of \"reaction\" in [manoeuvre.driver], which is there too"), (problem.Line, problem.Message));
    }

    private static ScenarioSettings Read(string text)
    {
        using var files = new SmallFiles(scenario: text);
        return Assert.IsType<ScenarioSettings>(ScenarioReader.Read(files.ScenarioPath).Scenario);
    }
}
