using PushSim.Analysis.Sweep;
using PushSim.Words.Sweeps;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>Texts of a sweep's inputs, and the best of a curve.</summary>
public class SweepTests
{
    // what is best between the values is looked for on rising ones
    [Fact]
    public void A_list_of_numbers_is_put_in_order()
    {
        Assert.True(SweepInput.TryParse("motor.*.gear_ratio=30,10,20.5", 3, out SweepInput? input, out _));
        Assert.Equal([10.0, 20.5, 30.0], input!.Numbers!);
        Assert.Equal(["10", "20.5", "30"], input.Texts);
    }

    [Theory]
    [InlineData("chassis.mass=1 kg..2 kg", 3, "1 kg|1.5 kg|2 kg")]
    [InlineData("chassis.mass = 1..2 kg", 3, "1 kg|1.5 kg|2 kg")]
    [InlineData("drive.*.gear_ratio=10..40", 4, "10|20|30|40")]
    [InlineData("a=0.1..0.4", 4, "0.1|0.2|0.3|0.4")]
    [InlineData("a=-5 deg..5 deg", 3, "-5 deg|0 deg|5 deg")]
    [InlineData("a=2..1", 3, "2|1.5|1")]
    [InlineData("a=0.5, 0.7 ,0.9", 9, "0.5|0.7|0.9")]
    [InlineData("a=3 mm,4 mm", 9, "3 mm|4 mm")]
    [InlineData("wheel.*.tyre=soft,printed hard", 9, "soft|printed hard")]
    [InlineData("wheel.*.tyre=[\"silicone, soft\", latex]", 9, "silicone, soft|latex")]
    [InlineData("wheel.*.tyre='silicone, soft' , latex", 9, "silicone, soft|latex")]
    [InlineData("wheel.*.tyre=[hard, 'grip \"B\", worn']", 9, "hard|grip \"B\", worn")]
    [InlineData("wheel.*.tyre=[\"a..b\"]", 9, "a..b")]
    [InlineData("a=[30, 10]", 9, "10|30")]
    [InlineData("robot=robots/mole.toml,robots/badger.toml", 9, "robots/mole.toml|robots/badger.toml")]
    public void Texts_are_taken_as_they_stand(string text, int points, string expected)
    {
        Assert.True(SweepInput.TryParse(text, points, out SweepInput? input, out SweepFault? fault), fault?.ToString());
        Assert.Equal(expected, string.Join("|", input!.Texts));
    }

    [Theory]
    [InlineData("mass")]
    [InlineData("=1..2")]
    [InlineData("mass=")]
    [InlineData("mass=1..")]
    [InlineData("mass=soft..hard")]
    [InlineData("mass=1..1")]
    [InlineData("mass=1 g..2 kg")]
    [InlineData("mass=1,,2")]
    [InlineData("mass=1,2,")]
    [InlineData("tyre=[a, b")]
    [InlineData("tyre=[]")]
    [InlineData("tyre=[\"a, b]")]
    [InlineData("tyre=[\"a\" b, c]")]
    public void Wrong_texts_say_what_is_wrong(string text)
    {
        Assert.False(SweepInput.TryParse(text, 3, out SweepInput? input, out SweepFault? fault));
        Assert.Null(input);
        Assert.NotEqual("", SweepWords.Of(fault!));
    }

    [Theory]
    [InlineData("a=10-40", "a=10..40")]
    [InlineData("a=10 to 40 mm", "a=10..40 mm")]
    [InlineData("a=1kg – 2kg", "a=1kg..2kg")]
    public void A_range_with_a_dash_is_told_how_to_be_written(string text, string range)
    {
        Assert.False(SweepInput.TryParse(text, 3, out _, out SweepFault? fault));
        Assert.Equal((SweepFaultKind.Dash, range), (fault!.Kind, fault.Text));
        Assert.True(SweepInput.TryParse(range, 3, out _, out _));
    }

    [Theory]
    [InlineData("a=5e-3 kg")]
    [InlineData("a=2 s-1")]
    [InlineData("a=-3")]
    [InlineData("tyre=25-30A rubber")]
    public void A_dash_inside_one_value_is_no_range(string text) => Assert.True(SweepInput.TryParse(text, 3, out _, out SweepFault? fault), fault?.ToString());

    [Fact]
    public void Of_a_key_that_comes_again_each_text_is_one_value()
    {
        Assert.True(SweepInput.TryParse(["wheel.*.tyre=silicone, soft", "mass=1..2", "wheel.*.tyre=\"latex, thin\""], keys => keys + 1, out IReadOnlyList<SweepInput> inputs, out _));
        Assert.Equal([["silicone, soft", "latex, thin"], ["1", "1.5", "2"]], inputs.Select(i => i.Texts));
        Assert.True(SweepInput.TryParse(["mass=2 kg", "mass=1 kg"], _ => 9, out inputs, out _));
        Assert.Equal([1.0, 2.0], inputs[0].Numbers!);
    }

    [Theory]
    [InlineData("mass=1..2")]
    [InlineData("mass=[1, 2]")]
    public void A_range_or_a_list_goes_alone(string text)
    {
        Assert.False(SweepInput.TryParse(["mass=3", text], _ => 9, out _, out SweepFault? fault));
        Assert.Equal(SweepFaultKind.Again, fault!.Kind);
        Assert.StartsWith($"\"{text}\" stands beside another text of its key", SweepWords.Of(fault), StringComparison.Ordinal);
    }

    // y = 1 - x^2: 5 % below the best at x = sqrt 0.05 (closed form); straight between points a hundredth apart
    [Fact]
    public void Flatness_of_a_parabola()
    {
        double[] x = [.. Enumerable.Range(-100, 201).Select(i => i / 100.0)];
        Optimum best = Optimum.OfCurve(x, [.. x.Select(v => (double?)(1.0 - (v * v)))], isHighest: true)!;
        Assert.Equal(0.0, x[best.Index], 1e-12);
        Assert.Equal(-Math.Sqrt(0.05), best.Low, 2e-4);
        Assert.Equal(Math.Sqrt(0.05), best.High, 2e-4);
        Assert.False(best.IsAtEnd);
    }

    [Fact]
    public void The_lowest_may_be_best_and_lie_at_an_end()
    {
        Optimum best = Optimum.OfCurve([1, 2, 3], [2.0, 2.05, 4.0], isHighest: false)!;
        Assert.Equal((0, 2.0, true), (best.Index, best.Value, best.IsAtEnd));
        Assert.Equal(1.0, best.Low);
        Assert.Equal(2.0 + (0.05 / 1.95), best.High, 1e-12);
    }

    [Fact]
    public void Points_without_a_value_end_the_range()
    {
        Assert.Null(Optimum.OfCurve([1, 2], [null, null], isHighest: true));
        Optimum best = Optimum.OfCurve([1, 2, 3], [null, 5.0, 4.9], isHighest: true)!;
        Assert.Equal((1, 2.0, 3.0), (best.Index, best.Low, best.High));
    }
}
