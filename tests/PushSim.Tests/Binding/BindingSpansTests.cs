using PushSim.Binding;
using Xunit;

namespace PushSim.Tests.Binding;

/// <summary>What binds a robot, stretch by stretch, out of made-up moments of its wheels with one sample a millisecond.</summary>
public class BindingSpansTests
{
    private const int Command = 100;
    private const double Change = 0.5;

    // a tyre at its grip for four of five milliseconds holds the push, though each of its stretches is short: it is not the one before that goes on;
    // the sample before the command acts, and a short slide, are no stretches of their own
    [Fact]
    public void Flicker_counts_as_what_holds_most_of_it_and_short_stretches_as_their_neighbours()
    {
        BindingMoments wheel = MadeMoments.Wheel(1.0, i => i <= Command ? BindingKind.Nothing : (i > 500 && i % 5 != 0) || i is > 300 and <= 315 ? BindingKind.Tyre : BindingKind.Motor);
        IReadOnlyList<BindingSpan> spans = BindingSpans.Find(MadeMoments.Time, [wheel, wheel], Command);
        Assert.Equal([BindingKind.Motor, BindingKind.Tyre], spans.Select(s => Assert.Single(s.Kinds)));
        Assert.Equal(0.1, spans[0].From);
        Assert.Equal(spans[0].To, spans[1].From);
        Assert.Equal(Change, spans[1].From, 0.02);
        Assert.Equal(MadeMoments.Time[^1], spans[1].To);
        Assert.Equal(BindingKind.Tyre, BindingSpans.Over(MadeMoments.Time, [wheel, wheel], 500, 1000)!.Leading);
        Assert.Equal(BindingKind.Motor, BindingSpans.Over(MadeMoments.Time, [wheel, wheel], Command, 500)!.Leading);
    }

    // one that is commanded is enough; a lifted wheel is told beside what binds the others, at last also alone
    [Fact]
    public void Idle_is_without_any_command_and_a_lifted_wheel_stands_beside_what_binds_the_others()
    {
        BindingMoments idle = MadeMoments.Wheel(0.0, i => i < 800 ? BindingKind.Nothing : BindingKind.Lifted);
        BindingMoments driven = MadeMoments.Wheel(2.0, i => i < 300 ? BindingKind.Nothing : i < 800 ? BindingKind.Tyre : BindingKind.Lifted);
        BindingMoments lifts = MadeMoments.Wheel(9.0, i => i < 300 ? BindingKind.Nothing : i < 600 ? BindingKind.Motor : BindingKind.Lifted);
        IReadOnlyList<BindingSpan> spans = BindingSpans.Find(MadeMoments.Time, [idle, driven, lifts], 0);
        Assert.Equal(
            ["Nothing", "Motor Tyre", "Tyre Lifted", "Lifted"], spans.Select(s => string.Join(' ', s.Kinds)));
        Assert.Equal([0.0, 0.3, 0.6, 0.8], spans.Select(s => Math.Round(s.From, 6)));
    }

    // 15 ms of another kind are flicker, 30 ms are not; so is a short beginning
    [Theory]
    [InlineData(0.5, 0.515, new[] { BindingKind.Motor })]
    [InlineData(0.5, 0.53, new[] { BindingKind.Motor, BindingKind.CurrentLimit, BindingKind.Motor })]
    [InlineData(0.0, 0.015, new[] { BindingKind.Motor })]
    [InlineData(0.0, 0.03, new[] { BindingKind.CurrentLimit, BindingKind.Motor })]
    [InlineData(0.5, 0.525, new[] { BindingKind.Motor, BindingKind.CurrentLimit, BindingKind.Motor })]
    public void A_stretch_counts_from_twenty_milliseconds_on(double from, double to, BindingKind[] expected)
    {
        BindingMoments wheel = MadeMoments.Wheel(1.0, i => 0.001 * i > from - 1e-9 && 0.001 * i < to - 1e-9 ? BindingKind.CurrentLimit : BindingKind.Motor);
        IReadOnlyList<BindingSpan> spans = BindingSpans.Find(MadeMoments.Time, [wheel], 0);
        Assert.Equal(expected, spans.Select(s => Assert.Single(s.Kinds)));
        Assert.Equal(0.0, spans[0].From);
        Assert.Equal(1.0, spans[^1].To);
        Assert.All(spans.Zip(spans.Skip(1)), s => Assert.Equal(s.First.To, s.Second.From));
    }

    // two wheels of 2 N and one of 3 N: 4 N are more than 3 N, so what binds two comes first, whichever way the wheels stand
    [Theory]
    [InlineData(2.0, 3.0, "Motor Tyre")]
    [InlineData(2.0, 5.0, "Tyre Motor")]
    public void The_kinds_of_a_stretch_stand_by_the_force_they_set(double two, double one, string expected)
    {
        BindingMoments[] wheels = [MadeMoments.Wheel(one, _ => BindingKind.Tyre), MadeMoments.Wheel(-two, _ => BindingKind.Motor), MadeMoments.Wheel(two, _ => BindingKind.Motor)];
        Assert.Equal(expected, string.Join(' ', Assert.Single(BindingSpans.Find(MadeMoments.Time, wheels, 0)).Kinds));
        BindingShares shares = BindingSpans.Over(MadeMoments.Time, wheels, 0, 1000)!;
        Assert.Equal(Math.Max(one, 2.0 * two) / (one + (2.0 * two)), shares.Kinds[0].Share, 1e-9);
        Assert.Equal(1.0, shares.Kinds.Sum(k => k.Share), 1e-12);
    }

    // a wheel at top speed gives nothing and is still bound by its motor
    [Fact]
    public void A_wheel_without_force_is_named_too()
    {
        BindingMoments[] wheels = [MadeMoments.Wheel(3.0, _ => BindingKind.Tyre), MadeMoments.Wheel(0.0, _ => BindingKind.Motor)];
        Assert.Equal([BindingKind.Tyre, BindingKind.Motor], Assert.Single(BindingSpans.Find(MadeMoments.Time, wheels, 0)).Kinds);
        Assert.Equal([BindingKind.Motor], Assert.Single(BindingSpans.Find(MadeMoments.Time, [wheels[1]], 0)).Kinds);
        Assert.Empty(BindingSpans.Find(MadeMoments.Time, [], 0));
        Assert.Empty(BindingSpans.Find(MadeMoments.Time, wheels, 1000));
    }

    // 0.65 s of the tyres, 0.3 s of the controllers, 20 ms of the battery, then nothing commanded, all at the same force: whichever part of it is asked for
    [Theory]
    [InlineData(0, BindingKind.Tyre)]
    [InlineData(750, BindingKind.CurrentLimit)]
    [InlineData(951, BindingKind.Battery)]
    [InlineData(971, null)]
    public void What_bound_over_a_time_is_what_set_most_of_its_impulse(int from, BindingKind? expected)
    {
        BindingMoments wheel = MadeMoments.Wheel(1.0, i => i <= 650 ? BindingKind.Tyre : i <= 950 ? BindingKind.CurrentLimit : i <= 970 ? BindingKind.Battery : BindingKind.Nothing);
        Assert.Equal(expected, BindingSpans.Over(MadeMoments.Time, [wheel], from, 1000)?.Leading);
    }

    // 2 N for 0.4 s are more than 1 N for 0.6 s
    [Fact]
    public void Force_counts_with_the_time()
    {
        BindingMoments wheel = MadeMoments.Wheel(1.0, i => i <= 600 ? BindingKind.Motor : BindingKind.Tyre);
        double[] force = [.. MadeMoments.Time.Select((_, i) => i <= 600 ? 1.0 : 2.0)];
        Assert.Equal(BindingKind.Motor, BindingSpans.Over(MadeMoments.Time, [wheel], 0, 1000)!.Leading);
        Assert.Equal(BindingKind.Tyre, BindingSpans.Over(MadeMoments.Time, [wheel with { Force = force }], 0, 1000)!.Leading);
    }

    // a tenth is named, less is not; the largest always is
    [Theory]
    [InlineData(101, true)]
    [InlineData(99, false)]
    public void What_sets_less_than_a_tenth_is_not_named(int samples, bool isNamed)
    {
        BindingMoments wheel = MadeMoments.Wheel(1.0, i => i < samples ? BindingKind.Tyre : BindingKind.Motor);
        BindingMoments lifted = MadeMoments.Wheel(1.0, i => i < samples ? BindingKind.Lifted : BindingKind.Motor);
        BindingShares shares = BindingSpans.Over(MadeMoments.Time, [wheel], 0, 1000)!;
        Assert.Equal(isNamed ? [BindingKind.Motor, BindingKind.Tyre] : [BindingKind.Motor], shares.Named);
        Assert.False(shares.IsLifted);
        Assert.Equal(isNamed, BindingSpans.Over(MadeMoments.Time, [wheel, lifted], 0, 1000)!.IsLifted);
    }

    // a lifted wheel gives nothing, and more of nothing changes that: it leads only where there is nothing else
    [Fact]
    public void A_lifted_wheel_leads_only_alone()
    {
        BindingMoments lifted = MadeMoments.Wheel(50.0, _ => BindingKind.Lifted);
        BindingMoments motor = MadeMoments.Wheel(0.1, _ => BindingKind.Motor);
        BindingMoments idle = MadeMoments.Wheel(50.0, _ => BindingKind.Nothing);
        Assert.Equal([BindingKind.Motor], BindingSpans.Over(MadeMoments.Time, [lifted, motor, idle], 0, 1000)!.Kinds.Select(k => k.Kind));
        Assert.Equal(BindingKind.Lifted, BindingSpans.Over(MadeMoments.Time, [lifted, idle], 0, 1000)!.Leading);
        Assert.Null(BindingSpans.Over(MadeMoments.Time, [idle], 0, 1000));
        Assert.All(BindingSpans.Leading([lifted, motor, idle]), k => Assert.Equal(BindingKind.Motor, k));
        Assert.All(BindingSpans.Leading([lifted]), k => Assert.Equal(BindingKind.Lifted, k));
        Assert.All(BindingSpans.Leading([idle]), k => Assert.Equal(BindingKind.Nothing, k));
        Assert.All(BindingSpans.Leading([motor with { IsDriven = false }, idle]), k => Assert.Equal(BindingKind.Nothing, k));
    }
}
