using PushSim.Analysis.Chance;
using PushSim.Analysis.Fit;
using PushSim.Analysis.Meaning;
using PushSim.Analysis.Statistics;
using PushSim.Binding;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Surroundings;
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
        TyreMeaning own = MeaningFinder.Find(On(free, tyre), tyre, null, new FloorSettings(), null, default);
        TyreMeaning strong = MeaningFinder.Find(On(free, tyre), tyre, r => MeaningFinder.Stronger(r, 1.5), new FloorSettings(), null, default);
        Assert.True(strong.MotorForce > 1.05 * own.MotorForce);
        Assert.Equal(own.TyreForce, strong.TyreForce, 1e-9);
        Assert.True(strong.IsStronger);
    }

    [Fact]
    public void Weak_motors_bind_on_a_grippy_tyre()
    {
        RobotSettings weak = MeaningFinder.Stronger(s_robot, 0.05);
        TyreMeaning found = MeaningFinder.Find(On(weak, Tyre(1.5, 1.4)), Tyre(1.5, 1.4), null, new FloorSettings(), null, default);
        Assert.Equal(BindingKind.Motor, found.Binding);
        Assert.True(found.MotorForce < found.TyreForce);
        Assert.Equal(CannotTurn, found.Turn);
    }

    [Fact]
    public void Wear_is_told_only_for_a_known_material()
    {
        RobotSettings worn = s_robot with { Wheels = [.. s_robot.Wheels.Select(w => w with { Tyre = w.Tyre with { Name = "soft", SpecificWear = 5e-10 } })] };
        Assert.True(MeaningFinder.Find(worn, FittedTyre.Of(Fit("x"), isMaterialKnown: true), null, new FloorSettings(), null, default).WearPerMinute > 0.0);
        Assert.Null(MeaningFinder.Find(worn, FittedTyre.Of(Fit("x"), isMaterialKnown: false), null, new FloorSettings(), null, default).WearPerMinute);
    }

    // five pulls of 0.5 with a known spread
    [Fact]
    public void The_spread_of_a_fit()
    {
        FittedTyre tyre = FittedTyre.Of(Fit("x"), isMaterialKnown: false);
        Assert.Equal(Math.Sqrt(0.00025) / 0.5, tyre.Spread, 1e-12);
    }

    private const TurnEase CannotTurn = TurnEase.CannotTurn;

    // a floor that is neither level nor of full friction: both must be left out
    private static TyreMeaning Find(FittedTyre tyre) => MeaningFinder.Find(On(s_robot, tyre), tyre, null, new FloorSettings { FrictionScale = 0.7, SlopeX = 0.1 }, null, default);

    private static RobotSettings On(RobotSettings robot, FittedTyre tyre) =>
        robot with { Wheels = [.. robot.Wheels.Select(w => w with { Tyre = w.Tyre.WithFriction(tyre.Static, tyre.Kinetic) })] };

    private static FittedTyre Tyre(double atRest, double sliding) => new("t", atRest, sliding, 0.0, false, false);

    private static double StandingMass() => s_robot.Chassis.Mass;

    private static TyreFit Fit(string name)
    {
        double[] frictions = [0.48, 0.49, 0.50, 0.51, 0.52];
        return new TyreFit
        {
            Name = name,
            AtRest = At(0.55),
            IsBreakawayUnseen = false,
            Sliding = Interval.OfMean(frictions),
            Cause = new PullCause(BindingKind.Tyre, false, double.NaN, PullReason.Dragged),
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
