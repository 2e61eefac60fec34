using PushSim.Cli.Shared;
using PushSim.Words.Tables;
using Spectre.Console;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>Tables at any width: no word is broken and no value lost.</summary>
public class ScreenTableTests
{
    [Theory]
    [InlineData(30)]
    [InlineData(50)]
    [InlineData(100)]
    public void No_word_is_broken_and_no_value_lost(int width)
    {
        AnswerTable table = new AnswerTable("While it pulls").AddColumn("Wheel").AddNumberColumn("load [N]").AddNumberColumn("sliding [N]").AddNumberColumn("spins [m/s]").AddColumn("what binds")
            .AddRow("front left", "1.46", "16.51", "2.44", "controllers").AddRow("front left", "1.47", "16.52", "2.45", "");
        var written = new StringWriter();
        IAnsiConsole console = CommandText.Console(written);
        console.Profile.Width = width;
        ScreenTable.Write(console, table);
        string[] lines = written.ToString().Split('\n');
        Assert.All(lines, l => Assert.InRange(l.TrimEnd().Length, 0, width));
        string[] words = written.ToString().Split([' ', '\n', ':'], StringSplitOptions.RemoveEmptyEntries);
        Assert.All(["1.46", "16.51", "2.44", "controllers", "1.47", "16.52", "2.45", "sliding", "[m/s]", "binds"], w => Assert.Contains(w, words));
        Assert.Equal(width < 60, words.Count(w => w == "sliding") == 2);
    }

    [Fact]
    public void A_zero_has_no_sign()
    {
        AnswerTable table = new AnswerTable("Ground").AddRow("-0.000", "-0", "-0.001", "-0.5 to -0.0", "-");
        Assert.Equal(["0.000", "0", "-0.001", "-0.5 to -0.0", "-"], table.Rows[0]);
    }
}
