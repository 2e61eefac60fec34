using PushSim.Analysis.Wear;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Simulation;
using PushSim.Tests.Tyres;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Analysis;

public class WearTests
{
    // The drum test itself: 10 N over 40 m of the standard sheet loses the figure that the file gives. ISO 4649 as told by a rubber maker's page; 84 turns
    // of a 150 mm drum are 39.58 m, k = V/400 N m is 0.375 and 0.075 mm3/(N m) (computed here)
    [Theory]
    [InlineData(150.0, 0.375)]
    [InlineData(30.0, 0.075)]
    public void The_drum_test_loses_its_own_figure(double loss, double specific)
    {
        Assert.Equal(specific, loss / 400.0, 1e-12);
        Assert.Equal(loss, DrumLoss(loss), 1e-4 * loss);
    }

    /// <summary>Loss [mm3] of the drum test, 10 N over 40 m, of a tyre described by that loss.</summary>
    internal static double DrumLoss(double loss)
    {
        TyreSettings tyre = Dragged.Tyre() with { SpecificWear = loss * 1e-9 / 400.0 };
        RunResult run = ExternalRobots.Run(Dragged.Scenario(tyre, 10.0, 4.0, 2.0));
        double way = Dragged.Late(run.Trace.Body.X);
        Assert.InRange(way, 3.9, 4.1);
        return 1e9 * run.Trace.Wheels.Sum(w => Dragged.Late(w.Wear!)) * 40.0 / way;
    }

    // Archard, J. Appl. Phys. 24, 1953 (from memory); tread rubber on concrete: Xu, Persson and others, J. Chem. Phys. 162, 2025: in proportion to the
    // normal force, whatever the speed (and the apparent area)
    [Theory]
    [InlineData(10.0, 1.0, 1.0)]
    [InlineData(20.0, 1.0, 1.0)]
    [InlineData(10.0, 0.1, 1.0)]
    [InlineData(10.0, 2.0, 0.5)]
    public void Wear_goes_with_force_and_way_alone(double weight, double speed, double area)
    {
        RunResult run = ExternalRobots.Run(Dragged.Scenario(Dragged.Tyre() with { TreadArea = area }, weight, speed, 0.5 / speed));
        double perNewtonMetre = run.Trace.Wheels.Sum(w => Dragged.Late(w.Wear!)) / (weight * Dragged.Late(run.Trace.Body.X));
        Assert.Equal(0.375e-9, perNewtonMetre, 0.375e-9 * 1e-4);
    }

    // V = k_w a W/mu of the work W lost in the tread: algebra of the law in a steady slide
    [Theory]
    [InlineData(0.4, 0.1)]
    [InlineData(0.9, 1.0)]
    public void In_a_steady_slide_wear_is_work_over_friction(double friction, double abrasiveness)
    {
        ScenarioSettings s = Dragged.Scenario(Dragged.Tyre(friction), 12.0, 0.5, 2.0);
        RunResult run = ExternalRobots.Run(s with { Floor = s.Floor with { Abrasiveness = abrasiveness } });
        foreach (WheelSettings w in run.Scenario.Robot.Wheels)
        {
            double wear = Dragged.Late(run.Trace.Wheel(w.Name).Wear!);
            double work = Dragged.Late(run.Trace.Wheel(w.Name).FrictionWork!);
            double expected = w.Tyre.SpecificWear * abrasiveness * work / friction;
            Assert.True(work > 0.1);
            Assert.Equal(expected, wear, 1e-6 * expected);
        }
    }

    [Fact]
    public void Friction_work_of_the_wheels_is_that_of_the_ledger()
    {
        RunResult run = ExternalRobots.Run(TestRobots.Spot(TestRobots.FourWheels(TestRobots.SoftTyre with { SpecificWear = 5e-10 })));
        double ledger = run.Ledger.Single(e => e.Key == "tread_j").Joule;
        Assert.True(ledger > 1.0);
        Assert.Equal(ledger, run.Trace.Wheels.Sum(w => w.FrictionWork![^1]), 1e-12 * ledger);
    }

    [Fact]
    public void Looking_at_wear_changes_no_bit_of_the_motion()
    {
        RunResult with = ExternalRobots.Run(TestRobots.Spot(TestRobots.FourWheels(TestRobots.SoftTyre with { SpecificWear = 5e-10 })));
        RunResult without = ExternalRobots.Run(TestRobots.Spot());
        Assert.Equal(without.Trace.Body.Heading, with.Trace.Body.Heading);
        Assert.Equal(without.RhsEvaluations, with.RhsEvaluations);
    }

    // a tyre whose tread is shaken below its grip sticks: it loses energy, but nothing slides; shaken harder it does
    [Theory]
    [InlineData(0.5, false)]
    [InlineData(0.75, false)]
    [InlineData(1.3, true)]
    public void A_stuck_vibrating_tyre_does_not_wear(double share, bool slides)
    {
        const double load = 3.0;
        TyreSettings tyre = TestRobots.SoftTyre with { KineticFriction = 1.0, RollingRenewal = 0.0 };

        // slow enough that body and bristles act as springs in series: force = share of mu N
        double sigma0 = tyre.StaticFriction / tyre.BreakawayDeflection;
        double spring = 1.0 / ((1.0 / tyre.BodyStiffness) + (1.0 / (load * sigma0)));
        double amplitude = share * load / spring;
        const double omega = 2.0 * Math.PI * 20.0;
        RingBlock block = new(tyre, 0.0, load) { RimSpeed = t => (amplitude * omega * Math.Cos(omega * t), 0.0) };
        double wear = RingBlock.Run(block, new double[6], 1.0, 0.001).Sum(s =>
        {
            _ = block.Friction(s.Y, s.T);
            return block.WearSpeed;
        });
        if (slides)
        {
            Assert.True(wear > 1e-3);
        }
        else
        {
            Assert.Equal(0.0, wear);
        }
    }

    [Fact]
    public void A_held_robot_that_is_shaken_does_not_wear()
    {
        ScenarioSettings s = Dragged.Scenario(Dragged.Tyre(), 12.0, 0.0, 1.0);
        double reach = 0.5 * 0.8 * 12.0 / 3000.0;
        List<(double, double)> speeds = [.. Enumerable.Range(0, 401).Select(i => (0.0025 * i, reach * 2.0 * Math.PI * 20.0 * Math.Cos(2.0 * Math.PI * 20.0 * 0.0025 * i)))];
        RunResult run = ExternalRobots.Run(s with { Tether = s.Tether! with { AnchorSpeed = speeds } });
        Assert.True(run.Trace.Tether!.Force.Max() > 2.0);
        Assert.True(run.Trace.Wheels.Sum(w => w.FrictionWork![^1]) > 0.0);
        Assert.Equal(0.0, run.Trace.Wheels.Sum(w => w.Wear![^1]));
    }

    [Fact]
    public void A_turn_is_told_by_wheel_turn_minute_match_depth_and_mass()
    {
        TyreSettings tyre = TestRobots.SoftTyre with { SpecificWear = 5e-10, CoverWidth = 0.02, CoverDensity = 200.0, TreadArea = 0.5 };
        ScenarioSettings s = TestRobots.Spot(TestRobots.FourWheels(tyre)) with { TyreLife = new TyreLifeSettings { MatchTime = 45.0 } };
        RunResult run = ExternalRobots.Run(s);
        WearResult report = WearResult.Of(run, StraightDrive.Run(s, CancellationToken.None))!;
        Series heading = run.Trace.Body.Heading;
        int from = run.Time.Length - 1 - (int)Math.Round(0.4 * 2900.0);
        double turns = (heading[^1] - heading[from]) / (2.0 * Math.PI);
        foreach (WheelWear w in report.Wheels)
        {
            Series wear = run.Trace.Wheel(w.Wheel).Wear!;
            double perTurn = (wear[^1] - wear[from]) / turns;
            Assert.Equal(perTurn, w.PerTurn!.Value, 1e-9 * perTurn);
            Assert.Equal(60.0 / report.TurnTime!.Value * perTurn, w.PerMinute, 1e-9 * w.PerMinute);
            Assert.Equal(0.75 * w.PerMinute, w.PerMatch, 1e-9 * w.PerMinute);

            // the volume spread over half of the circumference's face; 200 kg/m3
            Assert.Equal(w.PerMatch / (2.0 * Math.PI * 0.028 * 0.02 * 0.5), w.Depth(w.PerMatch)!.Value, 1e-18);
            Assert.Equal(200.0 * w.PerMatch, w.Mass(w.PerMatch)!.Value, 1e-18);

            // straight ahead next to nothing slides, and even all of its friction work would not make a turn's wear
            Assert.InRange(w.MostPerStraightMetre!.Value, w.PerStraightMetre!.Value, 0.1 * w.PerTurn!.Value);
            Assert.True(w.MostPerStraightMetre > 0.0);
        }

        // four equal wheels round the centre
        Assert.Equal(1.0, report.Unevenness!.Value, 0.01);
        RunResult ahead = ExternalRobots.Run(TestRobots.Spot(TestRobots.FourWheels(tyre, forward: 0.02)));
        Assert.True(WearResult.Of(ahead)!.Unevenness > 1.02);
    }

    [Fact]
    public void Without_a_wear_number_there_is_no_report() => Assert.Null(WearResult.Of(ExternalRobots.Run(TestRobots.Spot())));

    [Fact]
    public void Ranking_puts_the_least_worn_tread_first_and_the_impossible_last()
    {
        ScenarioSettings With(double loss) => TestRobots.Spot(TestRobots.FourWheels(TestRobots.SoftTyre with { SpecificWear = loss * 1e-9 / 400.0, CoverWidth = 0.02 }));
        IReadOnlyList<RankedTyre> ranked = RankedTyre.Rank([("poor", With(300.0), ""), ("none", null, "pressed flat"), ("good", With(30.0), "")], false, CancellationToken.None);
        Assert.Equal(["good", "poor", "none"], ranked.Select(r => r.Name));

        // the same robot and friction: ten times the figure is ten times the wear
        Assert.Equal(10.0, ranked[1].DepthPerMatch!.Value / ranked[0].DepthPerMatch!.Value, 1e-9);
        Assert.Equal("pressed flat", ranked[2].Stop!.Refusal);
    }
}
