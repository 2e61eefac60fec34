using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Binding;

/// <summary>The one rule, moment by made-up moment.</summary>
public class BindingRuleTests
{
    private static BindingKind Of(
        double lifted = 0.0, double slides = 0.0, double command = 1.0, double limiting = 0.0, double folded = 0.0, double series = 0.0, double volts = 11.0) =>
        (BindingKind)(int)BindingRule.Of(new WheelMoment<R1>
        {
            Lifted = lifted, Slides = slides, Command = command, Limiting = limiting, FoldedBack = folded, SeriesSlides = series, Bus = volts, OpenCircuit = 12.0,
        }).Value;

    // half of a wheel's controllers is not enough; 20 % below 12 V is 9.6 V. What comes first counts. Computed here.
    [Theory]
    [InlineData(0.0, 0.0, 0.0, 0.0, 11.0, BindingKind.Motor)]
    [InlineData(1.0, 0.0, 0.0, 0.0, 11.0, BindingKind.Tyre)]
    [InlineData(0.0, 0.5, 0.0, 0.0, 11.0, BindingKind.Motor)]
    [InlineData(0.0, 0.51, 0.0, 0.0, 11.0, BindingKind.CurrentLimit)]
    [InlineData(0.0, 0.51, 0.01, 0.0, 11.0, BindingKind.Heat)]
    [InlineData(0.0, 0.5, 1.0, 0.0, 11.0, BindingKind.Motor)]
    [InlineData(0.0, 0.0, 0.0, 1.0, 11.0, BindingKind.Series)]
    [InlineData(0.0, 0.0, 0.0, 0.0, 9.61, BindingKind.Motor)]
    [InlineData(0.0, 0.0, 0.0, 0.0, 9.59, BindingKind.Battery)]
    [InlineData(0.0, 0.0, 0.0, 1.0, 5.0, BindingKind.Series)]
    [InlineData(0.0, 1.0, 0.0, 1.0, 5.0, BindingKind.CurrentLimit)]
    [InlineData(0.0, 1.0, 1.0, 1.0, 5.0, BindingKind.Heat)]
    [InlineData(1.0, 1.0, 1.0, 1.0, 5.0, BindingKind.Tyre)]
    public void A_moments_kind_is_the_first_that_binds(double slides, double limiting, double folded, double series, double volts, BindingKind expected)
    {
        Assert.Equal(expected, Of(slides: slides, limiting: limiting, folded: folded, series: series, volts: volts));
        Assert.Equal(BindingKind.Nothing, Of(0.0, slides, 0.0, limiting, folded, series, volts));
        Assert.Equal(BindingKind.Lifted, Of(1.0, slides, 1.0, limiting, folded, series, volts));
        Assert.Equal(BindingKind.Lifted, Of(1.0, slides, 0.0, limiting, folded, series, volts));
    }

    // the switch of the bristle decides from 0.5 on, but a tyre that creeps at under 1 mm/s does not slide, at whatever share of its grip;
    // the plain law has no switch, its alpha always 1: there nine tenths of the grip decide
    [Theory]
    [InlineData(false, 0.5, 0.0011, 0.0, true)]
    [InlineData(false, 0.49, 0.0011, 0.99, false)]
    [InlineData(false, 1.0, 0.0009, 0.99, false)]
    [InlineData(false, 1.0, 0.0, 0.95, false)]
    [InlineData(true, 1.0, 0.0011, 0.91, true)]
    [InlineData(true, 1.0, 0.0011, 0.89, false)]
    [InlineData(true, 1.0, 0.0009, 0.99, false)]
    [InlineData(true, 1.0, 0.0, 0.0, false)]
    public void A_tyre_slides_at_the_end_of_its_grip_and_on_the_move(bool isPlain, double alpha, double slip, double grip, bool slides)
    {
        var shape = new WheelShape { Plain = isPlain };
        Assert.Equal(slides ? 1.0 : 0.0, BindingRule.Slides<R1>(shape, alpha, slip, grip).Value);
    }

    // a lag of 20 ms, in steps of 1 ms, falls to a tenth after ln 10 / ln 1.05 = 47.2 steps: a hop of 30 ms is none
    [Theory]
    [InlineData(47, BindingKind.Motor)]
    [InlineData(48, BindingKind.Lifted)]
    public void A_wheel_is_lifted_that_is_off_the_floor_for_longer_than_a_hop(int steps, BindingKind expected)
    {
        var wheel = new SteadyWheel(3.3);
        Assert.Equal(BindingKind.Motor, wheel.Next(3.3, 0.0, BindingKind.Motor, 0.0));
        BindingKind[] kinds = [.. Enumerable.Range(0, steps).Select(_ => wheel.Next(0.0, 0.0, BindingKind.Motor, 0.001))];
        Assert.Equal(expected, kinds[^1]);
    }

    // a lag of 10 ms, in steps of 1 ms, rises to a half after ln 2 / ln 1.1 = 7.3 steps; of a chatter of 8 ms the 2 ms in which the tyre sticks change nothing, and nothing slides without a command
    [Fact]
    public void A_tyre_that_chatters_slides_all_the_time()
    {
        var wheel = new SteadyWheel(3.3);
        BindingKind[] kinds = [.. Enumerable.Range(0, 200).Select(i => wheel.Next(3.3, i % 8 < 6 ? 1.0 : 0.0, BindingKind.Motor, 0.001))];
        Assert.Equal((BindingKind.Motor, BindingKind.Tyre), (kinds[5], kinds[20]));
        Assert.All(kinds[30..], k => Assert.Equal(BindingKind.Tyre, k));
        Assert.Equal(BindingKind.Nothing, wheel.Next(3.3, 1.0, BindingKind.Nothing, 0.001));
    }

    // four lanes are four moments
    [Fact]
    public void Lanes_are_as_many_moments()
    {
        var m = new WheelMoment<R4> { Command = 1.0, OpenCircuit = 12.0 };
        double[] slides = [0.0, 1.0, 0.0, 0.0];
        double[] limiting = [0.0, 1.0, 1.0, 0.0];
        double[] volts = [11.0, 5.0, 5.0, 5.0];
        for (int k = 0; k < 4; k++)
        {
            Lane.Set(ref m.Slides, k, slides[k]);
            Lane.Set(ref m.Limiting, k, limiting[k]);
            Lane.Set(ref m.Bus, k, volts[k]);
        }

        R4 kinds = BindingRule.Of(m);
        Assert.Equal([BindingKind.Motor, BindingKind.Tyre, BindingKind.CurrentLimit, BindingKind.Battery], Enumerable.Range(0, 4).Select(k => (BindingKind)(int)Lane.Get(kinds, k)));
    }
}
