using PushSim.Analysis.Limits;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Words.Limits;
using Xunit;

namespace PushSim.Tests.Analysis.Limits;

public class LimitFinderTests
{
    private static RunResult Run(string kind) => Simulator.Run(kind switch
    {
        "launch" => TestRobots.Launch(),
        "spot" => TestRobots.Spot(turn: 1.0),
        "pull" => TestRobots.Pull(),
        "weak pull" => TestRobots.Pull(TestRobots.FourWheels(limit: 0.5)),
        _ => TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels().WithMass(1.5), end: 1.0),
    });

    [Theory]
    [InlineData("launch")]
    [InlineData("spot")]
    [InlineData("pull")]
    [InlineData("weak pull")]
    [InlineData("shove")]
    public void Shares_of_time_and_impulse_add_up_to_one(string kind)
    {
        RunResult run = Run(kind);
        IReadOnlyList<BindingMoments> wheels = run.Bindings;
        Assert.Equal(run.Scenario.Robot.Wheels.Count, wheels.Count);
        Assert.All(wheels, w => Assert.Equal(run.Time.Length, w.Kinds.Length));
        Assert.All(wheels, w => Assert.Equal(1.0, w.TimeShare.Sum(), 1e-12));
        Assert.All(wheels, w => Assert.Equal(1.0, w.ImpulseShare.Sum(), 1e-12));
        Assert.All(wheels, w => Assert.All(w.TimeShare.Concat(w.ImpulseShare), s => Assert.InRange(s, 0.0, 1.0)));
        Assert.All(wheels, w => Assert.True(w.TimeShare[(int)BindingKind.Nothing] > 0.0));
    }

    [Theory]
    [InlineData("pull", BindingKind.Tyre)]
    [InlineData("weak pull", BindingKind.CurrentLimit)]
    public void What_binds_a_pull_binds_most_of_its_impulse(string kind, BindingKind binding) =>
        Assert.All(Run(kind).Bindings, w => Assert.True(w.ImpulseShare[(int)binding] > 0.5, string.Join(" ", w.ImpulseShare)));

    // at full duty the stalled motors and their controllers are a resistor: equal to the battery's own it halves the voltage
    [Theory]
    [InlineData(1.02, true)]
    [InlineData(0.98, false)]
    public void A_battery_that_cannot_feed_stalled_motors_is_told(double share, bool isStarved)
    {
        RobotSettings robot = TestRobots.FourWheels(limit: 1000.0);
        double load = (TestRobots.Motor.Resistance + robot.Controllers[0].OnResistance) / robot.Drives.Count;
        LimitResult report = LimitFinder.Find(TestRobots.Launch(robot with { Battery = robot.Battery! with { Resistance = share * load } }));
        Assert.Equal(isStarved, report.Now.IsStarved);
        Assert.Equal(isStarved, report.Warnings.Any(w => w is LimitWarning.Starved));
        Assert.Equal(isStarved, LimitVerdict.Of(report).Contains("less than", StringComparison.Ordinal));
    }

    [Theory]
    [InlineData(0.9, "Testmole cannot pull at all: ")]
    [InlineData(0.1, "The tyres limit Testmole ")]
    public void A_robot_that_cannot_pull_is_not_told_a_negative_pull(double slope, string words)
    {
        LimitResult report = LimitFinder.Find(TestRobots.Launch() with { Floor = new FloorSettings { SlopeX = slope } });
        Assert.StartsWith(words, LimitVerdict.Of(report), StringComparison.Ordinal);
        Assert.Equal(report.Now.Pull > 0.0, LimitVerdict.Of(report).Contains("it pulls", StringComparison.Ordinal));
    }

    // the simulator is the reference here: it knows pitch, spin-up of the wheels and the slides of a launch, which the estimate leaves out
    // the stalled motors can be fed, those of the pull cannot: what binds it is not known, and no kind is named
    [Fact]
    public void A_battery_that_starves_in_the_pull_itself_names_no_kind()
    {
        LimitResult r = LimitFinder.Find(TestRobots.Launch());
        Assert.True(r.Now is { IsStarved: false, Pull: > 0.0, Bound.Count: > 0 });
        string words = LimitVerdict.Of(r with { Now = r.Now with { Bound = [] } });
        Assert.StartsWith("The battery cannot feed the motors of Testmole as it pulls, so what binds is not told: the motors could give ", words);
        Assert.DoesNotContain("it pulls", words[words.IndexOf(':', StringComparison.Ordinal)..]);
    }

    [Fact]
    public void The_launch_estimate_is_near_the_run()
    {
        RunResult run = Run("launch");
        LimitResult report = LimitFinder.Find(TestRobots.Launch());
        double there = run.Time[run.Trace.Body.X.FindIndex(x => x >= 1.0)] - 0.1;
        Assert.Equal(there, report.Outputs[LimitOutput.LaunchTime], 0.1 * there);
        Assert.Equal(run.Answers.TopSpeed!.Value, report.Now.TopSpeed, 0.05 * report.Now.TopSpeed);
    }

    [Fact]
    public void The_turn_on_the_spot_is_that_of_the_run()
    {
        RunResult run = Run("spot");
        Assert.Null(run.Answers.Chatter);
        double rate = LimitFinder.Find(TestRobots.Spot(turn: 1.0)).Outputs[LimitOutput.SpotTurnRate];
        Assert.Equal(run.Answers.YawRate!.Value, rate, 0.02 * rate);
    }

    [Fact]
    public void Warm_and_empty_is_weaker()
    {
        LimitResult r = LimitFinder.Find(TestRobots.Pull(TestRobots.FourWheels(limit: double.PositiveInfinity)));
        Assert.Equal(["cold, full", "warm, full", "cold, 80 %", "warm, 80 %"], r.States.Select(s => LimitWords.Of(s.Kind)));
        Assert.True(r.States[1].MotorForce < r.States[0].MotorForce);
        Assert.True(r.States[2].MotorForce < r.States[0].MotorForce);
        Assert.True(r.States[3].MotorForce < r.States[1].MotorForce);
        Assert.All(r.States, s => Assert.Equal(r.States[0].TractionPeak, s.TractionPeak, 1e-9));
    }

    [Fact]
    public void Per_wheel_forces_add_up_and_each_binding_is_its_own()
    {
        LimitResult r = LimitFinder.Find(TestRobots.Pull());
        Assert.Equal(r.Now.Pull!.Value, r.Wheels.Sum(w => w.Force), 1e-6);
        Assert.Equal(1.36 * 9.80665, r.Wheels.Sum(w => w.Load), 1e-9);
        Assert.All(r.Wheels, w => Assert.InRange(w.Force, 0.0, w.PeakForce * (1.0 + 1e-9)));
        Assert.All(r.Wheels, w => Assert.True(w.SlidingForce < w.PeakForce));
        Assert.Equal(2, r.Axles.Count);
        for (int k = 0; k < r.Total.Speed.Length; k++)
        {
            Assert.Equal(r.Total.Motor[k], r.Axles.Sum(a => a.Curve.Motor[k]), 1e-9);
            Assert.Equal(r.Total.Peak[k], r.Axles.Sum(a => a.Curve.Peak[k]), 1e-9);
        }
    }

    // the robot built with the gears that the curve names, and with others a fifth away: computed here
    [Fact]
    public void A_robot_geared_as_advised_dashes_faster_and_one_geared_higher_pulls_less()
    {
        RobotSettings robot = TestRobots.FourWheels(limit: double.PositiveInfinity, ratio: 10.0);
        LimitResult Geared(double factor) => LimitFinder.Find(TestRobots.Pull(robot with
        {
            Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => m with { Ratio = m.Ratio * factor })] })],
        }));
        double Dash(double factor) => Geared(factor).Outputs[LimitOutput.LaunchTime];
        RatioCurve ratio = Geared(1.0).Ratio!;
        Assert.InRange(ratio.BestForDash, 1.01 * ratio.Points[0].Factor, 0.99 * ratio.Points[^1].Factor);
        double best = Dash(ratio.BestForDash);
        Assert.True(best < Dash(1.2 * ratio.BestForDash));
        Assert.True(best < Dash(ratio.BestForDash / 1.2));
        double pull = Geared(ratio.BestForPull).Now.Pull!.Value;
        Assert.True(Geared(ratio.BestForPull / 1.2).Now.Pull < 0.95 * pull);
        Assert.True(Geared(1.2 * ratio.BestForPull).Now.Pull < pull);
        Assert.Equal((RatioEdge.Lowest, RatioEdge.Highest, RatioEdge.None), (ratio.Edge(ratio.Points[0].Factor), ratio.Edge(ratio.Points[^1].Factor), ratio.Edge(ratio.Points[1].Factor)));
    }

    [Fact]
    public void A_match_uses_more_charge_when_it_pushes_more()
    {
        ScenarioSettings s = TestRobots.Pull();
        DutyHeat lazy = LimitFinder.Find(s, pattern: new DutyPattern { Push = 0.0, Dash = 1.0, Turn = 0.0, Rest = 9.0 }).Match;
        DutyHeat hard = LimitFinder.Find(s, pattern: new DutyPattern { Push = 9.0, Dash = 0.0, Turn = 0.0, Rest = 1.0 }).Match;
        Assert.True(hard.ChargeUsed > 2.0 * lazy.ChargeUsed);
        Assert.Null(hard.PeakWinding);
        Assert.Equal(180.0, hard.Time[^1]);
    }

    // a pattern that only pushes: half a second more is half a second's charge more, not a second's
    [Fact]
    public void A_match_ends_within_a_second_too()
    {
        ScenarioSettings s = TestRobots.Pull();
        double Used(double length) => LimitFinder.Find(s, pattern: new DutyPattern { Length = length, Push = 9.0, Dash = 0.0, Turn = 0.0, Rest = 0.0 }).Match.ChargeUsed;
        (double two, double more, double three) = (Used(2.0), Used(2.5), Used(3.0));
        Assert.Equal(0.5 * (two + three), more, 1e-9 * three);
        Assert.True(three > two);
    }

    // rears up where the pull's moment about the rear axle lifts all weight off the front: F h = m g b, the rear wheels carrying all
    [Fact]
    public void A_robot_that_rears_up_is_told_so_with_the_loads_of_that_moment()
    {
        const double Hook = 0.09;
        double weight = 1.36 * 9.80665;
        ScenarioSettings s = TestRobots.Pull(TestRobots.FourWheels(TestRobots.SoftTyre with { LoadExponent = 0.2, ReferenceLoad = 3.0 }));
        LimitResult r = LimitFinder.Find(s with { Tether = s.Tether! with { HookHeight = Hook, AnchorHeight = Hook } });
        Assert.Equal(PullStatus.RearsUp, r.Now.Status);
        Assert.Null(r.Now.Pull);
        Assert.Equal(weight * 0.055 / Hook, r.Now.RearsUpAt!.Value, 1e-4 * weight);
        Assert.StartsWith("Testmole rears up on its hook at 8.2 N, before", LimitVerdict.Of(r));
        Assert.All(r.Wheels.Take(2), w => Assert.Equal(0.0, w.Load, 1e-4 * weight));
        Assert.All(r.Wheels.Skip(2), w => Assert.Equal(0.5 * weight, w.Load, 1e-4 * weight));

        // peak and sliding are told for the same loads (at rest the tyres would hold 15 % more), and the wheels add up to both
        double share = Math.Pow(0.5 * weight / 3.0, -0.2);
        Assert.Equal(1.0 * share * weight, r.Now.TractionPeak, 1e-2 * weight);
        Assert.Equal(0.8 * share * weight, r.Now.TractionSliding, 1e-2 * weight);
        Assert.Equal(r.Now.TractionPeak, r.Wheels.Sum(w => w.PeakForce), 1e-6 * weight);
        Assert.Equal(r.Now.TractionSliding, r.Wheels.Sum(w => w.SlidingForce), 1e-6 * weight);
        Assert.All(r.Wheels, w => Assert.True(double.IsNaN(w.Force)));
    }

    // its sliding pull stands, what its tyres hold breaking away would not: it says so, and there the run's front wheels leave the floor, up to its tail
    [Fact]
    public void A_robot_that_would_rear_up_only_as_its_tyres_break_away_is_warned_of()
    {
        ScenarioSettings low = TestRobots.Pull();
        ScenarioSettings s = low with { Tether = low.Tether! with { HookHeight = 0.064, AnchorHeight = 0.064 } };
        LimitResult r = LimitFinder.Find(s);
        Assert.InRange(r.Now.Pull!.Value, 8.0, r.Now.RearsUpAt!.Value);
        Assert.Contains("may tip before it slides", Assert.Single(LimitWarnings.Of(r)));
        Assert.All(Simulator.Run(s).Trace.Wheels.Where(w => w.Load.Key.Contains("front", StringComparison.Ordinal)), w => Assert.Equal(0.0, w.Load.Values.ToArray().Min()));
        Assert.Null(LimitFinder.Find(low).Now.RearsUpAt);
    }

    // the front wheels alone drive: what they hold at rest would tip the robot, but as it pulls their load falls and they hold less
    [Fact]
    public void Front_wheels_that_pull_themselves_light_do_not_rear_up()
    {
        RobotSettings four = TestRobots.FourWheels(TestRobots.SoftTyre with { StaticFriction = 1.9, KineticFriction = 1.5 });
        RobotSettings front = four with { Drives = [.. four.Drives.Select((d, i) => i < 2 ? d : d with { Motors = [] })], Controllers = [.. four.Controllers.Take(2)] };
        const double Hook = 0.08;
        ScenarioSettings s = TestRobots.Pull(front);
        LimitResult r = LimitFinder.Find(s with { Tether = s.Tether! with { HookHeight = Hook, AnchorHeight = Hook } });
        double weight = 1.36 * 9.80665;

        // N_front = m g / 2 - F h / L and F = mu N_front
        double expected = 1.9 * 0.5 * weight / (1.0 + (1.9 * Hook / 0.11));
        Assert.True(1.9 * 0.5 * weight > weight * 0.055 / Hook);
        Assert.Null(r.Now.RearsUpAt);
        Assert.Equal(expected, r.Now.TractionPeak, 5e-3 * weight);
        Assert.InRange(r.Now.Pull!.Value, 0.5 * expected, expected);
    }

    // friction times height of the hook over wheelbase is near 1: traction and load, each from the other, go to and fro about what the tyres hold (front driven),
    // or come nearer by hardly anything (rear driven, the weight far in front)
    [Theory]
    [InlineData(true, 0.0)]
    [InlineData(false, 0.05)]
    public void A_high_hook_leaves_what_the_tyres_hold_exact(bool isFront, double forward)
    {
        const double Base = 0.11;
        const double Peak = 1.04;
        const double Slide = 0.96;
        double hook = isFront ? Base : 0.85 * Base;
        RobotSettings four = TestRobots.FourWheels(TestRobots.SoftTyre with { StaticFriction = Peak, KineticFriction = Slide });
        RobotSettings two = four with
        {
            Drives = [.. four.Drives.Select((d, i) => i < 2 == isFront ? d : d with { Motors = [] })],
            Controllers = [.. four.Controllers.Where(c => c.Motors.All(m => m.Drive < 2 == isFront))],
            Chassis = four.Chassis with { CentreOfMassX = forward },
        };
        ScenarioSettings s = TestRobots.Pull(two);
        LimitResult At(double height) => LimitFinder.Find(s with { Tether = s.Tether! with { HookHeight = height, AnchorHeight = height } });
        LimitResult floor = At(0.0);
        LimitResult r = At(hook);

        // a pull along the floor moves no load, which gives the friction at the peak; above it N = N at rest -+ F h / L and F = mu N, as the other wheels only roll
        double Holds(double low) => low / (1.0 + ((isFront ? 1.0 : -1.0) * low / floor.Wheels.Where(w => w.IsDriven).Sum(w => w.RestLoad) * hook / Base));
        Assert.Null(r.Now.RearsUpAt);
        Assert.Equal(Holds(floor.Now.TractionPeak), r.Now.TractionPeak, 1e-3 * r.Now.TractionPeak);
        Assert.Equal(Holds(floor.Now.TractionSliding), r.Now.TractionSliding, 1e-3 * r.Now.TractionSliding);
    }

    // on a hill it is the tyres that hold the weight while the tether hangs slack: up it they hold it up (the tether does not push), down it back, so that a robot
    // may rear up at a pull below its weight along the slope. F = mu m g cos a - m g sin a, and it rears up at F h = m g (b cos a - h_c sin a), with the
    // tyres' give under the rear a little before
    [Theory]
    [InlineData(0.64, true)]
    [InlineData(0.3, false)]
    [InlineData(-0.3, false)]
    [InlineData(-0.9, false)]
    public void A_robot_on_a_steep_hill_pulls_or_rears_up_as_its_tyres_hold(double slope, bool pulls)
    {
        const double Hook = 0.13;
        ScenarioSettings level = TestRobots.Pull(TestRobots.FourWheels(TestRobots.SoftTyre with { StaticFriction = 0.85, KineticFriction = 0.8 }));
        ScenarioSettings s = level with { Floor = level.Floor with { SlopeX = slope }, Tether = level.Tether! with { HookHeight = Hook, AnchorHeight = Hook } };
        LimitState now = LimitFinder.Find(s).Now;
        double weight = 1.36 * 9.80665;
        double slides = weight * ((0.8 * Math.Cos(slope)) - Math.Sin(slope));
        double rears = weight * ((0.055 * Math.Cos(slope)) - (s.Robot.Chassis.CentreOfMassHeight * Math.Sin(slope))) / Hook;
        Assert.Equal(pulls, slides < rears);
        if (pulls)
        {
            Assert.Equal(slides, now.Pull!.Value, 0.02 * weight);
        }
        else
        {
            Assert.Null(now.Pull);
            Assert.Equal(rears, now.RearsUpAt!.Value, 0.02 * weight);
        }
    }

    // uphill the motors first hold the weight: stalled at a force that on the level would rear the robot up they do not, and it is not warned
    [Fact]
    public void Motors_that_hold_the_weight_uphill_are_not_said_to_rear_the_robot_up()
    {
        const double Hook = 0.09;
        ScenarioSettings s = TestRobots.Pull(TestRobots.FourWheels(limit: 0.5));
        LimitResult r = LimitFinder.Find(s with { Floor = s.Floor with { SlopeX = 0.3 }, Tether = s.Tether! with { HookHeight = Hook, AnchorHeight = Hook } });
        double along = 1.36 * 9.80665 * Math.Sin(0.3);
        Assert.InRange(r.Now.MotorForce, r.Now.RearsUpAt!.Value, r.Now.RearsUpAt.Value + along);
        Assert.Equal(r.Now.MotorForce - along, r.Now.Pull!.Value, 1e-6);
        Assert.Empty(r.Warnings);
    }

    [Fact]
    public void A_robot_that_tips_over_on_its_slope_is_told_just_that()
    {
        ScenarioSettings s = TestRobots.Pull();
        string said = Assert.Throws<SimulationException>(() => LimitFinder.Find(s with { Floor = s.Floor with { SlopeX = -1.2 } })).Message;
        Assert.StartsWith("Testmole does not stand on this slope, it tips over; lower slope_x", said, StringComparison.Ordinal);
        RobotSettings ahead = s.Robot with { Chassis = s.Robot.Chassis with { CentreOfMassX = 0.2 } };
        Assert.StartsWith("the centre of mass does not stand over the wheels", Assert.Throws<SimulationException>(() => LimitFinder.Find(s with { Robot = ahead })).Message, StringComparison.Ordinal);
    }

    // motors in series under a hook on which it nearly rears up: the search comes to no end, which is not said to be the robot's rearing up
    [Fact]
    public void A_pull_that_was_not_found_is_told_so()
    {
        const double Hook = 0.15;
        ScenarioSettings s = PullAgreementTests.Pull(PullAgreementTests.Straight(RandomRobots.Scenario(317).Robot));
        LimitResult r = LimitFinder.Find(s with { Floor = s.Floor with { SlopeX = 0.3 }, Tether = s.Tether! with { HookHeight = Hook, AnchorHeight = Hook } });
        Assert.Equal(PullStatus.NotFound, r.Now.Status);
        Assert.Null(r.Now.Pull);
        Assert.StartsWith("What random robot pulls at standstill was not found: the motors could give ", LimitVerdict.Of(r), StringComparison.Ordinal);
        Assert.Contains(r.Warnings, w => w is LimitWarning.NotFound);
        Assert.DoesNotContain(r.Warnings, w => w is LimitWarning.RearsUp);
        Assert.All(r.Wheels, w => Assert.Null(w.Binding));
        Assert.Empty(r.Now.Bound);
        Assert.Null(r.Now.Binding);
    }

    [Fact]
    public void A_robot_without_motors_or_what_feeds_them_is_refused()
    {
        static string Said(RobotSettings robot) => Assert.Throws<SimulationException>(() => LimitFinder.Find(TestRobots.Pull(robot))).Message;
        RobotSettings four = TestRobots.FourWheels();
        Assert.StartsWith("Testmole has no controller or no battery for its motors;", Said(four with { Controllers = [] }), StringComparison.Ordinal);
        Assert.StartsWith("Testmole has no controller or no battery for its motors;", Said(four with { Battery = null }), StringComparison.Ordinal);
        Assert.StartsWith("Testmole has no motors, ", Said(four with { Drives = [.. four.Drives.Select(d => d with { Motors = [] })], Controllers = [] }), StringComparison.Ordinal);
    }
}
