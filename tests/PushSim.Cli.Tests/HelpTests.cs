using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests;

public class HelpTests
{
    [Theory]
    [InlineData("")]
    [InlineData("run")]
    [InlineData("check")]
    [InlineData("fit")]
    [InlineData("plan")]
    [InlineData("garage")]
    [InlineData("advise")]
    [InlineData("bench")]
    [InlineData("new")]
    [InlineData("explain")]
    [InlineData("odds")]
    [InlineData("sweep")]
    [InlineData("ladder")]
    [InlineData("shelf")]
    [InlineData("cluster")]
    [InlineData("limits")]
    [InlineData("completion")]
    [InlineData("compare")]
    public void Help_has_examples_and_fits_eighty_columns(string command)
    {
        Cli cli = Cli.Run(command.Length > 0 ? [command, "--help"] : ["--help"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Equal("", cli.Error);
        Assert.Contains("Examples:", cli.Output);
        Assert.Contains($"  pushsim {(command.Length > 0 ? command : "run")} ", cli.Output);
        string[] lines = cli.Output.ReplaceLineEndings("\n").Split('\n');
        Assert.All(lines, l => Assert.True(l.Length <= 79, l));
        Assert.All(lines, l => Assert.Equal(l.TrimEnd(), l));

        // every example is a whole line, so it can be copied
        string[] examples = [.. cli.Output.Split("Examples:\n")[1].Split('\n', StringSplitOptions.RemoveEmptyEntries)];
        Assert.All(examples, e => Assert.StartsWith("  pushsim ", e));
    }

    // under the same head in every command; no option stands twice, and none is lost
    [Fact]
    public void Options_stand_under_heads()
    {
        string help = Cli.Run("odds", "--help").Output;
        string[] heads = ["\nWhat:", "\nHow many:", "\nWith whom:", "\nFiles and output:", "\nExamples:"];
        int[] at = [.. heads.Select(h => help.IndexOf(h, StringComparison.Ordinal))];
        Assert.Equal(at.Order(), at);
        Assert.All(at, i => Assert.True(i > 0, help));
        Assert.InRange(help.IndexOf("  --matches N", StringComparison.Ordinal), at[1], at[2]);
        Assert.InRange(help.IndexOf("  --against FILE", StringComparison.Ordinal), at[2], at[3]);
        Assert.InRange(help.IndexOf("  --out DIR", StringComparison.Ordinal), at[3], at[4]);
        Assert.InRange(help.IndexOf("  --effects", StringComparison.Ordinal), at[0], at[1]);
        string[] options = [.. help.Split('\n').Where(l => l.StartsWith("  --", StringComparison.Ordinal)).Select(l => l.Trim().Split(' ')[0])];
        Assert.Equal(options.Distinct(), options);
        Assert.Contains("--vary KEY=VALUES", Cli.Run("sweep", "--help").Output.Split("Usage:")[1].Split('\n')[0]);
        Assert.Contains("LOG FILE", Cli.Run("compare", "--help").Output.Split("Usage:")[1].Split('\n')[0]);
    }

    // the examples of each command's own help stay there
    [Fact]
    public void The_list_of_commands_is_one_or_two_lines_each()
    {
        string list = Cli.Run("--help").Output.Split("Commands:")[1].Split("\n\n")[0].TrimEnd();
        Assert.DoesNotContain("Examples", list);
        Assert.InRange(list.Trim().Split('\n').Length, 4, 34);
        Assert.All(new[] { "run", "check", "limits", "fit", "plan", "cluster", "new", "explain", "shelf", "completion" }, c => Assert.Contains($"\n  {c} ", list));
    }

    // a script that forgot its arguments must fail, and its output stay empty
    [Fact]
    public void The_name_alone_shows_what_there_is_on_the_error_stream()
    {
        Cli alone = Cli.Run();
        Assert.Equal((ExitCode.WrongCommandLine, "", Cli.Run("--help").Output), (alone.Code, alone.Output, alone.Error));
    }

    [Fact]
    public void A_wrong_call_points_to_the_help_of_its_command()
    {
        Assert.Contains("pushsim explain --help", Cli.Run("explain", "a", "b").Error);
        Assert.Contains("pushsim --help", Cli.Run("shove-it").Error);
    }

    // a number that stands for "not given" is nobody's default
    [Theory]
    [InlineData("odds", "--match")]
    [InlineData("sweep", "--points")]
    [InlineData("sweep", "--odds")]
    public void No_default_is_shown_where_there_is_none(string command, string option)
    {
        string help = Cli.Run(command, "--help").Output;
        int start = help.IndexOf("  " + option + " ", StringComparison.Ordinal);
        Assert.True(start >= 0, help);
        int next = help.IndexOf("\n  --", start, StringComparison.Ordinal);
        Assert.DoesNotContain("(default 0", help[start..next]);
    }
}
