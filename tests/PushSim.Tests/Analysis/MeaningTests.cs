using PushSim.Analysis.Chance;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Meaning;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
using PushSim.Tyres;
using Xunit;

namespace PushSim.Tests.Analysis;

/// <summary>A fitted tyre on a robot: what is taken over, and what follows from more grip and stronger motors.</summary>
public class MeaningTests
{
    private static readonly RobotSettings s_robot = TestRobots.FourWheels();

    // m g mu on a level floor, all wheels driven: closed form
    [Fact]
    public void The_tyres_hold_friction_times_weight()
    {
        TyreMeaning found = Find(Tyre(0.5, 0.4));
        double weight = 9.80665 * StandingMass();
        Assert.Equal(0.5 * weight, found.TyreForce, 0.01 * 0.5 * weight);
        Assert.Equal(BindingKind.Tyre, found.Binding);
    }

    [Fact]
    public void More_grip_launches_sooner()
    {
        double?[] times = [.. new[] { 0.2, 0.4, 0.7 }.Select(mu => Find(Tyre(1.1 * mu, mu)).FirstMetre)];
        Assert.All(times, t => Assert.NotNull(t));
        Assert.True(times[0] > times[1] && times[1] > times[2]);

        // no faster than friction lets it, from rest over a metre: t = sqrt(2/(mu g))
        Assert.True(times[0] > Math.Sqrt(2.0 / (0.22 * 9.80665)));
    }

    [Fact]
    public void A_stronger_motor_gives_more_and_the_tyre_no_more()
    {
        RobotSettings free = s_robot with { Controllers = [.. s_robot.Controllers.Select(c => c with { CurrentLimit = double.PositiveInfinity })] };
        FittedTyre tyre = Tyre(0.5, 0.4);
        TyreMeaning own = MeaningFinder.Find(free, tyre, null, new FloorSettings(), default);
        TyreMeaning strong = MeaningFinder.Find(free, tyre, r => MeaningFinder.Stronger(r, 1.5), new FloorSettings(), default);
        Assert.True(strong.MotorForce > 1.05 * own.MotorForce);
        Assert.Equal(own.TyreForce, strong.TyreForce, 1e-9);
        Assert.True(strong.IsStronger);
    }

    [Fact]
    public void Weak_motors_bind_on_a_grippy_tyre()
    {
        RobotSettings weak = MeaningFinder.Stronger(s_robot, 0.05);
        TyreMeaning found = MeaningFinder.Find(weak, Tyre(1.5, 1.4), null, new FloorSettings(), default);
        Assert.Equal(BindingKind.Motor, found.Binding);
        Assert.True(found.MotorForce < found.TyreForce);
        Assert.Equal(CannotTurn, found.Turn);
    }

    [Fact]
    public void Wear_is_told_only_for_a_known_material()
    {
        RobotSettings worn = s_robot with { Wheels = [.. s_robot.Wheels.Select(w => w with { Tyre = w.Tyre with { Name = "soft", SpecificWear = 5e-10 } })] };
        FittedTyre soft = FittedTyre.Of(Fit("Soft"), worn, isMaterial: false);
        FittedTyre other = FittedTyre.Of(Fit("other"), worn, isMaterial: false);
        Assert.True(soft.IsWearKnown);
        Assert.False(other.IsWearKnown);
        Assert.False(FittedTyre.Of(Fit("other"), s_robot with { Wheels = [.. s_robot.Wheels.Select(w => w with { Tyre = w.Tyre with { SpecificWear = 0.0 } })] }, isMaterial: true).IsWearKnown);
        Assert.True(MeaningFinder.Find(worn, soft, null, new FloorSettings(), default).WearPerMinute > 0.0);
        Assert.Null(MeaningFinder.Find(worn, other, null, new FloorSettings(), default).WearPerMinute);
    }

    [Fact]
    public void Only_friction_is_taken_over()
    {
        RobotSettings robot = s_robot with { Wheels = [.. s_robot.Wheels.Select(w => w with { Tyre = w.Tyre with { FrictionRise = 0.1, FoulingDistance = 2.0, FrictionTable = [(0.0, 1.0), (1.0, 0.5)] } })] };
        TyreSettings tyre = Tyre(0.6, 0.5).On(robot, 0.9).Wheels[0].Tyre;
        Assert.Equal((0.54, 0.45), (tyre.StaticFriction, tyre.KineticFriction));
        Assert.Equal((0.0, 0.0), (tyre.FrictionRise, tyre.FoulingDistance));
        Assert.Null(tyre.FrictionTable);
        Assert.Equal(robot.Wheels[0].Tyre.BodyStiffness, tyre.BodyStiffness);
    }

    // the scatter of the pulls is that of the drawn frictions: 4000 draws, bounds four deviations of a standard deviation
    [Fact]
    public void Friction_is_drawn_with_the_scatter_of_the_pulls()
    {
        FittedTyre tyre = Tyre(0.6, 0.5) with { Spread = 0.04 };
        var source = new FittedShoves(new Same(), tyre, r => r, 5);
        double[] drawn = [.. Enumerable.Range(0, 4000).Select(k => source.Match(k, out string _)!.Robot.Wheels[0].Tyre.KineticFriction)];
        Assert.Equal(0.5, Sample.Mean(drawn), 4.0 * 0.02 / Math.Sqrt(4000.0));
        Assert.Equal(0.02, Math.Sqrt(Sample.Variance(drawn)), 4.0 * 0.02 / Math.Sqrt(8000.0));
        Assert.All(Enumerable.Range(0, 9), k => Assert.Equal(1.2, source.Match(k, out string _)!.Robot.Wheels[0].Tyre is TyreSettings t ? t.StaticFriction / t.KineticFriction : 0.0, 1e-12));
    }

    // five pulls of 0.5 with a known spread
    [Fact]
    public void The_spread_of_a_fit()
    {
        FittedTyre tyre = FittedTyre.Of(Fit("x"), s_robot, isMaterial: false);
        Assert.Equal(Math.Sqrt(0.00025) / 0.5, tyre.Spread, 1e-12);
        Assert.Equal(1.0, tyre.WheelLoad * s_robot.Wheels.Count, 1e-12);
    }

    private const TurnEase CannotTurn = TurnEase.CannotTurn;

    // a floor that is neither level nor of full friction: both must be left out
    private static TyreMeaning Find(FittedTyre tyre) => MeaningFinder.Find(s_robot, tyre, null, new FloorSettings { FrictionScale = 0.7, SlopeX = 0.1 }, default);

    private static FittedTyre Tyre(double atRest, double sliding) => new("t", atRest, sliding, 0.0, false, false);

    private static double StandingMass() => s_robot.Chassis.Mass;

    private static TyreFit Fit(string name)
    {
        double[] frictions = [0.48, 0.49, 0.50, 0.51, 0.52];
        return new TyreFit
        {
            Name = name,
            StaticFriction = At(0.55),
            IsStaticLowerBound = false,
            KineticFriction = Interval.OfMean(frictions),
            Limit = new PullLimit(BindingKind.Tyre, false, double.NaN, PullReason.Dragged),
            Forces = frictions,
            Frictions = frictions,
            Load = 1.0,
            Pulls = frictions.Length,
        };
    }

    private static Interval At(double value) => new(value, value, value);

    private sealed class Same : IMatchSource
    {
        public ScenarioSettings? Match(long number, out string cause)
        {
            cause = "";
            return new ScenarioSettings { Name = "s", Robot = s_robot, Manoeuvre = new ManoeuvreSettings { Kind = ManoeuvreKind.Shove, Commands = [], EndTime = 1.0 } };
        }
    }
}
