using Xunit;

namespace PushSim.Tests.Measured;

/// <summary>Track ratios of two skid-steer robots (data/SOURCES.md). The bounds were set before: 3 % for spot turns and 5 % up to q = 3.5 on hard ground, 5 % and 12 % on soft ground.</summary>
public class TurningBenchTests
{
    [Theory]
    [InlineData(0.0, 0.15, 0.03)]
    [InlineData(0.15, 1.0, 0.05)]
    [InlineData(1.0, 2.5, 0.05)]
    [InlineData(2.5, 3.5, 0.05)]
    public void Hard_ground(double from, double to, double bound)
    {
        (double measured, double model) = TurningBench.OfHard(from, to);
        Assert.True(Math.Abs((model / measured) - 1.0) < bound, FormattableString.Invariant($"q {from} to {to}: measured {measured:0.000}, model {model:0.000} ({(model / measured) - 1.0:P1}); friction, height {TurningBench.Hard.Value}"));
    }

    [Theory]
    [InlineData(0.0, 0.15, 0.05)]
    [InlineData(0.15, 1.0, 0.12)]
    [InlineData(1.0, 2.0, 0.12)]
    [InlineData(2.0, 4.0, 0.12)]
    [InlineData(4.0, 8.0, 0.12)]
    public void Soft_ground(double from, double to, double bound)
    {
        (double measured, double model) = TurningBench.OfSoft(from, to);
        Assert.True(Math.Abs((model / measured) - 1.0) < bound, FormattableString.Invariant($"q {from} to {to}: measured {measured:0.000}, model {model:0.000} ({(model / measured) - 1.0:P1}); ratio, friction {TurningBench.Soft.Value}"));
    }
}
