using PushSim.Analysis.Chance;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>What a seed draws, by the number of the scheme: another draw needs another number, so that kept matches of both are never mixed.</summary>
public class DrawSchemeTests
{
    // of scheme 1; computed here by this code and, to 15 digits, apart from it (Philox4x32-10 of the paper, FNV-1a, normal quantile of a statistics library)
    [Theory]
    [InlineData(1, 0, DrawShape.Normal, 0.0, 1.3579457972841897)]
    [InlineData(1, 1, DrawShape.Uniform, 0.0, 1.362435314928744)]
    [InlineData(7, 123_456_789, DrawShape.Triangular, 0.0, 1.3589324842143105)]
    [InlineData(7, 99_999_999, DrawShape.Normal, 0.5, 1.3641121320179506)]
    public void Draws_stay_what_they_are(ulong seed, long match, DrawShape shape, double own, double value)
    {
        Assert.Equal(1, DrawnQuantity.Scheme);
        Assert.Equal(value, new DrawnQuantity("chassis.mass", own > 0.0 ? "left" : "", own, 1.36, 0.01, shape, 0.0, 2.0).Draw(new ContestKey(seed, "mole/badger").Draws, match));
    }
}
