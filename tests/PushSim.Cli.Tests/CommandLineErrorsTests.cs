using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests;

/// <summary>Mistyped command lines: one line that names the word, and the nearest that is known.</summary>
public class CommandLineErrorsTests
{
    [Theory]
    [InlineData("swep my.toml", "there is no command \"swep\"; did you mean sweep?", "pushsim --help")]
    [InlineData("--bogus", "there is no option \"--bogus\"", "pushsim --help")]
    [InlineData("run my.toml --jason", "run has no option \"--jason\"; did you mean --json?", "pushsim run --help")]
    [InlineData("run my.toml other.toml third.toml", "\"third.toml\" is one too many for run", "pushsim run --help")]
    [InlineData("completion cmd", "completion takes bash, fish, man, powershell, zsh, not ", "pushsim completion --help")]
    [InlineData("sweep my.toml", "--vary", "pushsim sweep --help")]
    [InlineData("odds my.toml --matches x --wihtin 2%", "odds has no option \"--wihtin\"; did you mean --within?|--matches takes a whole number", "pushsim odds --help")]
    public void Names_the_word_and_the_nearest(string line, string expected, string help)
    {
        Cli cli = Cli.Run(line.Split(' '));
        Assert.Equal(ExitCode.WrongCommandLine, cli.Code);
        Assert.Equal("", cli.Output);
        Assert.All(expected.Split('|'), e => Assert.Contains(e, cli.Error));
        Assert.EndsWith($"help: {help}\n", cli.Error.ReplaceLineEndings("\n"));
        Assert.All(cli.Error.ReplaceLineEndings("\n").TrimEnd().Split('\n')[..^1], l => Assert.StartsWith("pushsim: error: ", l));
        Assert.DoesNotContain("??", cli.Error);
        Assert.Equal(expected.Split('|').Length + 1, cli.Error.TrimEnd().Split('\n').Length);
    }
}
