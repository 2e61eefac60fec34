using System.Text.Json;
using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Matches;

/// <summary>What `cluster` prints, and that it plays. tests/cluster.sh runs the same scripts on a batch system and with GNU parallel.</summary>
public class ClusterCommandTests
{
    private static readonly string s_program = typeof(CommandLineApp).Assembly.Location;

    // the line of each script that plays a part, with the part's number set by hand as its system would
    [Theory]
    [InlineData("array", "SLURM_ARRAY_TASK_ID=$1", "exec ")]
    [InlineData("container", "JOB_COMPLETION_INDEX=$(($1 - 1))", "          exec ")]
    public async Task The_printed_scripts_play_and_join_the_parts(string script, string index, string start)
    {
        Assert.SkipUnless(File.Exists("/bin/bash"), "needs bash");
        using ScratchFolder scratch = ShortMatches.Files();
        string[] campaign = ["odds", scratch["short.toml"], "--matches", "9", "--no-plots", "--out", scratch["its parts"]];
        string[] cluster = ["cluster", "--parts", "2", "--script"];
        string line = Cli.Run([.. cluster, script, "--", .. campaign]).Output.Split('\n').Single(l => l.StartsWith(start, StringComparison.Ordinal));
        for (int part = 1; part <= 2; part++)
        {
            Shell run = await Shell.RunAsync($"export {ShortMatches.Narrow}=0; n=$2; p=$1; pushsim() {{ dotnet \"$p\" \"$@\"; }}; set -- \"$n\"; export {index}; {line.Trim()["exec ".Length..]}", s_program, $"{part}");
            Assert.True(run.Code == ExitCode.Done, run.Error);
        }

        string merge = Cli.Run([.. cluster, "merge", "--", .. campaign]).Output.Split('\n')[1]["exec ".Length..];
        Shell merged = await Shell.RunAsync($"export {ShortMatches.Narrow}=0; p=$1; pushsim() {{ dotnet \"$p\" \"$@\"; }}; {merge} --json", s_program);
        Assert.True(merged.Code == ExitCode.Done, merged.Error);
        Cli whole = Cli.Run([.. campaign[..^1], scratch["whole"], "--json"]);
        Assert.Equal(Cli.Steady(whole.Output), Cli.Steady(merged.Output));
    }

    [Fact]
    public void The_state_of_the_parts_is_told_and_nothing_is_made()
    {
        using ScratchFolder scratch = ShortMatches.Files();
        string[] campaign = ["odds", scratch["short.toml"], "--matches", "9", "--no-plots", "--out", scratch["parts"]];
        Assert.StartsWith("no finished parts in ", Cli.Run(["cluster", "--parts", "3", "--", .. campaign]).Output, StringComparison.Ordinal);
        Assert.False(Directory.Exists(scratch["parts"]));
        Assert.Equal(ExitCode.Done, Cli.Run([.. campaign, "--part", "2/3"]).Code);
        JsonElement json = JsonDocument.Parse(Cli.Run(["cluster", "--parts", "3", "--json", "--", .. campaign]).Output).RootElement;
        Assert.Equal(["missing", "whole", "missing"], json.GetProperty("parts").EnumerateArray().Select(p => p.GetProperty("state").GetString()));
        Assert.Equal(["array", "parallel", "container", "merge"], json.GetProperty("scripts").EnumerateObject().Select(s => s.Name));
        Assert.Contains("--parts 3.", Cli.Run(["cluster", "--parts", "4", "--", .. campaign]).Output);
    }

    [Theory]
    [InlineData("has no parts", "--", "run", "x.toml", "--out", "y")]
    [InlineData("add --out DIR", "--", "odds", "x.toml")]
    [InlineData("the scripts give --part themselves", "--", "odds", "x.toml", "--out", "y", "--part", "1/3")]
    [InlineData("--script takes array, container", "--script", "other", "--", "odds", "x.toml", "--out", "y")]
    [InlineData("is not there", "--", "odds", "x.toml", "--out", "y")]
    public void Wrong_calls(string words, params string[] args)
    {
        Cli cli = Cli.Run(["cluster", .. args]);
        Assert.Contains(words, cli.Error);
        Assert.Equal(words == "is not there" ? ExitCode.CannotReadOrWrite : ExitCode.WrongCommandLine, cli.Code);
        Assert.Equal("", cli.Output);
    }
}
