using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Answers read off made-up histories; every number is computed here.</summary>
public class AnswerFinderTests
{
    // the driver's delay of 50 ms on the command at 100 ms
    private const double Start = 0.15;

    private static ScenarioSettings Told(ManoeuvreKind kind, params CommandPoint[] commands)
    {
        ScenarioSettings s = TestRobots.Scenario(TestRobots.FourWheels(), kind, 0.0, 0.0, 1.0);
        return s with { Manoeuvre = s.Manoeuvre with { Commands = commands, Driver = new DriverSettings { ReactionDelay = 0.05 } } };
    }

    private static RunAnswers Find(ScenarioSettings scenario, params (string, Func<double, double>)[] channels) => AnswerFinder.Find(MadeHistory.Of(scenario, channels), []);

    // up to 1 m/s at 650 ms, 2 m/s2 from the command on, then slowly down: 90 % after 450 ms
    private static double Rising(double t) => t < 0.65 ? 2.0 * Math.Max(0.0, t - Start) : 1.0 - (0.1 * (t - 0.65));

    [Fact]
    public void A_launch_tells_top_speed_and_the_time_to_nine_tenths_of_it_since_the_command()
    {
        List<Mark> marks = [];
        RunAnswers a = AnswerFinder.Find(MadeHistory.Of(Told(ManoeuvreKind.Launch, new CommandPoint(0.1, 1.0, 0.0)), ("speed_m_per_s", Rising)), marks);
        Assert.Equal(1.0, a.TopSpeed!.Value, 1e-12);
        Assert.Equal(0.45, a.TimeTo90PercentSpeed!.Value, 0.0011);
        Assert.Equal(BindingKind.Motor, a.LimitedBy);
        Assert.Equal([0.6, 0.65], marks.Select(m => Math.Round(m.Time, 2)));
        Assert.Equal([0.9, 1.0], marks.Select(m => Math.Round(m.Value, 2)));
    }

    // 4 m/s from the command on: the first metre takes a quarter of a second
    [Theory]
    [InlineData(4.0, 0.0, 0.25)]
    [InlineData(4.0, 20.0, 0.25)]
    [InlineData(0.5, 0.0, null)]
    public void The_first_metre_is_timed_from_the_command_and_the_place_at_it(double speed, double before, double? time)
    {
        RunAnswers a = Find(Told(ManoeuvreKind.Launch, new CommandPoint(Start, 1.0, 0.0)), ("speed_m_per_s", _ => speed), ("x_m", t => (before * Math.Min(t, Start)) + (speed * Math.Max(0.0, t - Start))));
        Assert.Equal(time is null, a.TimeToOneMetre is null);
        Assert.Equal(time ?? 0.0, a.TimeToOneMetre ?? 0.0, 1e-9);
    }

    // faster at the command than nine tenths of anything: no negative time
    [Fact]
    public void A_robot_that_rolls_already_needs_no_time()
    {
        RunAnswers a = Find(Told(ManoeuvreKind.Launch, new CommandPoint(0.1, 1.0, 0.0)), ("speed_m_per_s", _ => 0.5));
        Assert.Equal(0.0, a.TimeTo90PercentSpeed);
    }

    [Theory]
    [InlineData(0.0)]
    [InlineData(-0.2)]
    public void A_robot_that_does_not_move_forward_has_no_time(double speed)
    {
        RunAnswers a = Find(Told(ManoeuvreKind.Launch, new CommandPoint(0.1, 1.0, 0.0)), ("speed_m_per_s", _ => speed));
        Assert.Equal(speed, a.TopSpeed);
        Assert.Null(a.TimeTo90PercentSpeed);
        Assert.Null(a.LimitedBy);
    }

    // The window is from the command, at 150 ms, until 90 % of top speed, 600 ms: 451 samples, of which over half of the load decides.
    [Theory]
    [InlineData(0.368, 0.0, 0.0, 11.0, BindingKind.Tyre)] // told 7 ms later: 226 from 375 ms on
    [InlineData(0.370, 0.0, 0.0, 11.0, BindingKind.Motor)] // 224
    [InlineData(0.368, 0.49, 0.0, 11.0, BindingKind.Motor)] // not at the end of their grip
    [InlineData(2.0, 0.0, 0.51, 11.0, BindingKind.CurrentLimit)]
    [InlineData(2.0, 0.0, 0.5, 11.0, BindingKind.Motor)]
    [InlineData(0.368, 0.0, 0.51, 5.0, BindingKind.Tyre)]
    [InlineData(2.0, 0.0, 0.51, 5.0, BindingKind.CurrentLimit)]
    [InlineData(2.0, 0.0, 0.0, 9.59, BindingKind.Battery)] // 20 % below 12 V is 9.6 V
    [InlineData(2.0, 0.0, 0.0, 9.61, BindingKind.Motor)]
    public void The_limit_is_what_holds_most_of_the_way(double slidesFrom, double alpha, double limiting, double volts, BindingKind limit)
    {
        RunAnswers a = Find(
            Told(ManoeuvreKind.Launch, new CommandPoint(0.1, 1.0, 0.0)),
            ("speed_m_per_s", Rising), ("sliding", t => t < slidesFrom - 1e-9 ? 0.0 : alpha > 0.0 ? alpha : 0.5), ("limiting", _ => limiting), ("battery_voltage_v", _ => volts));
        Assert.Equal(limit, a.LimitedBy);
    }

    // from (1, 2) at the last command, at 400 ms, by 30 cm along x and 40 cm along y until it stands at 800 ms; before, it came from far
    [Fact]
    public void A_stop_tells_the_way_since_the_last_command()
    {
        List<Mark> marks = [];
        static double Way(double t) => t < 0.4 ? t - 0.4 : Math.Min(1.0, (t - 0.4) / 0.4);
        RunAnswers a = AnswerFinder.Find(
            MadeHistory.Of(
                Told(ManoeuvreKind.Brake, new CommandPoint(0.1, 1.0, 0.0), new CommandPoint(0.4, 0.0, 0.0)),
                ("speed_m_per_s", t => t < 0.7995 ? 1.25 : 0.0), ("x_m", t => 1.0 + (0.3 * Way(t))), ("y_m", t => 2.0 + (0.4 * Way(t))), ("limiting", t => t is > 0.4 and < 0.7 ? 1.0 : 0.0)),
            marks);
        Assert.Equal(0.5, a.StopDistance!.Value, 1e-9);
        Assert.Equal(BindingKind.CurrentLimit, a.LimitedBy);
        Assert.Equal([(MarkKind.Command, 0.4), (MarkKind.Standstill, 0.8)], marks.Select(m => (m.Kind, Math.Round(m.Time, 6))));
        Assert.Null(Find(Told(ManoeuvreKind.Brake, new CommandPoint(0.4, 0.0, 0.0)), ("speed_m_per_s", _ => 0.1)).StopDistance);
    }

    // A pull: taut from 200 ms, a ripple of 2 N that falls by half, the peak of 10 N, then 6 N in the mean of the last 40 % of 800 ms, and 11 N at the very end.
    private static double Pulling(double t) => t switch
    {
        < 0.1995 => 0.0,
        < 0.2095 => 2.0,
        < 0.2295 => 1.0,
        < 0.3005 => 10.0 * (t - 0.229) / 0.071,
        < 0.4 => 5.0,
        < 0.9995 => 6.0 + (10.0 * (t - 0.84)),
        _ => 11.0,
    };

    // samples from 680 ms on: 6 N + 10 N/s times their distance from 840 ms, 0 in the mean but that the last has 11 N for 7.6 N
    private const double Plateau = 6.0 + (3.4 / 321.0);

    [Theory]
    [InlineData(ManoeuvreKind.PullTest, BindingKind.CurrentLimit)]
    [InlineData(ManoeuvreKind.DragTest, BindingKind.Tyre)]
    public void A_pull_tells_its_first_peak_and_the_mean_of_its_end(ManoeuvreKind kind, BindingKind limit)
    {
        List<Mark> marks = [];
        RunAnswers a = AnswerFinder.Find(MadeHistory.Of(Told(kind, new CommandPoint(0.1, 1.0, 0.0)), ("tether_force_n", Pulling), ("sliding", t => t is > 0.3 and < 0.7 ? 1.0 : 0.0), ("limiting", t => t >= 0.7 ? 1.0 : 0.0)), marks);
        Assert.Equal(10.0, a.PullBreakaway!.Value, 1e-9);
        Assert.Equal(Plateau, a.PullPlateau!.Value, 1e-9);
        Assert.Equal(limit, a.LimitedBy);
        Assert.Equal([(MarkKind.Breakaway, 0.3), (MarkKind.PlateauStart, 0.68), (MarkKind.PlateauEnd, 1.0)], marks.Select(m => (m.Kind, Math.Round(m.Time, 6))));
    }

    // without a fall by a tenth the greatest force before the plateau's window is the peak; where no tyre slides it is no breakaway, nor where one axle still holds
    [Theory]
    [InlineData(1.0, 1.0, true)]
    [InlineData(0.5, 0.5, false)]
    [InlineData(1.0, 0.5, false)]
    public void A_force_that_only_rises_has_its_peak_at_the_plateaus_start(double front, double rear, bool letsGo)
    {
        RunAnswers a = Find(
            Told(ManoeuvreKind.PullTest, new CommandPoint(0.1, 1.0, 0.0)), ("tether_force_n", t => 10.0 * t), ("wheel_front_left_sliding", _ => front), ("wheel_front_right_sliding", _ => front),
            ("wheel_rear_left_sliding", _ => rear), ("wheel_rear_right_sliding", _ => rear));
        Assert.Equal(letsGo, a.PullBreakaway is not null);
        Assert.Equal(10.0 * (1.0 - (0.4 * 0.999)), a.PullBreakaway ?? 6.0, 0.011);
        Assert.Equal(8.0, a.PullPlateau!.Value, 0.011);
        Assert.Null(a.PullJerk);
    }

    // 1.36 kg that lose 0.5 m/s in 100 ms take 6.8 N of the 10 N: a jerk, with what the tyres held beside it
    [Theory]
    [InlineData(0.0, false)]
    [InlineData(1.0, true)]
    public void A_force_that_stops_the_robot_is_a_jerk(double sliding, bool hides)
    {
        List<Mark> marks = [];
        RunAnswers a = AnswerFinder.Find(
            MadeHistory.Of(
                Told(ManoeuvreKind.PullTest, new CommandPoint(0.1, 1.0, 0.0)), ("tether_force_n", t => t is > 0.3005 and < 0.4 ? 5.0 + (5.0 * (t - 0.3)) : Pulling(t)), ("speed_m_per_s", t => 5.0 * Math.Clamp(0.3 - t, 0.0, 0.1)), ("sliding", t => t < 0.35 ? sliding : 1.0)),
            marks);
        Assert.Equal(10.0, a.PullJerk!.Force, 1e-9);
        Assert.Equal(10.0 - (1.36 * 5.0), a.PullJerk.Held, 1e-6);
        Assert.Equal(hides, a.PullBreakaway is null);
        Assert.Equal(0.3, Assert.Single(marks, m => m.Kind == MarkKind.Jerk).Time, 1e-9);
    }

    [Fact]
    public void A_tether_that_never_tightens_pulls_nothing()
    {
        RunAnswers a = Find(Told(ManoeuvreKind.PullTest, new CommandPoint(0.1, 1.0, 0.0)), ("tether_force_n", _ => 0.0));
        Assert.Null(a.PullPlateau);
        Assert.Null(a.PullBreakaway);
    }

    // The last 40 % of 850 ms since the command: from 660 ms on, about 830 ms. Wheels 150 mm apart, 0.6 m/s on the right more than on the left.
    [Theory]
    [InlineData(2.0, -0.3, 0.3, 2.0)]
    [InlineData(-2.0, 0.3, 0.3, -2.0)]
    [InlineData(-2.0, -0.3, -0.3, -2.0)]
    public void A_turn_tells_its_settled_rate_moment_and_track(double rate, double moment, double scrub, double ratio)
    {
        RunHistory history = MadeHistory.Of(
            Told(ManoeuvreKind.Spot, new CommandPoint(0.1, 0.0, 0.5)),
            ("yaw_rate_rad_per_s", t => rate * (1.0 + (t - 0.83))), ("scrub_moment_n_m", _ => moment),
            ("wheel_front_left_surface_speed_m_per_s", _ => -0.2), ("wheel_rear_left_surface_speed_m_per_s", _ => -0.1),
            ("wheel_front_right_surface_speed_m_per_s", _ => 0.4), ("wheel_rear_right_surface_speed_m_per_s", _ => 0.5));
        RunAnswers a = AnswerFinder.Find(history, []);
        Assert.Equal(rate, a.YawRate!.Value, 1e-9);
        Assert.Equal(scrub, a.ScrubMoment!.Value, 1e-12);
        Assert.Equal(0.6 / (ratio * 0.15), a.EffectiveTrackRatio!.Value, 1e-9);
        Assert.Null(a.LimitedBy);
    }

    // what rounding moves has no top speed that it takes time to reach
    [Theory]
    [InlineData(0.0011, true)]
    [InlineData(0.0009, false)]
    [InlineData(1e-19, false)]
    public void A_robot_that_hardly_moves_takes_no_time_to_its_top_speed(double speed, bool moves)
    {
        RunAnswers a = Find(Told(ManoeuvreKind.Launch, new CommandPoint(0.1, 0.5, 0.0)), ("speed_m_per_s", _ => speed));
        Assert.Equal(speed, a.TopSpeed);
        Assert.Equal(moves, a.TimeTo90PercentSpeed is not null);
    }

    [Theory]
    [InlineData(0.0011, false)]
    [InlineData(0.0009, true)]
    [InlineData(-0.0011, false)]
    [InlineData(-0.0009, true)]
    public void A_robot_that_hardly_turns_is_held_by_something(double rate, bool isHeld)
    {
        RunAnswers a = Find(Told(ManoeuvreKind.Spot, new CommandPoint(0.1, 0.0, 0.5)), ("yaw_rate_rad_per_s", _ => rate));
        Assert.Equal(isHeld ? BindingKind.Motor : null, a.LimitedBy);
        Assert.Equal(isHeld, a.EffectiveTrackRatio is null);
    }

    // 800 ms since the first touch at 200 ms: the mean of 680 ms to the end, about 840 ms
    [Fact]
    public void A_push_tells_its_peak_and_the_mean_of_its_end()
    {
        List<Mark> marks = [];
        RunAnswers a = AnswerFinder.Find(
            MadeHistory.Of(
                Told(ManoeuvreKind.WallPush, new CommandPoint(0.1, 1.0, 0.0)),
                ("contact_force_n", t => t < 0.1995 ? 0.0 : 9.0), ("contact_push_n", t => t < 0.1995 ? 0.0 : t < 0.3 ? 12.0 : 6.0 + (10.0 * (t - 0.84)))),
            marks);
        Assert.Equal(12.0, a.PushPeak);
        Assert.Equal(6.0, a.PushPlateau!.Value, 1e-9);
        Assert.Equal(0.2, Assert.Single(marks).Time, 1e-9);
        Assert.Null(Find(Told(ManoeuvreKind.WallPush), ("contact_force_n", _ => 0.0), ("contact_push_n", _ => 0.0)).PushPeak);
    }

    // 10 N forwards, in floor axes, while the robot turns to its left by more than half a turn
    [Fact]
    public void A_push_is_told_along_the_way_the_robot_faces()
    {
        static double Heading(double t) => 4.0 * t;
        RunAnswers a = Find(
            Told(ManoeuvreKind.Shove, new CommandPoint(0.1, 1.0, 0.0)),
            ("contact_force_n", _ => 10.0), ("heading_rad", Heading),
            ("contact_push_n", t => 10.0 * Math.Cos(Heading(t))), ("contact_side_force_n", t => 10.0 * Math.Sin(Heading(t))));
        Assert.Equal(10.0, a.PushPlateau!.Value, 1e-9);
        Assert.Equal(10.0, a.PushPeak!.Value, 1e-9);
    }

    [Fact]
    public void Commands_begin_with_the_first_that_is_not_zero()
    {
        static double First(params CommandPoint[] commands) => AnswerFinder.FirstCommand(MadeHistory.Of(Told(ManoeuvreKind.Launch, commands)));
        Assert.Equal(0.0, First());
        Assert.Equal(0.0, First(new CommandPoint(0.3, 0.0, 0.0)));
        Assert.Equal(0.35, First(new CommandPoint(0.3, 1.0, 0.0)), 1e-12);
        Assert.Equal(0.35, First(new CommandPoint(0.3, 0.0, -1.0)), 1e-12);
        Assert.Equal(0.45, First(new CommandPoint(0.1, 0.0, 0.0), new CommandPoint(0.4, -1.0, 0.0)), 1e-12);
        Assert.Equal(0.15, First(new CommandPoint(0.1, 0.0, 0.0), new CommandPoint(0.4, 1.0, 0.0, true)), 1e-12);
        Assert.Equal(0.25, First(new CommandPoint(0.1, 0.0, 0.0), new CommandPoint(0.2, 0.0, 0.0), new CommandPoint(0.4, 1.0, 0.0, true)), 1e-12);
        Assert.Equal(0.05, First(new CommandPoint(0.4, 1.0, 0.0, true)), 1e-12);
    }

    // away from (1, 2) by 3 and 4 cm in the middle, back at the end; two tyres wear, two windings warm
    [Fact]
    public void Every_run_tells_peaks_totals_and_travel()
    {
        static double There(double t) => 1.0 - Math.Abs((2.0 * t) - 1.0);
        RunAnswers a = Find(
            Told(ManoeuvreKind.Hold),
            ("x_m", t => 1.0 + (0.03 * There(t))), ("y_m", t => 2.0 - (0.04 * There(t))),
            ("charge_used_a_s", t => 2.0 * t),
            ("motor_front_left_1_winding_temperature_degc", t => 20.0 + (30.0 * There(t))), ("motor_rear_right_1_winding_temperature_degc", t => 20.0 + (10.0 * t)),
            ("wheel_front_left_wear_m3", t => 1e-9 * t), ("wheel_rear_right_wear_m3", t => 3e-9 * t));
        Assert.Equal(0.05, a.Travel!.Value, 1e-12);
        Assert.Equal(2.0, a.ChargeUsed);
        Assert.Equal(50.0, a.PeakWindingTemperature);
        Assert.Equal(4e-9, a.Wear!.Value, 1e-20);
        Assert.Null(a.LimitedBy);
    }
}
