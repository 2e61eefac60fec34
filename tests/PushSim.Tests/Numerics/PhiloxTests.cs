using MathNet.Numerics.Distributions;
using PushSim.Analysis.Chance;
using PushSim.Numerics;
using Xunit;

namespace PushSim.Tests.Numerics;

/// <summary>The generator against published vectors, and what is made of its words.</summary>
public class PhiloxTests
{
    // Random123 kat_vectors; Salmon, Moraes, Dror, Shaw, SC11, 2011
    [Theory]
    [InlineData(0x00000000u, 0x00000000u, 0x00000000u, 0x00000000u, 0x00000000u, 0x00000000u, 0x6627e8d5u, 0xe169c58du, 0xbc57ac4cu, 0x9b00dbd8u)]
    [InlineData(0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0xffffffffu, 0x408f276du, 0x41c83b0eu, 0xa20bc7c6u, 0x6d5451fdu)]
    [InlineData(0x243f6a88u, 0x85a308d3u, 0x13198a2eu, 0x03707344u, 0xa4093822u, 0x299f31d0u, 0xd16cfe09u, 0x94fdccebu, 0x5001e420u, 0x24126ea1u)]
    [InlineData(1u, 0u, 0u, 0u, 0u, 0u, 0xf8e4cca4u, 0x5cb200dbu, 0xb1a574ebu, 0x097eff67u)]
    [InlineData(0u, 1u, 0u, 0u, 0u, 0u, 0x6ad0c5ecu, 0xea236249u, 0x73a459f5u, 0x074944b3u)]
    [InlineData(0u, 0u, 1u, 0u, 0u, 0u, 0x844515e1u, 0xf08d6eaau, 0x0f19c053u, 0x83f875f0u)]
    [InlineData(0u, 0u, 0u, 1u, 0u, 0u, 0x2dce73e5u, 0x1348e23fu, 0xfcf8e0ecu, 0xa287aadbu)]
    [InlineData(0u, 0u, 0u, 0u, 1u, 0u, 0xe3e80670u, 0xe50a0ebcu, 0x95f222c0u, 0xb615aa27u)]
    public void Published_words(uint c0, uint c1, uint c2, uint c3, uint k0, uint k1, uint w0, uint w1, uint w2, uint w3) =>
        Assert.Equal((w0, w1, w2, w3), Philox.Block((c0, c1, c2, c3), (k0, k1)));

    // computed here, outside of this project
    // x/ 5 is two standard deviations of the logarithm: a fifth and five times hold 95.45 % of a normal one
    [Fact]
    public void A_factor_holds_as_many_below_as_above()
    {
        DrawnQuantity wear = new("floor.abrasiveness", "", 0.0, 0.005, 4.0 * 0.005, DrawShape.Factor, 0.0, 10.0);
        double[] draws = [.. Enumerable.Range(0, 20000).Select(m => wear.Draw(1, m))];
        Assert.Equal(0.5, draws.Count(d => d < 0.005) / 20000.0, 0.01);
        Assert.Equal(0.9545, draws.Count(d => d is > 0.001 and < 0.025) / 20000.0, 0.005);
    }

    [Fact]
    public void Seven_rounds() => Assert.Equal((0x5f6fb709u, 0x0d893f64u, 0x4f121f81u, 0x4f730a48u), Philox.Block((0, 0, 0, 0), (0, 0), 7));

    // the usual 53-bit fraction, computed here, and half a step more so that 0 never comes
    [Fact]
    public void Words_to_a_fraction() => Assert.Equal(0.39904647231489565, Philox.ToUnit(0x6627e8d5u, 0xe169c58du), 1e-15);

    [Fact]
    public void Fractions_stay_inside()
    {
        Assert.InRange(Philox.ToUnit(0, 0), 1e-17, 1e-15);
        Assert.True(Philox.ToUnit(uint.MaxValue, uint.MaxValue) < 1.0);
    }

    // MathNet.Numerics' own quantile as the outside value
    [Theory]
    [InlineData(1e-12)]
    [InlineData(1e-4)]
    [InlineData(0.02)]
    [InlineData(0.075)]
    [InlineData(0.3)]
    [InlineData(0.5)]
    [InlineData(0.81)]
    [InlineData(0.975)]
    [InlineData(0.99999)]
    public void Normal_quantile(double p) => Assert.Equal(Normal.InvCDF(0.0, 1.0, p), NormalQuantile.Of(p), 1e-9);

    [Fact]
    public void Normal_quantile_of_the_usual_interval() => Assert.Equal(1.959963984540054, NormalQuantile.Of(0.975), 1e-14);

    // moments of the three forms: half the tolerance, its 1/sqrt 3 and its 1/sqrt 6
    [Theory]
    [InlineData(DrawShape.Normal, 0.5)]
    [InlineData(DrawShape.Uniform, 0.57735026919)]
    [InlineData(DrawShape.Triangular, 0.40824829046)]
    public void A_drawn_quantity_has_its_mean_and_deviation(DrawShape shape, double deviation)
    {
        var quantity = new DrawnQuantity("tyre.soft.static_friction", "", 0.0, 2.0, 1.0, shape, double.NegativeInfinity, double.PositiveInfinity);
        double[] draws = [.. Enumerable.Range(0, 20_000).Select(m => quantity.Draw(7, m))];
        Assert.Equal(2.0, draws.Average(), 4.0 * deviation / Math.Sqrt(draws.Length));
        Assert.Equal(deviation, Math.Sqrt(draws.Average(d => (d - 2.0) * (d - 2.0))), 0.015);
        Assert.True(shape == DrawShape.Normal || draws.All(d => Math.Abs(d - 2.0) <= 1.0));
    }

    // correlation of two parts is the shared share of their variance
    [Theory]
    [InlineData(0.0, 1.0)]
    [InlineData(0.3, 0.7)]
    [InlineData(1.0, 0.0)]
    public void Parts_share_what_is_not_their_own(double ownShare, double correlation)
    {
        DrawnQuantity[] parts = [.. new[] { "front left", "rear right" }.Select(p => new DrawnQuantity("tyre.soft.static_friction", p, ownShare, 0.0, 2.0, DrawShape.Normal, -100, 100))];
        double product = Enumerable.Range(0, 20_000).Average(m => parts[0].Draw(3, m) * parts[1].Draw(3, m));
        Assert.Equal(correlation, product, 0.03);
    }

    [Fact]
    public void Draws_stop_at_what_the_key_allows() =>
        Assert.All(Enumerable.Range(0, 200), m => Assert.InRange(new DrawnQuantity("a", "", 0.0, 0.0, 1.0, DrawShape.Normal, 0.0, 0.2).Draw(1, m), 0.0, 0.2));
}
