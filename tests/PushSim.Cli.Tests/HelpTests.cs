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
    [InlineData("new")]
    [InlineData("explain")]
    [InlineData("odds")]
    [InlineData("sweep")]
    [InlineData("ladder")]
    [InlineData("shelf")]
    [InlineData("cluster")]
    [InlineData("limits")]
    [InlineData("completion")]
    public void Help_has_examples_and_fits_eighty_columns(string command)
    {
        Cli cli = Cli.Run(command.Length > 0 ? [command, "--help"] : ["--help"]);
        Assert.Equal(ExitCode.Done, cli.Code);
        Assert.Equal("", cli.Error);
        Assert.Contains("Examples:", cli.Output);
        Assert.Contains($"  pushsim {(command.Length > 0 ? command : "run")} ", cli.Output);
        Assert.All(cli.Output.Split('\n'), l => Assert.True(l.TrimEnd().Length <= 80, l));
    }

    // the examples of each command's own help stay there
    [Fact]
    public void The_list_of_commands_is_one_or_two_lines_each()
    {
        string list = Cli.Run("--help").Output.Split("Commands:")[1].TrimEnd();
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
        Assert.DoesNotContain("[default", help[start..next]);
    }
}
