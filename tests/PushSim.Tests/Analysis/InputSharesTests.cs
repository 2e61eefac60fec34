using PushSim.Analysis.Chance;
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
        IReadOnlyList<(string Name, double Share)> shares = InputShares.Of(source, ends);
        Assert.Equal(["a", "b"], shares.Select(s => s.Name));
        Assert.Equal(0.8, shares[0].Share, 0.04);
        Assert.Equal(0.2, shares[1].Share, 0.04);
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

    private static MatchEnd End(long number, double ground) => new(number, 0, ShoveEnding.Line, ground, 1.0, BindingKind.Nothing, BindingKind.Nothing);

    private sealed class Drawn : IDrawnMatches
    {
        public IReadOnlyList<DrawnQuantity> Quantities { get; } = [.. new[] { "a", "b", "c" }.Select(k => new DrawnQuantity(k, "", 0.0, 0.0, 1.0, DrawShape.Normal, -9.0, 9.0))];

        public ScenarioSettings Middle => throw new NotSupportedException();

        public double[] Values(long number) => [.. Quantities.Select(q => q.Draw(3, number))];

        public ScenarioSettings? Match(long number, out string cause) => throw new NotSupportedException();
    }
}
