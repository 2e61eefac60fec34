using PushSim.Analysis.Turning;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;
using PushSim.Words.Runs;
using PushSim.Words.Turns;
using Xunit;

namespace PushSim.Tests.Analysis.Turning;

/// <summary>A turn's report: ease with its numbers, what would help, chatter in the history, hysteresis.</summary>
public class TurnReviewTests
{
    private static readonly Lazy<RunResult> s_quiet = new(() => Review(TestRobots.Spot()));

    private static readonly Lazy<RunResult> s_bouncy = new(() => Review(TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy))));

    private static RunResult Review(ScenarioSettings scenario) => TurnReview.Review(Simulator.Run(scenario));

    // own check: the stated limit turns it, a little less does not
    [Fact]
    public void Least_current_limit_and_motor_are_the_least()
    {
        TurnResult r = s_quiet.Value.Turning!;
        Assert.Equal(TurnEase.Freely, r.Ease);
        double limit = r.LeastCurrentLimit!.Value;
        Assert.True(Turns(TestRobots.FourWheels(limit: limit)));
        Assert.False(Turns(TestRobots.FourWheels(limit: 0.97 * limit)));
        double share = r.LeastMotorShare!.Value;
        Assert.True(Turns(TestRobots.FourWheels(motor: TestRobots.Motor with { Resistance = TestRobots.Motor.Resistance / share })));
        Assert.False(Turns(TestRobots.FourWheels(motor: TestRobots.Motor with { Resistance = TestRobots.Motor.Resistance / (0.97 * share) })));
    }

    // a wheel that only rolls along turns as the robot does: the cost of scrub is that of the driven wheels, with or without it
    [Fact]
    public void Scrub_is_told_by_the_driven_wheels()
    {
        RobotSettings whole = TestRobots.FourWheels();
        RobotSettings front = whole with { Drives = [.. whole.Drives.Select((d, i) => i < 2 ? d : d with { Motors = [] })], Controllers = [.. whole.Controllers.Take(2)] };
        RunResult result = Review(TestRobots.Spot(front));
        Assert.Equal(result.Turning!.YawRateWithoutSlip / result.Answers.YawRate!.Value, result.Answers.EffectiveTrackRatio!.Value, 1e-9);
        Assert.True(result.Answers.EffectiveTrackRatio > 1.2);
    }

    // two in series share the voltage: one resistance after the other; two in parallel each have all of it
    [Theory]
    [InlineData(Wiring.Series, 0.5)]
    [InlineData(Wiring.Parallel, 2.0)]
    public void A_controller_without_a_limit_starts_from_its_motors_stall_current(Wiring wiring, double timesOneMotor)
    {
        RobotSettings robot = TestRobots.FourWheels(limit: double.PositiveInfinity);
        ControllerSettings left = robot.Controllers[0] with { Motors = [(0, 0), (2, 0)], Wiring = wiring };
        Assert.Equal(timesOneMotor * 3.0 * 4.2 / TestRobots.Motor.Resistance, TurnHelps.LimitOf(robot, left), 1e-12);
    }

    [Theory]
    [InlineData(0.9, TurnEase.CannotTurn)]
    [InlineData(1.1, TurnEase.AtTheLimit)]
    [InlineData(2.0, TurnEase.Freely)]
    public void Ease_follows_the_reserve(double timesTheLeast, TurnEase ease)
    {
        double least = s_quiet.Value.Turning!.LeastCurrentLimit!.Value;
        RunResult result = Review(TestRobots.Spot(TestRobots.FourWheels(limit: timesTheLeast * least)));
        Assert.Equal(ease, result.Turning!.Ease);
        Assert.Contains(ease switch { TurnEase.CannotTurn => "cannot turn", TurnEase.AtTheLimit => "at the limit", _ => "turns with power to spare" }, RunWords.Verdict(result));
    }

    // own check: each least change lets it turn, and each is less than its largest
    [Fact]
    public void A_robot_that_cannot_turn_is_told_what_would_let_it()
    {
        double least = s_quiet.Value.Turning!.LeastCurrentLimit!.Value;
        RunResult result = Review(TestRobots.Spot(TestRobots.FourWheels(limit: 0.9 * least)));
        TurnResult r = result.Turning!;
        Assert.Equal(1.0 / 0.9, r.LeastCurrentShare!.Value, 0.03);
        Assert.All(r.Helps, h => Assert.True(h.Turns, h.What.ToString()));
        Assert.Contains(r.Helps, h => h.What == TurnChange.Wheelbase && h.To < h.From);
        Assert.Contains(r.Helps, h => h.What == TurnChange.Friction && h.To < h.From);
        Assert.Contains("would let it", RunWords.Verdict(result));
        Assert.Empty(r.Modes);
        Assert.Null(r.RotationCentre);
        TurnHelp track = r.Helps.Single(h => h.What == TurnChange.Wheelbase);
        Assert.True(Turns(TestRobots.FourWheels(limit: 0.9 * least, wheelbase: 1e-3 * track.To)));
    }

    // four point contacts: the scrub moment falls with the wheelbase as L B/sqrt(L^2 + B^2); computed here. Tyres here are no points: 5 %
    [Fact]
    public void A_shorter_wheelbase_scrubs_less()
    {
        TyreSettings even = TestRobots.SoftTyre with { KineticFriction = 1.0, RollingResistance = 0.0 };
        RunResult result = Review(TestRobots.Spot(TestRobots.FourWheels(even)));
        TurnHelp shorter = result.Turning!.Helps.Single(h => h.What == TurnChange.Wheelbase);
        double Moment(double l) => l * 0.15 / Math.Sqrt((l * l) + (0.15 * 0.15));
        double expected = Moment(1e-3 * shorter.To) / Moment(1e-3 * shorter.From);
        Assert.Equal(expected, shorter.ScrubMoment / result.Answers.ScrubMoment!.Value, 0.05 * expected);
        Assert.True(Math.Abs(shorter.YawRate) > Math.Abs(result.Answers.YawRate!.Value));
    }

    [Fact]
    public void A_pivot_turns_about_its_standing_side()
    {
        ScenarioSettings pivot = TestRobots.Scenario(TestRobots.FourWheels(), ManoeuvreKind.Arc, 0.4, 0.4, 2.0);
        (double x, double y) = Review(pivot).Turning!.RotationCentre!.Value;
        Assert.InRange(x, -0.056, 0.056);
        Assert.InRange(y, 0.01, 0.076);
    }

    [Fact]
    public void A_spot_turn_is_about_the_middle_and_its_moments_balance()
    {
        TurnResult r = s_quiet.Value.Turning!;
        Assert.Equal(0.0, r.RotationCentre!.Value.X, 1e-3);
        Assert.Equal(0.0, r.RotationCentre.Value.Y, 1e-3);
        double scrub = r.Wheels.Sum(w => w.ScrubMoment);
        Assert.Equal(scrub, r.Wheels.Sum(w => w.DriveMoment), 0.01 * scrub);
        Assert.All(r.ContactPaths, p => Assert.Equal(double.Hypot(0.055, 0.075), double.Hypot(p.X[^1], p.Y[^1]), 1e-3));
        Assert.All(r.Wheels, w => Assert.Null(w.Frequency));
    }

    // own check: full chatter lives just below the damping at which it is said to stop and dies just above
    [Fact]
    public void Chatter_begins_and_stops_where_it_is_said_to()
    {
        ScenarioSettings scenario = TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy));
        RunResult result = s_bouncy.Value;
        ChatterRange range = result.Turning!.Range!;
        Assert.NotNull(result.Answers.Chatter);
        Assert.True(range.Onset > 1.0);
        Assert.True(range.Stop >= range.Onset);
        Assert.NotNull(Simulator.Run(Damped(scenario, 0.9 * range.Onset!.Value)).Answers.Chatter);
        Assert.Null(Simulator.Run(Damped(scenario, 1.1 * range.Stop!.Value)).Answers.Chatter);
        Assert.All(result.Turning.Wheels, w => Assert.InRange(w.Frequency!.Value, 70.0, 200.0));
        Assert.Contains(TurnExplanation.Of(result.Turning, result), l => l.Contains("begins to chatter by itself below", StringComparison.Ordinal));
    }

    [Fact]
    public void A_chatter_verdict_carries_its_range_over_slip_speeds()
    {
        RunResult bouncy = s_bouncy.Value;
        TurnResult r = bouncy.Turning!;
        Assert.Equal(25, r.SlipSpeeds.Count);
        Assert.Contains(r.SlipSpeeds, p => p.RingMargin < 1.0);
        Assert.Contains(r.SlipSpeeds, p => p.RingMargin > 1.0);
        Assert.True(r.SimulatedGrowth > 0.0);
        Assert.Contains(TurnExplanation.Of(r, bouncy), l => l.Contains("cannot be seen in a pull test", StringComparison.Ordinal));
    }

    // common practice, no source: skid steering wears tyres far more than driving straight
    [Fact]
    public void Turning_on_the_spot_wears_far_more_than_driving_straight()
    {
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { SpecificWear = 0.5e-9 });
        double spot = Simulator.Run(TestRobots.Spot(robot, 0.6)).Answers.Wear!.Value;
        double straight = Simulator.Run(TestRobots.Scenario(robot, ManoeuvreKind.Launch, 0.6, 0.0, 3.0)).Answers.Wear!.Value;
        Assert.True(spot > 10.0 * straight, $"on the spot {spot}, straight {straight} m^3");
    }

    // common practice, no source: bouncy tyres chatter on the spot where a duller foam of nearly the same grip does not
    [Fact]
    public void A_bouncy_tyre_chatters_where_a_duller_one_of_the_same_grip_does_not()
    {
        Assert.NotNull(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy))).Answers.Chatter);
        Assert.Null(Simulator.Run(TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy with { BodyDamping = 2.5 }))).Answers.Chatter);
    }

    [Fact]
    public void Other_manoeuvres_come_back_as_they_are()
    {
        RunResult launch = Simulator.Run(TestRobots.Launch());
        Assert.Same(launch, TurnReview.Review(launch));
    }

    // computed here: a line of amplitude 0.7 N at 125 Hz beside a mean
    [Fact]
    public void A_spectrum_shows_a_line_at_its_place_and_height()
    {
        double[] along = [.. Enumerable.Range(0, 512).Select(i => 2.0 + (0.7 * Math.Sin(2.0 * Math.PI * 125.0 * i / 1000.0)))];
        ForceSpectrum s = ForceSpectrum.Of("w", along, new double[512], 1000.0);
        Assert.Equal(125.0, s.Peak, 1e-9);
        Assert.Equal(0.7, s.Amplitudes.Max(), 1e-3);
        Assert.Equal(0.7 / Math.Sqrt(2.0), s.Swing, 1e-3);
    }

    [Fact]
    public void A_map_is_the_same_twice_and_agrees_with_its_simulations()
    {
        ScenarioSettings scenario = TestRobots.Spot(TestRobots.FourWheels(GrowthTests.Bouncy));
        double[] damping = [0.2, 0.4, 0.8, 1.6, 3.2];
        double[] slip = [0.2, 0.4, 0.8, 1.6];
        StabilityMap Map() => StabilityMap.Compute(damping, slip, (d, v) => TurnModel.With(scenario, t => t with { BodyDamping = d, SlipSpeed = v }), 2, 2);
        StabilityMap first = Map();
        StabilityMap second = Map();
        Assert.Equal(first.Points.Cast<StabilityPoint>(), second.Points.Cast<StabilityPoint>());
        Assert.Equal(20, first.Found.Count());
        (int agree, int all) = first.Agreement;
        Assert.Equal(4, all);
        Assert.Equal(all, agree);
        Assert.True(first.Points[0, 2]!.Growth > 0.0 && first.Points[4, 2]!.Growth < 0.0);
    }

    private static bool Turns(RobotSettings robot) => TurnTrial.Of(TestRobots.Spot(robot), WorkBudget.Endless()).Turns;

    private static ScenarioSettings Damped(ScenarioSettings scenario, double factor) => TurnModel.With(scenario, t => t with { BodyDamping = factor * t.BodyDamping });
}
