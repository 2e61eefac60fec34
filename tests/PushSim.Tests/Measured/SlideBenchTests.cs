using Xunit;

namespace PushSim.Tests.Measured;

/// <summary>Slides of a cube on a board (data/SOURCES.md).</summary>
public class SlideBenchTests
{
    [Fact]
    public void The_faster_half_stops_as_the_slower_half_tells()
    {
        (double measured, double model) = SlideBench.StoppingDistance();
        Assert.True(Math.Abs((model / measured) - 1.0) < 0.05, FormattableString.Invariant($"measured {measured:0.0000} m, model {model:0.0000} m"));
    }
}
