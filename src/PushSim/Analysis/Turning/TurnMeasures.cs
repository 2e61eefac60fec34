using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Turning;

/// <summary>What would help a turn, each with its number: for a robot that turns the effect of a usual change, for one that cannot the least change that
/// lets it; and the least current limit and motor that still turn it. Every number is a run from rest.</summary>
internal sealed class TurnMeasures(ScenarioSettings scenario, WorkBudget work)
{
    // Accuracy of the least changes, limits and motors [1].
    private const double Accuracy = 0.01;

    // How much stronger a limit or motor is tried, in turn [1]: at once the largest might ask more than the battery can give.
    private static readonly double[] s_stronger = [1.5, 2.0, 3.0, 5.0, 10.0, 30.0];

    /// <summary>Least share of every controller's limit that still turns it; a controller without one starts from its motors' stall current.</summary>
    public double? LeastCurrentShare(bool turns) => Least(turns, f => Limited(scenario.Robot, f));

    /// <summary>Least share of the stall torque, at the same no-load speed, that still turns it.</summary>
    public double? LeastMotorShare(bool turns) => Least(turns, f => Stronger(scenario.Robot, f));

    /// <summary>The changes worth trying.</summary>
    public IReadOnlyList<TurnHelp> Helps(bool turns)
    {
        List<TurnHelp> helps = [];
        foreach (Measure m in Measures())
        {
            double share = m.Usual;
            if (!turns)
            {
                if (Weakest(m) is not double needed)
                {
                    continue;
                }

                share = needed;
            }

            TurnTrial trial = Try(m.Change(share));
            helps.Add(new TurnHelp(m.What, m.Value(0.0), m.Value(share), trial.Turns, trial.YawRate, trial.ScrubMoment, trial.Current));
        }

        return helps;
    }

    /// <summary>The limit of a controller, given or its motors' stall current [A].</summary>
    public static double LimitOf(RobotSettings robot, ControllerSettings c)
    {
        if (double.IsFinite(c.CurrentLimit))
        {
            return c.CurrentLimit;
        }

        double voltage = DriveBuilder.PackVoltage(robot);
        double[] resistance = [.. c.Motors.Select(m => robot.Drives[m.Drive].Motors[m.Motor].Motor.Resistance)];
        return c.Wiring == Wiring.Parallel ? resistance.Sum(r => voltage / r) : voltage / resistance.Sum();
    }

    private IEnumerable<Measure> Measures()
    {
        RobotSettings robot = scenario.Robot;
        Chassis.ChassisSettings c = robot.Chassis;
        double front = robot.Wheels.Max(w => w.X);
        double rear = robot.Wheels.Min(w => w.X);
        double left = robot.Wheels.Max(w => w.Y);
        double right = robot.Wheels.Min(w => w.Y);
        double wheelbase = front - rear;
        double middle = 0.5 * (front + rear);
        if (wheelbase > 0.0)
        {
            // scaled about the centre of mass, which keeps the shares of the load
            yield return new Measure(TurnChange.Wheelbase, 0.15, 0.7, a => 1e3 * wheelbase * (1.0 - a), a => robot with
            {
                Wheels = [.. robot.Wheels.Select(w => w with { X = c.CentreOfMassX + ((1.0 - a) * (w.X - c.CentreOfMassX)) })],
            });
        }

        yield return new Measure(TurnChange.Track, 0.15, 1.0, a => 1e3 * (left - right) * (1.0 + a), a => robot with
        {
            Wheels = [.. robot.Wheels.Select(w => w with { Y = c.CentreOfMassY + ((1.0 + a) * (w.Y - c.CentreOfMassY)) })],
        });
        if (wheelbase > 0.0)
        {
            // to the end that it is nearer to already; the rear if it is in the middle
            double toward = c.CentreOfMassX > middle ? 1.0 : -1.0;
            double room = (0.45 * wheelbase) - (toward * (c.CentreOfMassX - middle));
            yield return new Measure(TurnChange.CentreOfMass, Math.Min(0.15 * wheelbase, room), Math.Max(0.0, room), a => 1e3 * (c.CentreOfMassX - middle + (toward * a)), a => robot with
            {
                Chassis = c with { CentreOfMassX = c.CentreOfMassX + (toward * a) },
            });
            bool frontIsLight = toward < 0.0;
            double limit = middle;
            double friction = robot.Wheels.First(w => frontIsLight ? w.X > limit : w.X < limit).Tyre.StaticFriction;
            yield return new Measure(frontIsLight ? TurnChange.FrontFriction : TurnChange.RearFriction, 0.5, 0.95, a => friction * (1.0 - a), a => TurnTrial.WithTyres(
                robot, w => (frontIsLight ? w.X > limit : w.X < limit) ? w.Tyre.Gripping(1.0 - a) : w.Tyre));
        }

        if (!scenario.Manoeuvre.Traits.IsOnTheSpot)
        {
            // in an arc the load moves outward by height and sideways acceleration
            yield return new Measure(TurnChange.CentreOfMassHeight, 0.25, 0.8, a => 1e3 * c.CentreOfMassHeight * (1.0 - a), a => robot with { Chassis = c with { CentreOfMassHeight = c.CentreOfMassHeight * (1.0 - a) } });
        }

        double grip = robot.Wheels.Average(w => w.Tyre.StaticFriction);
        yield return new Measure(TurnChange.Friction, 0.15, 0.9, a => grip * (1.0 - a), a => TurnTrial.WithTyres(robot, w => w.Tyre.Gripping(1.0 - a)));
        double[] ratios = [.. robot.Drives.SelectMany(d => d.Motors).Select(m => m.Ratio)];
        if (ratios.Length > 0)
        {
            yield return new Measure(TurnChange.GearRatio, 0.25, 4.0, a => ratios.Average() * (1.0 + a), a => robot with
            {
                Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (m.Motor, m.Ratio * (1.0 + a)))] })],
            });
        }

        if (robot.Controllers.Any(k => double.IsFinite(k.CurrentLimit)))
        {
            double lowest = robot.Controllers.Min(k => k.CurrentLimit);
            yield return new Measure(TurnChange.CurrentLimit, 0.25, 9.0, a => lowest * (1.0 + a), a => Limited(robot, 1.0 + a));
        }
    }

    // Smallest change that lets it turn; null if not even the largest does.
    private double? Weakest(Measure m)
    {
        if (!(m.Most > 0.0) || !Try(m.Change(m.Most)).Turns)
        {
            return null;
        }

        (double low, double high) = (0.0, m.Most);
        while (high - low > Accuracy * m.Most)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Try(m.Change(middle)).Turns ? (low, middle) : (middle, high);
        }

        return high;
    }

    private double? Least(bool turns, Func<double, RobotSettings> robot)
    {
        (double low, double high) = (0.0, 1.0);
        if (!turns)
        {
            int found = Array.FindIndex(s_stronger, f => Try(robot(f)).Turns);
            if (found < 0)
            {
                return null;
            }

            (low, high) = (found == 0 ? 1.0 : s_stronger[found - 1], s_stronger[found]);
        }

        while (high - low > Accuracy * high)
        {
            double middle = low > 0.0 ? Math.Sqrt(low * high) : 0.5 * high;
            if (Try(robot(middle)).Turns)
            {
                high = middle;
                if (high < Accuracy)
                {
                    break;
                }
            }
            else
            {
                low = middle;
            }
        }

        return high;
    }

    private TurnTrial Try(RobotSettings robot)
    {
        work.Cancel.ThrowIfCancellationRequested();
        return TurnTrial.Of(scenario with { Robot = robot }, work);
    }

    private static RobotSettings Limited(RobotSettings robot, double share) => robot with
    {
        Controllers = [.. robot.Controllers.Select(c => c with { CurrentLimit = share * LimitOf(robot, c) })],
    };

    /// <summary>Motors of another stall torque at the same no-load speed: less torque is more resistance.</summary>
    internal static RobotSettings Stronger(RobotSettings robot, double share) => robot with
    {
        Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (m.Motor with { Resistance = m.Motor.Resistance / share }, m.Ratio))] })],
    };

    // A change by a share or length a, from 0.
    private sealed record Measure(TurnChange What, double Usual, double Most, Func<double, double> Value, Func<double, RobotSettings> Change);
}
