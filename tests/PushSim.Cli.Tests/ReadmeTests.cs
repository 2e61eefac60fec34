using System.Text.RegularExpressions;
using Xunit;

namespace PushSim.Cli.Tests;

/// <summary>Every command of the README does what it says; the test command is the one that runs this.</summary>
public partial class ReadmeTests
{
    private const string Prefix = "dotnet run --project src/PushSim.Cli -c Release -- ";

    public static TheoryData<string> Commands() =>
        [.. Command().Matches(File.ReadAllText(Path.Combine(Repository.Root, "README.md"))).Select(m => m.Groups[1].Value.Trim()).Distinct()];

    [Theory]
    [MemberData(nameof(Commands))]
    public void A_command_of_the_readme_works(string command)
    {
        using var scratch = new ScratchFolder();
        string[] words = [.. command.Split(' ').Select(w => w.StartsWith("scenarios/", StringComparison.Ordinal) ? Path.Combine(Repository.Root, w) : w)];
        string[] args = words[0] is "run" or "new" or "limits" or "fit" or "odds" or "sweep" or "ladder" or "plan" ? [.. words, "--out", scratch["out"]] : words;
        Cli cli = Cli.Run(args);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.NotEqual("", cli.Output);
        if (words[0] == "run")
        {
            string picture = Assert.Single(cli.Output.Split('\n'), l => l.StartsWith("wrote ", StringComparison.Ordinal) && l.Contains("plot.png"));
            Assert.True(File.Exists(picture["wrote ".Length..].Trim()));
        }
    }

    [Fact]
    public void All_other_commands_are_the_test_command()
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        string[] others = [.. Regex.Matches(text, "^    (dotnet .*)$", RegexOptions.Multiline).Select(m => m.Groups[1].Value.Trim())
            .Where(c => !c.StartsWith(Prefix, StringComparison.Ordinal))];
        Assert.Equal(["dotnet test -c Release"], others);
        Assert.Contains("dotnet test -c Release", File.ReadAllText(Path.Combine(Repository.Root, ".ci", "run")));
    }

    [Fact]
    public void Pictures_of_the_readme_and_of_every_scenario_are_there()
    {
        string text = File.ReadAllText(Path.Combine(Repository.Root, "README.md"));
        Assert.All(Regex.Matches(text, @"\]\((plots/[^)]+)\)").Select(m => m.Groups[1].Value), p => Assert.True(File.Exists(Path.Combine(Repository.Root, p)), p));
        Assert.All(
            Directory.GetFiles(Path.Combine(Repository.Root, "scenarios"), "*.toml"),
            s => Assert.True(File.Exists(Path.Combine(Repository.Root, "plots", Path.GetFileNameWithoutExtension(s) + ".png")), s));
    }

    [GeneratedRegex("dotnet run --project src/PushSim\\.Cli -c Release -- ([^`\\n]+)")]
    private static partial Regex Command();
}
