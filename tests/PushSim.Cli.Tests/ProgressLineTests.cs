using Xunit;

namespace PushSim.Cli.Tests;

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
}
