using PushSim.Powertrain;

namespace PushSim.Analysis.Limits;

/// <summary>A robot that pulls at standstill: which drives stall and which spin their wheels, and how fast.
/// <code>
///   stalled: sum F_i ratio_i R_i = torque_d(0), while that is no more than its wheels hold as they break away
///   spinning: torque_d(omega) = sum ratio_i (R_i F_i(slip = omega_i R_i) + crr N_i R_i),   the first such omega from rest up
/// </code>
/// A stalled drive's force is shared over its wheels by their load.</summary>
internal sealed partial class StandingPull
{
    // Passes over drives and loads before Newton's method finishes, and changes of stalled against spinning after it.
    private const int Passes = 8;
    private const int MostChanges = 12;

    // Drives this much faster than the slowest count as like it, its mirror image [1].
    private const double Together = 1.05;

    private StandingPull(double traction, double hold, double[] omega, double[,] inverse, int[] spinning)
    {
        (Traction, Hold, Omega, Inverse, Spinning) = (traction, hold, omega, inverse, spinning);
    }

    /// <summary>Sum of the tyres' forces; horizontal pull [N].</summary>
    public double Traction { get; }

    public double Hold { get; }

    /// <summary>Spin of each drive [rad/s], 0 stalled.</summary>
    public double[] Omega { get; }

    /// <summary>Drives that spin.</summary>
    public int[] Spinning { get; }

    /// <summary>Whether some driven wheels stand while others spin. A standing drive can hold more than its motor gives now: what it gave before the others broke
    /// away stays behind its gear friction. The value here is that of a robot that still creeps forward, the lower end.</summary>
    public bool IsMixed { get; private init; }

    private double[,] Inverse { get; }

    /// <summary>Looks for the steady pull.</summary>
    public static PullSearch Solve(LimitModel<R1> model, LimitHook? hook)
    {
        double[] omega = new double[model.Drives.Length];
        R1[] load = new R1[model.Wheels.Length];
        if (!Loads(model, hook, model.LeastTraction.Value, load))
        {
            return PullSearch.NotFound;
        }

        return Approach(model, hook, omega, load, out double tips) is double traction ? Settle(model, hook, traction, omega, load) : PullSearch.RearsUp(tips);
    }

    /// <summary>Tension of the tether with the slope that a model carries [N].</summary>
    public T Pull<T>(LimitModel<T> model, LimitHook? hook)
        where T : struct, IReal<T>
    {
        T[] x = SmallNewton.Carry(new Residual<T>(model, hook, Spinning), [Traction, .. Spinning.Select(d => Omega[d])], Inverse);
        double rise = hook?.Rise ?? 0.0;
        return (x[0] + model.AlongGravity) * Math.Sqrt(1.0 + (rise * rise));
    }

    /// <summary>Force of each wheel now [N]; the model's work holds currents of the same state.</summary>
    public double[] WheelForces(LimitModel<R1> model, LimitHook? hook, R1[] load)
    {
        model.Loads(Traction, Hold, hook, load);
        double[] force = new double[load.Length];
        R1[] torque = Torques(model, Omega);
        for (int i = 0; i < force.Length; i++)
        {
            int d = model.Kinds[i].Shape.Drive;
            if (d < 0)
            {
                force[i] = -SteadyTyre.Peak(model.Wheels[i], model.Kinds[i], model.FloorOf[i], load[i]).Value;
            }
            else if (model.IsDriven[d])
            {
                force[i] = Omega[d] > 0.0 ? Sliding(model, load[i], i, Omega[d]).Value : Share(model, load, d, i) * Math.Max(0.0, torque[d].Value);
            }
        }

        return force;
    }

    private static double Weight(LimitModel<R1> model) => model.Mass.Value * model.Scenario.Floor.Gravity;

    // Traction near the answer, drives and loads in turn, with the spin of each drive; null where the robot tips before, and a traction at which it does
    private static double? Approach(LimitModel<R1> model, LimitHook? hook, double[] omega, R1[] load, out double tips)
    {
        tips = double.NaN;
        double near = 1e-4 * Weight(model);
        double traction = model.LeastTraction.Value;
        for (int pass = 0; pass < Passes; pass++)
        {
            if (!Loads(model, hook, traction, load))
            {
                tips = traction;
                return Between(model, hook, omega, load, ref tips);
            }

            double change = Given(model, omega, load) - traction;
            traction += change;
            if (Math.Abs(change) < near)
            {
                break;
            }
        }

        return traction;
    }

    // A traction on the way tipped the robot: by halving, the one below it that drives and tyres give; null where they give more than it stands
    private static double? Between(LimitModel<R1> model, LimitHook? hook, double[] omega, R1[] load, ref double tips)
    {
        (double low, double high, bool isGiven) = (model.LeastTraction.Value, tips, false);
        while (high - low > 1e-4 * Weight(model))
        {
            double middle = 0.5 * (low + high);
            bool stands = Loads(model, hook, middle, load);
            if (stands && Given(model, omega, load) > middle)
            {
                low = middle;
            }
            else
            {
                (high, isGiven) = (middle, stands);
                tips = stands ? tips : middle;
            }
        }

        return isGiven ? high : null;
    }

    private static bool Loads(LimitModel<R1> model, LimitHook? hook, double traction, R1[] load) => model.Loads(traction, traction + model.AlongGravity.Value, hook, load);

    // What drives and tyres give under these loads, with the spin of each drive
    private static double Given(LimitModel<R1> model, double[] omega, R1[] load)
    {
        double sum = Drag(model, load);
        for (int d = 0; d < omega.Length; d++)
        {
            omega[d] = model.IsDriven[d] ? Spin(model, load, omega, d) : 0.0;
            sum += Force(model, load, omega, d);
        }

        return sum;
    }

    // Newton's method for traction and spins together, until every drive stalls or spins as it was taken to
    private static PullSearch Settle(LimitModel<R1> model, LimitHook? hook, double traction, double[] omega, R1[] load)
    {
        double weight = Weight(model);
        bool[] stands = new bool[omega.Length];
        for (int change = 0; change < MostChanges; change++)
        {
            int[] spinning = [.. Enumerable.Range(0, omega.Length).Where(d => omega[d] > 0.0)];
            double[] x = [traction, .. spinning.Select(d => omega[d])];
            double[] scale = [weight, .. spinning.Select(d => 0.3 / model.Lever(d).Value)];
            double[] size = [weight, .. spinning.Select(d => weight * model.Lever(d).Value)];
            double[,]? inverse = SmallNewton.Solve(new Residual<R1>(model, hook, spinning), x, scale, size);
            if (inverse is null)
            {
                if (spinning.Length == 0)
                {
                    return PullSearch.NotFound;
                }

                StopSlowest(model, spinning, omega, stands);
                continue;
            }

            traction = x[0];
            for (int i = 0; i < spinning.Length; i++)
            {
                omega[spinning[i]] = x[i + 1];
            }

            if (!Loads(model, hook, traction, load))
            {
                return PullSearch.RearsUp(traction);
            }

            bool isLast = change == MostChanges - 1;
            if (!Regroup(model, load, omega, stands) || isLast)
            {
                // brought to a stand, and yet it gives more than its tyres hold: that is no steady state
                if (Enumerable.Range(0, omega.Length).Any(d => stands[d] && BreaksAway(model, load, omega, d)))
                {
                    if (!isLast && Swap(model, load, omega, stands))
                    {
                        continue;
                    }

                    return PullSearch.NotFound;
                }

                return PullSearch.Found(new StandingPull(traction, traction + model.AlongGravity.Value, omega, inverse, spinning)
                {
                    IsMixed = spinning.Length > 0 && spinning.Length < model.IsDriven.Count(driven => driven),
                });
            }
        }

        return PullSearch.NotFound;
    }

    // On falling friction drives in series cannot share a slide: the slowest, and its mirror image, come to a stand for good; of those in one series only one,
    // for as it stands the others keep the slide
    private static void StopSlowest(LimitModel<R1> model, int[] spinning, double[] omega, bool[] stands)
    {
        double Surface(int d) => omega[d] * model.Lever(d).Value;
        double limit = Together * spinning.Min(Surface);
        HashSet<ControllerSettings> stopped = [];
        foreach (int d in spinning.Where(d => Surface(d) <= limit).OrderBy(Surface).ToArray())
        {
            ControllerSettings[] series = [.. Series(model, d)];
            if (!series.Any(stopped.Contains))
            {
                stopped.UnionWith(series);
                (omega[d], stands[d]) = (0.0, true);
            }
        }
    }

    // Where the wrong one of a series was brought to a stand, one that spins stands instead; whether any could
    private static bool Swap(LimitModel<R1> model, R1[] load, double[] omega, bool[] stands)
    {
        bool isChanged = false;
        foreach (int d in Enumerable.Range(0, omega.Length).Where(d => stands[d] && BreaksAway(model, load, omega, d)).ToArray())
        {
            int other = Series(model, d).SelectMany(c => c.Motors).Select(m => m.Drive).Where(o => omega[o] > 0.0).DefaultIfEmpty(-1).MinBy(o => o < 0 ? 0.0 : omega[o] * model.Lever(o).Value);
            if (other >= 0)
            {
                (omega[other], stands[other], stands[d]) = (0.0, true, false);
                omega[d] = Spin(model, load, omega, d);
                isChanged = true;
            }
        }

        return isChanged;
    }

    // Controllers with this drive and others in series
    private static IEnumerable<ControllerSettings> Series(LimitModel<R1> model, int drive) => model.Scenario.Robot.Controllers.Where(
        c => c.Wiring == Wiring.Series && c.Motors.Any(m => m.Drive == drive) && c.Motors.Any(m => m.Drive != drive));

    // Lets drives break away or come to a stand at these loads; whether any did
    private static bool Regroup(LimitModel<R1> model, R1[] load, double[] omega, bool[] stands)
    {
        bool isChanged = false;
        for (int d = 0; d < omega.Length; d++)
        {
            bool breaks = model.IsDriven[d] && !stands[d] && BreaksAway(model, load, omega, d);
            if (breaks != omega[d] > 0.0)
            {
                omega[d] = breaks ? Spin(model, load, omega, d) : 0.0;
                isChanged = true;
            }
        }

        return isChanged;
    }
}
