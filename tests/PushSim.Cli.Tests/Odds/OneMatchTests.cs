using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Odds;

/// <summary>One match of many, shown like a run.</summary>
public class OneMatchTests
{
    [Fact]
    public void One_match_of_many_is_shown_with_its_history_and_pictures()
    {
        using var scratch = new ScratchFolder();
        Cli cli = Cli.Run("odds", Repository.Scenario("shove-equals"), "--match", "3", "--out", scratch["out"]);
        Assert.True(cli.Code == ExitCode.Done, cli.Error);
        Assert.True(File.Exists(Path.Combine(scratch["out"], "history.csv")));
        Assert.True(new FileInfo(Path.Combine(scratch["out"], "plot.png")).Length > 10_000);

        // the same match, alone: its verdict does not hang on the kind of output
        using JsonDocument json = JsonDocument.Parse(Cli.Run("odds", Repository.Scenario("shove-equals"), "--match", "3", "--json").Output);
        string verdict = json.RootElement.GetProperty("verdict").GetString()!;
        Assert.Equal(verdict, Cli.Run("odds", Repository.Scenario("shove-equals"), "--match", "3", "--quiet").Output.Trim());
    }
}
