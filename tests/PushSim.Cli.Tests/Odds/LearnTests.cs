using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Odds;

/// <summary>`odds --learn`: a record of real matches, right and wrong.</summary>
public class LearnTests
{
    [Fact]
    public void Wins_make_the_next_win_likelier()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        JsonElement won = Learned(scratch, "winner\nmole\nmole\nMole\nmole\n");
        JsonElement lost = Learned(scratch, "# at the league, 3 June\nday,winner\n1,mole B\n1,mole B\n2,none\n2,mole B\n");
        Assert.Equal((4, 4), (won.GetProperty("real_matches").GetInt32(), won.GetProperty("real_wins").GetInt32()));
        Assert.Equal((4, 0), (lost.GetProperty("real_matches").GetInt32(), lost.GetProperty("real_wins").GetInt32()));
        Assert.Equal(won.GetProperty("win_share_before").GetDouble(), lost.GetProperty("win_share_before").GetDouble());
        Assert.True(won.GetProperty("win_share").GetDouble() > won.GetProperty("win_share_before").GetDouble());
        Assert.True(lost.GetProperty("win_share").GetDouble() < won.GetProperty("win_share_before").GetDouble());
        Assert.InRange(won.GetProperty("effective_pairs").GetDouble(), 1.0, won.GetProperty("pairs").GetInt32());
    }

    // (0.2^2 + 0.7^2) / 2
    [Fact]
    public void Past_predictions_are_scored()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Assert.Equal(0.265, Learned(scratch, "winner,predicted\nmole,80 %\nmole B,0.7\n").GetProperty("brier_score").GetDouble(), 1e-12);
    }

    [Theory]
    [InlineData("who\nmole\n", "no column \"winner\"")]
    [InlineData("winner\nmole\nferret\n", "results.csv:3:1: error: \"ferret\" is neither mole nor mole B")]
    [InlineData("winner,predicted\nmole,3\n", "\"3\" is no share of wins")]
    [InlineData("", "no column \"winner\"")]
    public void A_wrong_record_is_told_with_its_place(string text, string complaint)
    {
        using ScratchFolder scratch = ShortMatches.Files();
        File.WriteAllText(scratch["results.csv"], text);
        Cli cli = Cli.Run("odds", scratch["short.toml"], "--matches", "64", "--learn", scratch["results.csv"], "--json");
        Assert.Equal(ExitCode.WrongInput, cli.Code);
        Assert.Contains(complaint, cli.Error);
        Assert.Equal("", cli.Output);
    }

    [Fact]
    public void A_record_that_is_not_there_is_told()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        Assert.Contains("it is not there", Cli.Run("odds", scratch["short.toml"], "--learn", scratch["no.csv"], "--json").Error);
    }

    private static JsonElement Learned(ScratchFolder scratch, string text)
    {
        File.WriteAllText(scratch["results.csv"], text);
        Cli cli = Cli.Run("odds", scratch["short.toml"], "--matches", "64", "--learn", scratch["results.csv"], "--json");
        Assert.True(cli.Code == 0, cli.Error);
        return JsonDocument.Parse(cli.Output).RootElement.GetProperty("learned");
    }
}
