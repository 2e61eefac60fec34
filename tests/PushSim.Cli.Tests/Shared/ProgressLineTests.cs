using PushSim.Cli.Shared;
using Xunit;

namespace PushSim.Cli.Tests.Shared;

/// <summary>A line that is drawn over itself fits the terminal, however narrow.</summary>
public class ProgressLineTests
{
    [Theory]
    [InlineData(100, "[############............] 50 of 100 matches, 3.5 a second, 14 s left")]
    [InlineData(50, "50 of 100 matches, 3.5 a second, 14 s left")]
    [InlineData(20, "50 of 100 matches, ")]
    [InlineData(2, "5")]
    public void It_fits(int width, string expected)
    {
        string drawn = ProgressLine.Drawn("50 of 100 matches, 3.5 a second, 14 s left", 0.5, width);
        Assert.Equal(width - 1, drawn.Length);
        Assert.Equal(expected.TrimEnd(), drawn.TrimEnd());
    }

    [Fact]
    public void What_is_told_once_stands_before_the_first_line()
    {
        using var error = new StringWriter { NewLine = "\n" };
        var line = new ProgressLine(error, "matches", 40, isQuiet: false) { PlainInterval = 0.0, Head = "40 matches in all: four times ten" };
        line.Step();
        line.StepTo(20);
        line.End();
        string[] told = error.ToString().TrimEnd().Split('\n');
        Assert.Equal(3, told.Length);
        Assert.Equal("pushsim: 40 matches in all: four times ten", told[0]);
        Assert.StartsWith("pushsim: 1 of 40 matches, ", told[1], StringComparison.Ordinal);
        Assert.StartsWith("pushsim: 20 of 40 matches, ", told[2], StringComparison.Ordinal);
    }

    [Fact]
    public void A_quiet_one_and_a_short_one_say_nothing()
    {
        using var error = new StringWriter();
        new ProgressLine(error, "matches", 2, isQuiet: true) { PlainInterval = 0.0, Head = "2 matches in all" }.Step();
        new ProgressLine(error, "matches", 2, isQuiet: false) { Head = "2 matches in all" }.Step();
        Assert.Equal("", error.ToString());
    }
}
