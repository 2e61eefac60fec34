using PushSim.Analysis.Chance;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>What a seed draws, by the number of the scheme: another draw needs another number, so that kept matches of both are never mixed.</summary>
public class DrawSchemeTests
{
    // of scheme 2; computed here apart from this code, to 15 digits (Philox4x32-10 of the paper, FNV-1a, rank of the own word among the 32 of a block, normal quantile of a statistics library)
    [Theory]
    [InlineData(1, 0, DrawShape.Normal, 0.0, 1.3669223787354454)]
    [InlineData(1, 1, DrawShape.Uniform, 0.0, 1.3510136035915234)]
    [InlineData(7, 123_456_789, DrawShape.Triangular, 0.0, 1.3584405814266534)]
    [InlineData(7, 99_999_999, DrawShape.Normal, 0.5, 1.3567426571214287)]
    public void Draws_stay_what_they_are(ulong seed, long match, DrawShape shape, double own, double value)
    {
        Assert.Equal(2, DrawnQuantity.Scheme);
        Assert.Equal(value, new DrawnQuantity("chassis.mass", own > 0.0 ? "left" : "", own, 1.36, 0.01, shape, 0.0, 2.0).Draw(new ContestKey(seed, "mole/badger").Draws, match), 1e-14);
    }
}
