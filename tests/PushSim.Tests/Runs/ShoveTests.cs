using PushSim.Analysis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tests.Simulation;
using PushSim.Tyres;
using PushSim.Words.Runs;
using Xunit;

namespace PushSim.Tests.Runs;

/// <summary>Two robots in contact: symmetry to the bit, the closed form of a shove, the rule of who wins, energy and cost.</summary>
public class ShoveTests
{
    private static readonly RobotSettings Mole = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0 });

    private static readonly DriverSettings s_driver = new() { HeadingHold = 1.0, Steering = 3.0, DeadTime = 0.04, SteeringRate = 5.0, EaseTo = 0.6, EaseAfter = 0.1 };

    // Difference of a place by its rounding [m].
    private const double Rounding = 1e-16;

    public static TheoryData<int> Pairs => [1, 2, 3, 5, 8, 13, 21, 34];

    [Fact]
    public void Equal_robots_nose_to_nose_stay_exactly_level()
    {
        RunResult run = Simulator.Run(TestRobots.Shove(Mole, Mole));
        Assert.Equal(run.Trace.Body.X, run.Opponent!.Trace.Body.X);
        Assert.All(run.Trace.Body.Heading, h => Assert.Equal(0.0, h));
        Assert.All(run.Trace.Contact!.X, x => Assert.Equal(0.0, x));
        Assert.True(run.Trace.Contact!.Push.Max() > 5.0);
        Assert.Equal(ShoveEnding.Stalemate, run.Shove!.Ending);
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Swapping_the_robots_swaps_the_run(int seed)
    {
        ScenarioSettings s = Pair(seed);
        OpponentSettings o = s.Opponent!;
        ScenarioSettings swapped = s with
        {
            Robot = o.Robot,
            Manoeuvre = o.Manoeuvre,
            Opponent = new OpponentSettings(s.Robot, s.Manoeuvre),
            Floor = s.Floor with { SlopeX = -s.Floor.SlopeX, SlopeY = -s.Floor.SlopeY },
        };
        RunResult run = Simulator.Run(s);
        RunResult other = Simulator.Run(swapped);
        Assert.True(run.Trace.Contact!.Force.Max() > 0.0, "the robots of this seed never touch");

        // The forces swap to the bit (ContactSymmetryTests); the error norm sums the first robot's states first, so a step's length may round otherwise. What a shove makes of
        // a difference of rounding's size is seen in the same run moved by that much.
        RunResult moved = Simulator.Run(s with { Shove = s.Shove with { Offset = s.Shove.Offset + Rounding } });
        foreach (Func<BodyTrace, Series> each in new Func<BodyTrace, Series>[] { b => b.X, b => b.Y, b => b.Heading, b => b.Speed })
        {
            double grown = Math.Max(Off(each(run.Trace.Body), each(moved.Trace.Body)), Off(each(run.Opponent!.Trace.Body), each(moved.Opponent!.Trace.Body)));
            double off = Math.Max(Off(each(run.Trace.Body), each(other.Opponent!.Trace.Body)), Off(each(run.Opponent!.Trace.Body), each(other.Trace.Body)));
            Assert.True(off <= Math.Clamp(0.1 * grown, 1e-9, 1e-6), $"off by {off}, rounding grows to {grown}");
        }
    }

    private static double Off(Series one, Series other) => one.Zip(other).Max(v => Math.Abs(v.First - v.Second));

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Mirror_gives_the_mirrored_shove_to_the_bit(int seed)
    {
        ScenarioSettings s = Pair(seed);
        RunResult run = Simulator.Run(s);
        RunResult mirrored = Simulator.Run(Mirror(s));
        foreach (Func<Trace, Series> even in new Func<Trace, Series>[] { t => t.Body.X, t => t.Body.Speed, t => t.Body.Pitch, t => t.Contact!.Push })
        {
            Assert.Equal(even(run.Trace), even(mirrored.Trace));
        }

        foreach (Func<Trace, Series> odd in new Func<Trace, Series>[] { t => t.Body.Y, t => t.Body.Heading, t => t.Body.YawRate, t => t.Body.Roll, t => t.Contact!.SideForce })
        {
            Assert.Equal(odd(run.Trace), odd(mirrored.Trace).Select(v => -v));
        }
    }

    // On ice the contact alone changes momentum: what the first robot, on its way forward and to its left or right, gives sideways the opponent takes (but for the share of its light treads,
    // a thousandth). The sideways force is told in the first robot's floor axes; the opponent's motion in its own, turned by half a turn.
    [Theory]
    [InlineData(0.4)]
    [InlineData(-0.4)]
    public void The_sideways_force_is_what_the_first_robot_gives_the_opponent(double heading)
    {
        // nothing of the floor holds it: viscous friction hangs on no scale of the floor; at 1e-4 the force between longer steps is off by 1 %
        RobotSettings robot = TestRobots.FourWheels(TestRobots.SoftTyre with { VerticalDamping = 8.0, TreadMass = 4e-4, ViscousFriction = 0.0, TreadDamping = 0.0 });
        ScenarioSettings s = TestRobots.Shove(robot, robot.WithMass(2.0), end: 0.4, gap: 0.05);
        RunResult run = Simulator.Run(s with
        {
            Floor = s.Floor with { FrictionScale = 1e-7 },
            Manoeuvre = s.Manoeuvre with { Commands = [], InitialHeading = heading, InitialSpeed = 2.0 },
            Opponent = s.Opponent! with { Manoeuvre = s.Opponent.Manoeuvre with { Commands = [] } },
            Numerics = s.Numerics with { SampleRate = 20_000.0, Tolerance = 1e-7 },
        });
        Series t = run.Time;
        Series side = run.Trace.Contact!.SideForce;
        double given = Enumerable.Range(1, t.Length - 1).Sum(i => 0.5 * (side[i] + side[i - 1]) * (t[i] - t[i - 1]));
        OpponentRun other = run.Opponent!;
        (double sine, double cosine) = Math.SinCos(other.Trace.Body.Heading[^1]);
        double taken = -2.0 * ((sine * other.Trace.Body.Speed[^1]) + (cosine * other.Trace.Body.LateralSpeed[^1]));
        Assert.True(Math.Sign(heading) * taken > 0.03, $"{taken} N s");
        Assert.Equal(taken, given, 0.005 * Math.Abs(taken));
    }

    // L11, computed here: both slide on the same friction, so the pair moves with a = mu g (m1 - m2) / (m1 + m2).
    [Theory]
    [InlineData(1.8, 1.2)]
    [InlineData(1.5, 1.36)]
    [InlineData(2.4, 0.9)]
    public void Heavier_wins_by_the_closed_form(double heavy, double light)
    {
        const double Mu = 0.7;
        var tyre = new TyreSettings
        {
            Name = "plain", StaticFriction = Mu, KineticFriction = Mu, BreakawayDeflection = 0.4e-3, BodyStiffness = 2500.0, BodyDamping = 2.0,
            TreadMass = 0.001, VerticalStiffness = 20000.0, VerticalDamping = 10.0, RollingRenewal = 0.0, RollingResistance = 0.0,
        };
        MotorSettings strong = TestRobots.Motor with { Resistance = 0.4, FrictionTorque = 0.0 };
        RobotSettings robot = TestRobots.FourWheels(tyre, strong, efficiency: 1.0, limit: 100.0, ratio: 8.0);
        RunResult run = Simulator.Run(TestRobots.Shove(robot.WithMass(heavy), robot.WithMass(light), end: 1.0) with { Shove = new ShoveSettings { Gap = 0.01, Line = 5.0 } });
        Series t = run.Time;
        Series v = run.Trace.Body.Speed;
        int from = t.FindIndex(x => x >= 0.5);
        int to = t.FindIndex(x => x >= 0.9);
        double measured = (v[to] - v[from]) / (t[to] - t[from]);
        double expected = Mu * 9.80665 * (heavy - light) / (heavy + light);
        Assert.Equal(expected, measured, 0.01 * expected);
    }

    [Theory]
    [MemberData(nameof(Pairs))]
    public void Energy_balance_of_a_shove_closes(int seed)
    {
        ScenarioSettings s = Pair(seed);
        double loose = Simulator.Run(s).EnergyResidualRatio;
        double tight = Simulator.Run(s with { Numerics = s.Numerics with { Tolerance = 1e-8 } }).EnergyResidualRatio;
        Assert.InRange(loose, 0.0, 1e-4);
        Assert.InRange(tight, 0.0, 1e-7);
    }

    [Fact]
    public void Nothing_is_allocated_per_step() => Allocation.SameAtFinerTolerance(TestRobots.Shove(Mole.WithMass(1.5), Mole, offset: 0.02), 1e-3, 1e-6);

    [Fact]
    public void The_line_is_found_between_samples()
    {
        ScenarioSettings s = TestRobots.Shove(Mole.WithMass(2.2), Mole);
        RunResult fine = Simulator.Run(s);
        RunResult coarse = Simulator.Run(s with { Numerics = s.Numerics with { SampleRate = 50.0 } });
        Assert.Equal(ShoveEnding.Line, fine.Shove!.Ending);
        Assert.Equal(0, fine.Shove.Winner);
        Assert.Equal(fine.Shove.EndTime, coarse.Shove!.EndTime, 1e-9);
        Assert.InRange(fine.Opponent!.Trace.Body.X[0] - fine.Opponent.Trace.Body.X[^1], 0.49, 0.5);
    }

    [Theory]
    [InlineData(0.5, 3.0, ShoveEnding.Line)]
    [InlineData(50.0, 3.0, ShoveEnding.Ground)]
    [InlineData(50.0, 0.25, ShoveEnding.Stalemate)]
    public void Winner_by_line_then_by_ground_then_nobody(double line, double end, ShoveEnding expected)
    {
        ScenarioSettings s = TestRobots.Shove(Mole.WithMass(2.2), Mole, end);
        ShoveOutcome o = Simulator.Run(s with { Shove = s.Shove with { Line = line } }).Shove!;
        Assert.Equal(expected, o.Ending);
        Assert.Equal(expected == ShoveEnding.Stalemate ? -1 : 0, o.Winner);
    }

    [Fact]
    public void A_robot_that_loses_the_floor_is_said_to_tip()
    {
        var ramp = new FaceSettings(0.0005, 0.05, 0.5);
        OutlineSettings box = Mole.OutlineOrBox;
        RobotSettings wedge = Mole with { Outline = box with { Faces = [ramp, .. box.Faces.Skip(1)] } };
        // top-heavy and standing: a low robot rolls over the ramp on its wheels, and its own drive tips nothing here
        RobotSettings tall = Mole with { Chassis = Mole.Chassis with { CentreOfMassHeight = 0.15, Height = 0.2 } };
        ScenarioSettings shove = TestRobots.Shove(wedge, tall, gap: 0.2);
        RunResult run = Simulator.Run(shove with { Opponent = shove.Opponent! with { Manoeuvre = shove.Opponent.Manoeuvre with { Commands = [] } } });
        Assert.Equal(RunStatus.Tips, run.Status);
        Assert.Equal(ShoveEnding.Tips, run.Shove!.Ending);
        Assert.Equal(0, run.Shove.Winner);
    }

    [Fact]
    public void A_clear_win_is_not_too_close_to_call()
    {
        RunResult run = CloseCall.Review(Simulator.Run(TestRobots.Shove(Mole.WithMass(2.2), Mole)));
        Assert.False(run.Shove!.TooCloseToCall);
        Assert.Null(run.Shove.Close);
    }

    [Fact]
    public void Equal_robots_are_too_close_to_call()
    {
        RunResult run = CloseCall.Review(Simulator.Run(TestRobots.Shove(Mole, Mole)));
        Assert.True(run.Shove!.TooCloseToCall);
        Assert.Contains("otherwise", RunWords.TooClose(run), StringComparison.Ordinal);
    }

    // A clear win of the first, said to have been the opponent's: all seven runs again end otherwise. Level only if the ground is small in all of them and in the first.
    [Fact]
    public void The_reason_of_a_close_call_follows_from_ground_chatter_and_winners()
    {
        RunResult run = Simulator.Run(TestRobots.Shove(Mole.WithMass(2.2), Mole));
        run = run with { Shove = run.Shove! with { Winner = 1, GroundGained = 0.0 }, Answers = run.Answers with { Chatter = null }, Opponent = run.Opponent! with { Answers = run.Opponent!.Answers with { Chatter = null } } };
        const string Share = "7 of 7 nearly equal starts end otherwise, for example at a tighter tolerance";
        Assert.Equal("the shove is bistable, a tiny difference turns the robots one way or the other; " + Share, RunWords.TooClose(CloseCall.Review(run)));
        RunResult buzzing = run with { Opponent = run.Opponent with { Answers = run.Opponent.Answers with { Chatter = 30.0 } } };
        Assert.Equal("tyres chatter, and its phase decides; " + Share, RunWords.TooClose(CloseCall.Review(buzzing)));
        ScenarioSettings wide = run.Scenario with { Shove = run.Scenario.Shove with { DecidingGround = 0.6 } };
        string level = RunWords.TooClose(CloseCall.Review(run with { Scenario = wide }));
        Assert.StartsWith("the two are level, and the ground gained stays about the deciding 600 mm; ", level);
    }

    [Fact]
    public void Heading_hold_keeps_a_robot_straighter()
    {
        ScenarioSettings free = TestRobots.Shove(Mole, Mole, end: 0.6, offset: 0.03);
        ScenarioSettings held = free with { Manoeuvre = free.Manoeuvre with { Driver = new DriverSettings { HeadingHold = 4.0, HeadingLag = 0.02 } } };
        double without = Math.Abs(Simulator.Run(free).Shove!.TurnedAside.First);
        double with = Math.Abs(Simulator.Run(held).Shove!.TurnedAside.First);
        Assert.True(with < 0.8 * without, $"{with} rad with heading hold, {without} rad without");
    }

    [Fact]
    public void A_reaction_delay_shifts_the_launch()
    {
        ScenarioSettings prompt = TestRobots.Launch() with { };
        prompt = prompt with { Manoeuvre = prompt.Manoeuvre with { EndTime = 1.0 } };
        ScenarioSettings late = prompt with { Manoeuvre = prompt.Manoeuvre with { Driver = new DriverSettings { ReactionDelay = 0.25 } } };
        Series first = Simulator.Run(prompt).Trace.Body.Speed;
        Series second = Simulator.Run(late).Trace.Body.Speed;
        for (int i = 300; i < 700; i += 50)
        {
            Assert.Equal(first[i], second[i + 250], 2e-3);
        }

        Assert.All(second.Take(349), v => Assert.Equal(0.0, v, 1e-9));
    }

    // The reach asked of one scalar run, in work instead of time: a pass of two robots takes about a microsecond.
    [Theory]
    [InlineData(0.0)]
    [InlineData(0.02)]
    public void Default_tolerance_is_within_two_millimetres_at_bounded_work(double offset)
    {
        ScenarioSettings s = TestRobots.Shove(Mole.WithMass(1.6), Mole, offset: offset) with { };
        s = s with { Shove = s.Shove with { Line = 5.0 }, Manoeuvre = s.Manoeuvre with { EndTime = 1.5 } };
        RunResult run = Simulator.Run(s);
        RunResult exact = Simulator.Run(s with { Numerics = s.Numerics with { Tolerance = 1e-9 } });
        Assert.InRange(Math.Abs(run.Trace.Body.X[^1] - exact.Trace.Body.X[^1]), 0.0, 2e-3);
        Assert.InRange(run.RhsEvaluations, 1, 15_000);
    }

    private static ScenarioSettings Pair(int seed)
    {
        ScenarioSettings a = RandomRobots.Scenario(seed);
        ScenarioSettings b = RandomRobots.Scenario(seed + 100);
        var random = new Random(seed);
        ScenarioSettings s = TestRobots.Shove(a.Robot, b.Robot, end: 0.8, gap: 0.02, offset: 0.04 * (random.NextDouble() - 0.5));
        return s with
        {
            Floor = a.Floor with { Dust = 0.0, Patches = [] },
            Manoeuvre = s.Manoeuvre with { InitialHeading = 0.2 * (random.NextDouble() - 0.5), Commands = [new CommandPoint(0.05, 1.0, 0.1)], Driver = seed % 2 == 0 ? new() : s_driver },
            Opponent = s.Opponent! with { Manoeuvre = s.Manoeuvre with { InitialHeading = 0.2 * (random.NextDouble() - 0.5), Driver = seed % 3 == 0 ? new() : s_driver with { EaseTo = 1.0 } } },
            Walls = [new WallSettings(5.0, -1.0, 5.0, 1.0)],
        };
    }

    private static ScenarioSettings Mirror(ScenarioSettings s) => s with
    {
        Robot = Mirror(s.Robot),
        Manoeuvre = Mirror(s.Manoeuvre),
        Opponent = new OpponentSettings(Mirror(s.Opponent!.Robot), Mirror(s.Opponent.Manoeuvre)),
        Shove = s.Shove with { Offset = -s.Shove.Offset },
        Floor = s.Floor with { SlopeY = -s.Floor.SlopeY },
        Walls = [.. s.Walls.Select(w => w with { Y1 = -w.Y2, Y2 = -w.Y1, X1 = w.X2, X2 = w.X1 })],
    };

    private static ManoeuvreSettings Mirror(ManoeuvreSettings m) => m with
    {
        InitialHeading = -m.InitialHeading,
        Commands = [.. m.Commands.Select(c => c with { Turn = -c.Turn })],
    };

    private static RobotSettings Mirror(RobotSettings r) => r with
    {
        Chassis = r.Chassis with { CentreOfMassY = -r.Chassis.CentreOfMassY, DownforceY = -r.Chassis.DownforceY },
        Wheels = [.. r.Wheels.Select(w => w with { Y = -w.Y })],
        Controllers = [.. r.Controllers.Select(c => c with { Side = c.Side == CommandSide.Left ? CommandSide.Right : CommandSide.Left })],
    };
}
