using PushSim.Analysis.Chance;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Which drawn inputs matter, where the ground gained is made of them.</summary>
public class InputSharesTests
{
    // ground = 2 a + b of like spreads: shares 4/5 and 1/5 in closed form; c has no effect; 5000 matches leave about 0.02 of scatter
    [Fact]
    public void Shares_are_those_of_a_sum_and_an_input_without_effect_is_not_told()
    {
        var source = new Drawn();
        MatchEnd[] ends = [.. Enumerable.Range(0, 5000).Select(n => End(n, (2.0 * source.Values(n)[0]) + source.Values(n)[1])), MatchEnd.Failed(5000, MatchFailure.Step)];
        var shares = InputShares.Of(source, ends);
        Assert.Equal(["a", "b"], shares.Told.Select(s => s.Name));
        Assert.Equal(0.8, shares.Told[0].Share.Value, 0.04);
        Assert.Equal(0.2, shares.Told[1].Share.Value, 0.04);
        Assert.Equal(0.0, shares.Rest.Value, 0.04);
        Assert.Equal(1, shares.Tied);
    }

    // who wins is the sign of 2 a + b: of two normal values that correlate by r, both above 0 in 1/4 + asin(r)/(2 pi) (Sheppard, Phil. Trans. A 192:101, 1899; from memory), so the share of an
    // input that carries r^2 of the sum is 2/pi asin(r^2): 0.590 and 0.128. Two inputs of like weight are tied.
    [Fact]
    public void Shares_of_winning_are_told_beside_those_of_the_ground()
    {
        var source = new Drawn();
        InputShares Of(double a, double b) => InputShares.Of(source, Enumerable.Range(0, 5000).Select(n => End(n, (a * source.Values(n)[0]) + (b * source.Values(n)[1]))));
        InputShares shares = Of(2.0, 1.0);
        Assert.Equal(0.590, shares.Told[0].OfWinning.Value, 0.04);
        Assert.Equal(0.128, shares.Told[1].OfWinning.Value, 0.04);
        Assert.Equal(1.0 - 0.590 - 0.128, shares.RestOfWinning.Value, 0.05);
        Assert.Equal(2, Of(1.0, 1.0).Tied);
    }

    // a, b, c have a standard deviation of 1/2, so of ground = 2 a + b + 4 b c the parts have the variances 1, 1/4 and 1: a has 4/9, b 1/9, and 4/9 is of b and c together (computed here). Each interval is about its value, and as wide as the value scatters from sample to sample.
    [Fact]
    public void What_inputs_do_together_stands_in_the_rest_and_intervals_are_as_wide_as_values_scatter()
    {
        var source = new Drawn();
        List<InputShares> samples = [];
        for (int k = 0; k < 60; k++)
        {
            int first = 1000 * k;
            samples.Add(InputShares.Of(source, Enumerable.Range(first, 800).Select(n => (Number: n, X: source.Values(n))).Select(m => End(m.Number, (2.0 * m.X[0]) + m.X[1] + (4.0 * m.X[1] * m.X[2])))));
        }

        double[] a = [.. samples.Select(s => s.Told.Single(t => t.Name == "a").Share.Value)];
        double[] rest = [.. samples.Select(s => s.Rest.Value)];
        Assert.Equal(4.0 / 9.0, a.Average(), 0.03);
        Assert.Equal(4.0 / 9.0, rest.Average(), 0.05);
        Ratio(a, samples.Select(s => s.Told.Single(t => t.Name == "a").Share));
        Ratio(rest, samples.Select(s => s.Rest));

        // the spread of 60 samples is known to about 10 %, three times that either way
        static void Ratio(double[] values, IEnumerable<Interval> told) =>
            Assert.InRange(told.Average(i => 0.5 * (i.High - i.Low)) / (ShareInterval.Z * Math.Sqrt(Sample.Variance(values))), 0.7, 1.3);
    }

    [Fact]
    public void Where_nothing_is_told_the_rest_may_be_anything()
    {
        var shares = InputShares.Of(new Drawn(), Enumerable.Range(0, 10).Select(n => End(n, n)));
        Assert.Empty(shares.Told);
        Assert.Equal(new Interval(1.0, 0.0, 1.0), shares.Rest);
    }

    // c alone decides: drawn anew it explains all, the pair that failed being left out
    [Fact]
    public void An_effect_comes_from_pairs_that_both_ran()
    {
        var source = new Drawn();
        MatchEnd[] own = [.. Enumerable.Range(0, 1000).Select(n => End(n, source.Values(n)[2]))];
        MatchEnd[] redrawn = [MatchEnd.Failed(0, MatchFailure.Step), .. Enumerable.Range(1, 999).Select(n => End(n, source.Values(n + 10_000)[2]))];
        InputEffect effect = InputEffect.Of("c", own, redrawn);
        Assert.Equal("c", effect.Key);
        Assert.True(effect.Bounds.Holds(effect.Share));
        Assert.Equal(1.0, effect.Share, 0.1);
        Assert.Equal(0.0, InputEffect.Of("a", own, own).Share);
    }

    private static MatchEnd End(long number, double ground) => new(number, ground > 0.0 ? 0 : 1, ShoveEnding.Line, ground, 1.0, BindingKind.Nothing, BindingKind.Nothing);

    private sealed class Drawn : IDrawnMatches
    {
        public IReadOnlyList<DrawnQuantity> Quantities { get; } = [.. new[] { "a", "b", "c" }.Select(k => new DrawnQuantity(k, "", 0.0, 0.0, 1.0, DrawShape.Normal, -9.0, 9.0))];

        public ScenarioSettings Middle => throw new NotSupportedException();

        public double[] Values(long number) => [.. Quantities.Select(q => q.Draw(3, number))];

        public ScenarioSettings? Match(long number, out string cause) => throw new NotSupportedException();
    }
}
