using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>What limits a push, out of made-up histories with one sample a millisecond.</summary>
public class PushLimitsTests
{
    private const double Start = 0.1;
    private const double Change = 0.5;

    // a tyre at its grip for four of five milliseconds holds the push, though each of its stretches is short: it is not the one before that goes on;
    // the sample before the command acts, and a short slide, are no stretches of their own
    [Fact]
    public void Flicker_counts_as_what_holds_most_of_it_and_short_stretches_as_their_neighbours()
    {
        RunHistory history = Made(i => (i > 500 && i % 5 != 0) || i is > 300 and <= 315);
        IReadOnlyList<LimitSpan> spans = PushLimits.Find(history, Start);
        Assert.Equal([PushLimit.Motors, PushLimit.Tyres], spans.Select(s => s.Limit));
        Assert.Equal(Start, spans[0].From);
        Assert.Equal(spans[0].To, spans[1].From);
        Assert.Equal(Change, spans[1].From, 0.02);
        Assert.Equal(history.Time[^1], spans[1].To);
        Assert.Equal(PushLimit.Tyres, PushLimits.Mostly(spans, Change));
        Assert.Equal(PushLimit.Motors, PushLimits.Mostly([spans[0]], double.NaN));
    }

    // Of four wheels with 3.3 N each: over half the load must be at the end of its grip, alpha 0.5; half of the controllers is not enough;
    // 20 % below 12 V is 9.6 V. What comes first counts. Computed here.
    [Theory]
    [InlineData(2, 0.5, 0, 11.0, PushLimit.Motors)]
    [InlineData(3, 0.49, 0, 11.0, PushLimit.Motors)]
    [InlineData(3, 0.5, 0, 11.0, PushLimit.Tyres)]
    [InlineData(0, 0.5, 2, 11.0, PushLimit.Motors)]
    [InlineData(0, 0.5, 3, 11.0, PushLimit.Controllers)]
    [InlineData(0, 0.5, 0, 9.61, PushLimit.Motors)]
    [InlineData(0, 0.5, 0, 9.59, PushLimit.Battery)]
    [InlineData(3, 0.5, 3, 5.0, PushLimit.Tyres)]
    [InlineData(0, 0.5, 3, 5.0, PushLimit.Controllers)]
    public void A_moments_limit_is_the_first_that_binds(int sliding, double alpha, int limiting, double volts, PushLimit expected)
    {
        RobotSettings robot = TestRobots.FourWheels();
        RunHistory history = MadeHistory.Of(
            TestRobots.Launch(robot),
            [
                ("battery_voltage_v", _ => volts),
                .. robot.Wheels.Take(sliding).Select(w => ($"wheel_{Slug.Of(w.Name)}_sliding", (Func<double, double>)(_ => alpha))),
                .. robot.Controllers.Take(limiting).Select(c => ($"controller_{Slug.Of(c.Name)}_limiting", (Func<double, double>)(_ => 1.0))),
            ]);
        LimitSpan span = Assert.Single(PushLimits.Find(history, 0.0));
        Assert.Equal((0.0, 1.0, expected), (span.From, span.To, span.Limit));
    }

    // one that is commanded is enough; a wheel whose load has gone for far more than a hop counts as lifted, also while others slide
    [Fact]
    public void Idle_is_without_any_command_and_a_lifted_wheel_comes_first()
    {
        RobotSettings robot = TestRobots.FourWheels();
        string command = "command_" + Slug.Of(robot.Controllers[1].Name);
        string load = $"wheel_{Slug.Of(robot.Wheels[2].Name)}_load_n";
        RunHistory history = MadeHistory.Of(
            TestRobots.Launch(robot), ("command", _ => 0.0), (command, t => t < 0.3 ? 0.0 : -0.1), (load, t => t < 0.6 ? 3.3 : 0.0), ("sliding", _ => 1.0));
        IReadOnlyList<LimitSpan> spans = PushLimits.Find(history, 0.0);
        Assert.Equal([PushLimit.Idle, PushLimit.Tyres, PushLimit.LiftedWheels], spans.Select(s => s.Limit));
        Assert.Equal(0.3, spans[1].From, 1e-9);

        // the lag of 20 ms, in steps of 1 ms, falls to a tenth after ln 10 / ln 1.05 = 47.2 steps from 600 ms on
        Assert.Equal(0.6 + 0.047, spans[2].From, 0.0011);
    }

    // 15 ms of another limit are flicker, 30 ms are not; so is a short beginning
    [Theory]
    [InlineData(0.5, 0.515, new[] { PushLimit.Motors })]
    [InlineData(0.5, 0.53, new[] { PushLimit.Motors, PushLimit.Controllers, PushLimit.Motors })]
    [InlineData(0.0, 0.015, new[] { PushLimit.Motors })]
    [InlineData(0.0, 0.03, new[] { PushLimit.Controllers, PushLimit.Motors })]
    [InlineData(0.5, 0.525, new[] { PushLimit.Motors, PushLimit.Controllers, PushLimit.Motors })]
    public void A_stretch_counts_from_twenty_milliseconds_on(double from, double to, PushLimit[] expected)
    {
        RunHistory history = MadeHistory.Of(TestRobots.Launch(), ("limiting", t => t > from - 1e-9 && t < to - 1e-9 ? 1.0 : 0.0));
        IReadOnlyList<LimitSpan> spans = PushLimits.Find(history, 0.0);
        Assert.Equal(expected, spans.Select(s => s.Limit));
        Assert.Equal(0.0, spans[0].From);
        Assert.Equal(1.0, spans[^1].To);
        Assert.All(spans.Zip(spans.Skip(1)), s => Assert.Equal(s.First.To, s.Second.From));
    }

    // 0.65 s of tyres in two stretches in all; from 0.75 s on 0.25 s of tyres and 0.3 s of the controllers; at last 20 ms of the battery
    [Theory]
    [InlineData(double.NaN, PushLimit.Tyres)]
    [InlineData(0.1, PushLimit.Tyres)]
    [InlineData(0.75, PushLimit.Controllers)]
    [InlineData(1.27, PushLimit.Controllers)]
    [InlineData(1.3, PushLimit.Battery)]
    public void The_limit_of_a_push_is_what_held_longest_since_the_touch(double touch, PushLimit expected)
    {
        LimitSpan[] spans =
        [
            new(0.0, 0.35, PushLimit.Tyres), new(0.35, 0.5, PushLimit.Motors), new(0.5, 0.55, PushLimit.Battery), new(0.55, 0.7, PushLimit.Motors),
            new(0.7, 1.0, PushLimit.Tyres), new(1.0, 1.3, PushLimit.Controllers), new(1.3, 1.32, PushLimit.Battery), new(1.32, 3.0, PushLimit.Idle),
        ];
        Assert.Equal(expected, PushLimits.Mostly(spans, touch));
        Assert.Null(PushLimits.Mostly(spans, 1.5));
        Assert.Null(PushLimits.Mostly([], double.NaN));
    }

    private static RunHistory Made(Func<int, bool> slides)
    {
        static int Sample(double t) => (int)Math.Round(1000.0 * t);
        return MadeHistory.Of(TestRobots.Launch(), ("sliding", t => slides(Sample(t)) ? 1.0 : 0.0), ("command", t => Sample(t) > 100 ? 1.0 : 0.0));
    }

    // 11 V at the bus and the whole command: motors stand at 11 V over one winding each, two in series at 11 V over both
    [Theory]
    [InlineData(Wiring.Single, 0.9, false)]
    [InlineData(Wiring.Single, 0.2, true)]
    [InlineData(Wiring.Series, 0.45, false)]
    [InlineData(Wiring.Series, 0.1, true)]
    public void Motors_are_fast_where_they_take_little_of_their_stall_current(Wiring wiring, double ofOneWinding, bool isFast)
    {
        RobotSettings robot = TestRobots.FourWheels();
        if (wiring == Wiring.Series)
        {
            robot = robot with { Controllers = [robot.Controllers[0] with { Motors = [(0, 0), (2, 0)], Wiring = wiring }, robot.Controllers[1] with { Motors = [(1, 0), (3, 0)], Wiring = wiring }] };
        }

        double current = ofOneWinding * 11.0 / TestRobots.Motor.Resistance;
        RunHistory history = MadeHistory.Of(TestRobots.Launch(robot), [.. robot.Drives.Select(d => ($"motor_{Slug.Of(d.Name)}_1_current_a", (Func<double, double>)(_ => current)))]);
        Assert.Equal(isFast, PushLimits.NearTopSpeed(history, [new LimitSpan(0.0, 1.0, PushLimit.Motors)], 0.0));
    }
}
