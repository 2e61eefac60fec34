using PushSim.Binding;
using PushSim.Numerics;
using PushSim.Runs;
using PushSim.Simulation;
using Xunit;

namespace PushSim.Tests.Simulation;

/// <summary>What is seen of a match made up step by step: places as known polynomials, touch and loads as said. Every number is computed here.</summary>
public class MatchWatchTests
{
    private const double Line = 0.3;

    private static readonly ScenarioSettings s_scenario = TestRobots.Shove(TestRobots.FourWheels(), TestRobots.FourWheels()) with { Shove = new ShoveSettings { Line = Line } };

    // Way back from the start over time, and its slope, for either robot; what else is said holds at the step's end.
    private sealed class Match
    {
        private readonly SceneSystem _scene = new(s_scenario);
        private readonly StepFeatures<R1> _features;
        private readonly double[] _store;
        private readonly int _count;

        public Match()
        {
            _features = StepFeatures<R1>.Of(_scene);
            _count = _scene.ExplicitCount;
            _store = new double[4 * _count];
            Watch.Start(_scene, s_scenario);
            for (int k = 0; k < 2; k++)
            {
                Robot(k).Carries = 3.0;
                Robot(k).Voltage = 11.0;
                Load(k, 3.3);
            }
        }

        public MatchWatch Watch { get; } = new();

        public ref RobotFeatures<R1> Robot(int k) => ref _features.Robots[k];

        public void Segment(double t) => Watch.OnSegment(t, _features, 0);

        public void Bind(int robot, BindingKind kind, double force)
        {
            Array.Fill(_features.Robots[robot].Kinds, (double)kind);
            Array.Fill(_features.Robots[robot].Forces, force);
        }

        public void Load(int robot, double load) => Array.Fill(_features.Robots[robot].Loads, load);

        public void Touch(double force, double place) => (_features.Force, _features.Along, _features.Across) = (force, force * place, 0.0);

        public void Touch(double along, double across, bool isPushed) => (_features.Force, _features.Along, _features.Across) = isPushed ? (1.0, along, across) : (0.0, 0.0, 0.0);

        // where a robot stands, on its own floor
        public void Place(int robot, double x, double y)
        {
            Set(robot, StateLayout.X, x);
            Set(robot, StateLayout.Y, y);
        }

        // a robot that stands where it was placed
        public (Func<double, double>, Func<double, double>) At(int robot)
        {
            double way = _scene.Robots[robot].Start.X - _store[(2 * _count) + _scene.FirstExplicit(robot) + StateLayout.X];
            return (_ => way, _ => 0.0);
        }

        // an explicit state at the step's end
        public void Set(int robot, int state, double value) => _store[(2 * _count) + _scene.FirstExplicit(robot) + state] = value;

        public StepDecision Step(double t0, double t1, (Func<double, double> Way, Func<double, double> Slope) first, (Func<double, double> Way, Func<double, double> Slope) second)
        {
            foreach ((int k, (Func<double, double> way, Func<double, double> slope)) in new[] { (0, first), (1, second) })
            {
                int x = _scene.FirstExplicit(k) + StateLayout.X;
                double start = _scene.Robots[k].Start.X;
                (_store[x], _store[_count + x], _store[(2 * _count) + x], _store[(3 * _count) + x]) = (start - way(t0), -slope(t0), start - way(t1), -slope(t1));
            }

            return Watch.OnStep(new LaneStep(_store, isSingle: false, 0, 0, _count, 2 * _count, 3 * _count, 1, t0, t1), _features, 0);
        }

        public StepDecision Step(double t0, double t1) => Step(t0, t1, s_still, s_still);
    }

    private static readonly (Func<double, double>, Func<double, double>) s_still = (_ => 0.0, _ => 0.0);

    private static (Func<double, double>, Func<double, double>) Quadratic(double speed, double acceleration) => (t => (speed * t) + (0.5 * acceleration * t * t), t => speed + (acceleration * t));

    // v t + a t^2/2 = 0.3 m
    [Theory]
    [InlineData(0.4, 0.0)]
    [InlineData(0.1, 0.5)]
    [InlineData(0.0, 1.0)]
    [InlineData(1.2, -1.5)]
    public void The_line_is_crossed_at_the_root_of_a_quadratic(double speed, double acceleration)
    {
        double root = acceleration == 0.0 ? Line / speed : (Math.Sqrt((speed * speed) + (2.0 * acceleration * Line)) - speed) / acceleration;
        for (int who = 0; who < 2; who++)
        {
            var match = new Match();
            (Func<double, double>, Func<double, double>) back = Quadratic(speed, acceleration);
            (Func<double, double>, Func<double, double>) forth = Quadratic(-speed, -acceleration);
            double t = 0.0;
            while (match.Step(t, t + 0.04, who == 0 ? back : forth, who == 0 ? forth : back) == StepDecision.Continue)
            {
                t += 0.04;
                Assert.True(t < root, $"went on past {root} s");
            }

            Assert.Equal(root, match.Watch.LineTime, 1e-12);
            Assert.Equal(who, match.Watch.OverLine);
            Assert.Equal((ShoveEnding.Line, 1 - who), ShoveJudge.Ending(s_scenario.Shove, match.Watch));
        }
    }

    // both ends of a step before the line, its middle behind: v t - v t^2/h reaches v h/4
    [Theory]
    [InlineData(0.2495, true)]
    [InlineData(0.2505, false)]
    public void A_line_crossed_and_left_again_within_a_step_is_seen(double reach, bool isCrossed)
    {
        const double Step = 0.1;
        const double Speed = 1.0;
        double before = Line - (reach * Speed * Step);
        var match = new Match();
        (Func<double, double>, Func<double, double>) bow = (t => before + (Speed * t * (1.0 - (t / Step))), t => Speed * (1.0 - (2.0 * t / Step)));
        match.Step(0.0, Step, s_still, bow);
        Assert.Equal(isCrossed, !double.IsNaN(match.Watch.LineTime));
        if (isCrossed)
        {
            // t (1 - t/h) = (line - before)/v, the sooner of the two
            double root = 0.5 * Step * (1.0 - Math.Sqrt(1.0 - (4.0 * (Line - before) / (Speed * Step))));
            Assert.Equal(root, match.Watch.LineTime, 1e-12);
        }
    }

    // the first is 1 mm behind its line when the second, 5 mm behind, gets there sooner
    [Fact]
    public void Of_two_over_their_lines_the_sooner_counts()
    {
        var match = new Match();
        Assert.Equal(StepDecision.Stop, match.Step(0.0, 1.0, Quadratic(0.301, 0.0), Quadratic(0.305, 0.0)));
        Assert.Equal(Line / 0.305, match.Watch.LineTime, 1e-12);
        Assert.Equal(1, match.Watch.OverLine);
    }

    // a pair that has swapped ends: who goes forward past where the other started reaches its line after the way between the starts and the line; the other follows, and pushes
    [Theory]
    [InlineData(true)]
    [InlineData(false)]
    public void Pushed_over_the_far_line_is_lost_too_but_driving_there_alone_is_not(bool touches)
    {
        double between = -StartX(0) - StartX(1);
        double root = (Line + between) / 0.8;
        for (int who = 0; who < 2; who++)
        {
            var match = new Match();
            match.Touch(touches ? 1.0 : 0.0, 0.0);
            (Func<double, double>, Func<double, double>) forth = Quadratic(-0.8, 0.0);
            (Func<double, double>, Func<double, double>) back = (t => Math.Min(0.5 * Line, 0.1 * t), t => 0.0);
            for (double t = 0.0; t < 1.5 * root && double.IsNaN(match.Watch.LineTime); t += 0.04)
            {
                match.Step(t, t + 0.04, who == 0 ? forth : back, who == 0 ? back : forth);
            }

            Assert.Equal(touches ? root : double.NaN, match.Watch.LineTime, 1e-12);
            Assert.Equal(touches, match.Watch.IsFarLine);
            Assert.Equal(touches ? (ShoveEnding.Line, 1 - who) : (ShoveEnding.Stalemate, -1), ShoveJudge.Ending(s_scenario.Shove, match.Watch));
        }

        static double StartX(int k) => new SceneSystem(s_scenario).Robots[k].Start.X;
    }

    // A pair that turns: the contact goes 30 mm along the floor while the second robot stands ahead, then 40 mm across it while that one stands to the right, then back to where the
    // first began, with the second on that side: the first robot pushed all the way.
    [Fact]
    public void Ground_is_counted_along_the_line_from_robot_to_robot()
    {
        var match = new Match();
        Touched(0.02, 0.0, 0.0, 0.0, 0.2, 0.0);
        Touched(0.05, 0.0, 0.0, 0.0, 0.3, 0.0);
        Assert.Equal(0.03, match.Watch.GroundGained, 1e-15);
        Touched(0.05, -0.04, 0.05, 0.1, 0.05, -0.1);
        Assert.Equal(0.07, match.Watch.GroundGained, 1e-15);
        Touched(-0.05, -0.04, 0.1, -0.04, -0.1, -0.04);
        Assert.Equal(0.17, match.Watch.GroundGained, 1e-15);

        void Touched(double along, double across, double x, double y, double otherX, double otherY)
        {
            match.Touch(along, across, isPushed: true);
            match.Place(0, x, y);
            match.Place(1, -otherX, -otherY);
            match.Step(0.0, 0.1, match.At(0), match.At(1));
        }
    }

    [Fact]
    public void Touch_ground_and_turn_are_told_from_the_first_touch_on()
    {
        var match = new Match();
        MatchWatch watch = match.Watch;
        match.Set(0, StateLayout.Heading, 0.5);
        match.Step(0.0, 0.1);
        Assert.True(double.IsNaN(watch.TouchTime));
        Assert.Equal(0.0, watch.GroundGained);
        Assert.Equal(0.0, watch.Robots[0].Turned);
        match.Touch(4.0, 0.02);
        match.Set(0, StateLayout.Heading, 0.1);
        match.Step(0.1, 0.2);
        match.Touch(2.0, 0.05);
        match.Set(0, StateLayout.Heading, -0.3);
        match.Step(0.2, 0.3);
        match.Touch(0.0, 0.9);
        match.Set(0, StateLayout.Heading, 0.2);
        match.Step(0.3, 0.4);
        Assert.Equal(0.2, watch.TouchTime);
        Assert.Equal(0.05, watch.LastPlace, 1e-15);
        Assert.Equal(0.03, watch.GroundGained, 1e-15);
        Assert.Equal(-0.3, watch.Robots[0].Turned);
        Assert.Equal(0.0, watch.Robots[1].Turned);
    }

    // more than the deciding ground, 10 mm, either way
    [Theory]
    [InlineData(0.0101, ShoveEnding.Ground, 0)]
    [InlineData(-0.0101, ShoveEnding.Ground, 1)]
    [InlineData(0.0099, ShoveEnding.Stalemate, -1)]
    [InlineData(-0.0099, ShoveEnding.Stalemate, -1)]
    public void Ground_decides_beyond_its_least(double gained, ShoveEnding ending, int winner)
    {
        var match = new Match();
        match.Touch(1.0, 0.1);
        match.Step(0.0, 0.1);
        match.Touch(1.0, 0.1 + gained);
        match.Step(0.1, 0.2);
        Assert.Equal((ending, winner), ShoveJudge.Ending(s_scenario.Shove with { DecidingGround = 0.01 }, match.Watch));
    }

    // half a degree before and behind the balance point either way about either axis (BalanceTests tells where that is); the other has won, and nobody where both have
    [Theory]
    [InlineData(StateLayout.Pitch, 0, -0.5, Upset.None)]
    [InlineData(StateLayout.Pitch, 0, 0.5, Upset.TailUp)]
    [InlineData(StateLayout.Pitch, 4, 0.5, Upset.NoseUp)]
    [InlineData(StateLayout.Roll, 2, -0.5, Upset.None)]
    [InlineData(StateLayout.Roll, 6, 0.5, Upset.SideUp)]
    [InlineData(StateLayout.Roll, 2, 0.5, Upset.SideUp)]
    public void A_robot_tips_past_its_balance_point(int state, int direction, double beyond, Upset upset)
    {
        double Tilted(int robot) => (direction is 4 or 2 ? -1.0 : 1.0) * Tilt.State(new SceneSystem(s_scenario).Robots[robot].Balance.Angle(direction) + (beyond * Math.PI / 180.0));
        bool tips = upset != Upset.None;
        for (int who = 0; who < 2; who++)
        {
            var match = new Match();
            match.Set(who, state, Tilted(who));
            Assert.Equal(tips ? StepDecision.Stop : StepDecision.Continue, match.Step(0.0, 0.1));
            Assert.Equal(tips, match.Watch.HasTipped);
            Assert.Equal(upset, match.Watch.Robots[who].Upset);
            Assert.False(match.Watch.Robots[1 - who].HasTipped);
            Assert.Equal(tips ? (ShoveEnding.Tips, 1 - who) : (ShoveEnding.Stalemate, -1), ShoveJudge.Ending(s_scenario.Shove, match.Watch));
            match.Set(1 - who, state, Tilted(1 - who));
            match.Step(0.1, 0.2);
            Assert.Equal(tips ? (ShoveEnding.Tips, -1) : (ShoveEnding.Stalemate, -1), ShoveJudge.Ending(s_scenario.Shove, match.Watch));
        }
    }

    // no driven wheel on the floor for more than half a second; a landing in between begins anew
    [Fact]
    public void A_long_flight_is_a_loss_of_the_floor_a_short_one_is_not()
    {
        var match = new Match();
        match.Robot(1).Carries = 0.0;
        Assert.Equal(StepDecision.Continue, match.Step(0.0, 0.1));
        Assert.Equal(StepDecision.Continue, match.Step(0.1, 0.599));
        match.Robot(1).Carries = 0.1;
        Assert.Equal(StepDecision.Continue, match.Step(0.599, 0.7));
        match.Robot(1).Carries = 0.0;
        Assert.Equal(StepDecision.Continue, match.Step(0.7, 0.71));
        Assert.Equal(StepDecision.Continue, match.Step(0.71, 1.209));
        Assert.Equal(StepDecision.Stop, match.Step(1.209, 1.211));
        Assert.Equal((ShoveEnding.Tips, 0), ShoveJudge.Ending(s_scenario.Shove, match.Watch));
    }

    [Fact]
    public void Peaks_are_the_greatest_and_the_voltage_the_least_at_step_ends()
    {
        var match = new Match();
        foreach ((double amps, double volts, double residual, int step) in new[] { (2.0, 11.0, 1e-9, 0), (7.0, 9.0, 3e-9, 1), (4.0, 10.0, 2e-9, 2) })
        {
            match.Robot(0).BatteryCurrent = amps;
            match.Robot(0).ControllerCurrent = 2.0 * amps;
            match.Robot(0).Voltage = volts;
            match.Robot(0).Residual = residual;
            match.Step(0.1 * step, 0.1 * (step + 1));
        }

        RobotWatch robot = match.Watch.Robots[0];
        Assert.Equal((7.0, 14.0, 9.0, 3e-9), (robot.PeakBatteryCurrent, robot.PeakControllerCurrent, robot.LowestVoltage, robot.BusResidual));
        Assert.Equal((0.0, 0.0, 11.0, 0.0), (match.Watch.Robots[1].PeakBatteryCurrent, match.Watch.Robots[1].PeakControllerCurrent, match.Watch.Robots[1].LowestVoltage, match.Watch.Robots[1].BusResidual));
    }

    // an inrush at the jump of the command, before any step; later ones are smaller. Limit and part are those of the moment
    [Fact]
    public void Peaks_know_their_moment_their_part_and_their_limit()
    {
        var match = new Match();
        ref RobotFeatures<R1> f = ref match.Robot(0);
        (f.MotorCurrent, f.MotorLimit, f.Motor, f.Load, f.Wheel, f.BatteryCurrent, f.Voltage) = (28.5, 14.0, 1.0, 3.0, 0.0, 20.0, 11.5);
        match.Segment(0.2);
        (f.MotorCurrent, f.MotorLimit, f.Motor, f.Load, f.Wheel, f.BatteryCurrent, f.Voltage) = (28.0, 13.0, 2.0, 9.0, 3.0, 19.0, 11.0);
        match.Step(0.2, 0.3);
        RobotWatch robot = match.Watch.Robots[0];
        Assert.Equal(new Peak(28.5, 0.2, 1), robot.AllPeaks.MotorCurrent!.Value with { Limit = null });
        Assert.Equal(new Peak(9.0, 0.3, 3), robot.AllPeaks.WheelLoad);
        Assert.Equal(new Peak(20.0, 0.2), robot.AllPeaks.BatteryCurrent);
        Assert.Equal((11.0, 0.3), (robot.AllPeaks.BatteryVoltage!.Value.Value, robot.AllPeaks.BatteryVoltage.Value.Time));
    }

    // since the touch 0.2 s of tyres, 0.3 s of the current limit in two stretches, 0.5 s idle, all at the same force; before it the motors. The battery's 0.6 s weigh as 0.18 s:
    // a tenth less resistance adds a tenth of its sag
    [Fact]
    public void The_limit_is_what_set_most_since_the_touch_and_is_not_idle()
    {
        var match = new Match();
        double t = 0.0;
        void For(double time, BindingKind kind, double force = 2.0)
        {
            match.Bind(0, kind, force);
            match.Step(t, t + time);
            t += time;
        }

        RobotWatch robot = match.Watch.Robots[0];
        Assert.Equal(BindingKind.Nothing, robot.LimitedBy);
        For(2.0, BindingKind.Motor);
        Assert.Equal(BindingKind.Nothing, robot.LimitedBy);
        Assert.Null(robot.Binding);
        match.Touch(1.0, 0.0);
        For(0.15, BindingKind.CurrentLimit);
        For(0.2, BindingKind.Tyre);
        Assert.Equal(BindingKind.Tyre, robot.LimitedBy);
        For(0.15, BindingKind.CurrentLimit);
        For(0.5, BindingKind.Nothing);
        Assert.Equal(BindingKind.CurrentLimit, robot.LimitedBy);
        Assert.Equal([BindingKind.CurrentLimit, BindingKind.Tyre], robot.Binding!.Kinds.Select(k => k.Kind));
        Assert.Equal(0.6, robot.Binding.Kinds[0].Share, 1e-6);
        For(0.6, BindingKind.Battery);
        Assert.Equal([BindingKind.CurrentLimit, BindingKind.Tyre, BindingKind.Battery], robot.Binding!.Kinds.Select(k => k.Kind));

        // twice the force counts twice, either way: the tyres' 0.2 s and as much again are more than the current limit's 0.3 s
        For(0.1, BindingKind.Tyre, -4.0);
        Assert.Equal(BindingKind.Tyre, robot.LimitedBy);

        // unloaded wheels bind nothing and are told beside: 0.5 s of now 2.2 s
        match.Load(0, 0.0);
        For(0.5, BindingKind.Battery, 50.0);
        Assert.Equal(BindingKind.Tyre, robot.LimitedBy);
        Assert.Equal(0.5 / 2.2, robot.Binding.LiftedShare, 1e-12);
        Assert.Equal([BindingKind.Tyre, BindingKind.CurrentLimit, BindingKind.Battery], robot.Binding.Kinds.Select(k => k.Kind));
        Assert.True(robot.Binding.IsLifted);
    }

    // each wheel counts for what it gives: one of four at its grip with over half of the force leads
    [Theory]
    [InlineData(2.9, BindingKind.Motor)]
    [InlineData(3.1, BindingKind.Tyre)]
    public void Wheels_are_weighed_by_their_force(double force, BindingKind expected)
    {
        var match = new Match();
        match.Touch(1.0, 0.0);
        match.Bind(0, BindingKind.Motor, 1.0);
        (match.Robot(0).Kinds[2], match.Robot(0).Forces[2]) = ((double)BindingKind.Tyre, force);
        match.Step(0.0, 0.1);
        Assert.Equal(expected, match.Watch.Robots[0].LimitedBy);
        Assert.Equal(Math.Max(force, 3.0) / (force + 3.0), match.Watch.Robots[0].Binding!.Kinds[0].Share, 1e-6);
    }

    // The contact stands until 500 ms, then goes at 0.1 m/s: past the 5 mm that nobody counts at 550 ms, by 50 mm at the end.
    [Theory]
    [InlineData(1.0)]
    [InlineData(-1.0)]
    public void Ground_is_given_from_where_the_contact_last_stood(double sign)
    {
        static double Way(double t) => 0.1 * Math.Max(0.0, t - 0.5);
        var match = new Match();
        match.Touch(1.0, 0.3);
        match.Step(0.1, 0.2);
        match.Touch(1.0, 0.3 + (sign * Way(1.0)));
        match.Step(0.2, 1.0);
        ShoveOutcome o = ShoveJudge.Judge(s_scenario, match.Watch, 1.0, Runs.MadeHistory.Of(s_scenario, ("contact_force_n", _ => 1.0), ("contact_x_m", t => t < 0.2 ? 7.0 : 0.3 + (sign * Way(t)))), Runs.MadeHistory.Of(s_scenario));
        Assert.Equal(0.2, o.FirstContact);
        Assert.Equal(sign * 0.05, o.GroundGained, 1e-12);
        Assert.Equal(0.55, o.GivesGroundAt!.Value, 0.0011);
        Assert.Equal(0.1, o.GroundSpeed, 1e-9);
        Assert.Equal(1.0, o.EndTime);
    }

    [Theory]
    [InlineData(0.0049, false)]
    [InlineData(0.0051, true)]
    public void Less_than_five_millimetres_is_no_ground(double gained, bool gives)
    {
        var match = new Match();
        match.Touch(1.0, 0.0);
        match.Step(0.0, 0.1);
        match.Touch(1.0, gained);
        match.Step(0.1, 1.0);
        ShoveOutcome o = ShoveJudge.Judge(s_scenario, match.Watch, 1.0, Runs.MadeHistory.Of(s_scenario, ("contact_force_n", _ => 1.0), ("contact_x_m", t => t < 0.5 ? 0.0 : gained)), Runs.MadeHistory.Of(s_scenario));
        Assert.Equal(gives, o.GivesGroundAt is not null);
        if (gives)
        {
            // it jumps after 499 ms
            Assert.Equal(0.499, o.GivesGroundAt!.Value, 1e-9);
            Assert.Equal(gained / 0.501, o.GroundSpeed, 1e-9);
        }
    }

    [Fact]
    public void A_shove_without_touch_ends_when_the_line_was_crossed()
    {
        var match = new Match();
        match.Step(0.0, 1.0, Quadratic(0.6, 0.0), s_still);
        ShoveOutcome o = ShoveJudge.Judge(s_scenario, match.Watch, 1.0, Runs.MadeHistory.Of(s_scenario), Runs.MadeHistory.Of(s_scenario));
        Assert.Equal(0.5, o.EndTime, 1e-12);
        Assert.Null(o.FirstContact);
        Assert.Null(o.GivesGroundAt);
    }
}
