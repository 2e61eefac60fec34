using PushSim.Numerics;

namespace PushSim.Analysis.Limits;

/// <summary>
/// A robot that pulls at standstill: which drives stall and which spin their wheels, and how fast.
/// <code>
///   stalled: sum F_i ratio_i R_i = torque_d(0), while that is no more than its wheels hold as they break away
///   spinning: torque_d(omega) = sum ratio_i (R_i F_i(slip = omega_i R_i) + crr N_i R_i),   the first such omega from rest up
/// </code>
/// A stalled drive's force is shared over its wheels by their load.
/// </summary>
internal sealed partial class StandingPull
{
    // Spin speeds that are looked at for the one at which torque and friction balance.
    private const int ScanPoints = 24;
    private const double SlowestShare = 1e-4;
    private const int Bisections = 18;

    // Passes over drives and loads before Newton's method finishes, and changes of stalled against spinning after it.
    private const int Passes = 8;
    private const int MostChanges = 12;

    // Drives this much faster than the slowest count as like it, its mirror image [1].
    private const double Together = 1.05;

    // Below this rim speed [m/s] a drive counts as stalled.
    private const double Standstill = 1e-7;

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

    /// <summary>
    /// Whether some driven wheels stand while others spin. A standing drive can hold more than its motor gives now: what it gave before the others broke
    /// away stays behind its gear friction. The value here is that of a robot that still creeps forward, the lower end.
    /// </summary>
    public bool IsMixed { get; private init; }

    private double[,] Inverse { get; }

    /// <summary>Solves; null where the robot tips before.</summary>
    public static StandingPull? Solve(LimitModel<R1> model, LimitHook? hook)
    {
        double[] omega = new double[model.Drives.Length];
        R1[] load = new R1[model.Wheels.Length];
        return Approach(model, hook, omega, load) is double traction ? Settle(model, hook, traction, omega, load) : null;
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
            int d = model.Wheels[i].Drive;
            if (d < 0)
            {
                force[i] = -SteadyTyre.Peak(model.Wheels[i], model.FloorOf[i], load[i]).Value;
            }
            else if (model.IsDriven[d])
            {
                force[i] = Omega[d] > 0.0 ? Sliding(model, load[i], i, Omega[d]).Value : Share(model, load, d, i) * Math.Max(0.0, torque[d].Value);
            }
        }

        return force;
    }

    private static double Weight(LimitModel<R1> model) => model.Mass.Value * model.Scenario.Floor.Gravity;

    // Traction near the answer, drives and loads in turn, with the spin of each drive; null where the robot tips
    private static double? Approach(LimitModel<R1> model, LimitHook? hook, double[] omega, R1[] load)
    {
        double near = 1e-4 * Weight(model);
        double traction = 0.0;
        for (int pass = 0; pass < Passes; pass++)
        {
            if (!Loads(model, hook, traction, load))
            {
                return Between(model, hook, omega, load, traction);
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
    private static double? Between(LimitModel<R1> model, LimitHook? hook, double[] omega, R1[] load, double tips)
    {
        (double low, double high, bool isGiven) = (0.0, tips, false);
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

    // Newton's method for traction and spins together, until every drive stalls or spins as it was taken to; null where the robot tips
    private static StandingPull? Settle(LimitModel<R1> model, LimitHook? hook, double traction, double[] omega, R1[] load)
    {
        double weight = Weight(model);
        bool[] stands = new bool[omega.Length];
        for (int change = 0; change < MostChanges; change++)
        {
            int[] spinning = [.. Enumerable.Range(0, omega.Length).Where(d => omega[d] > 0.0)];
            double[] x = [traction, .. spinning.Select(d => omega[d])];
            double[] scale = [weight, .. spinning.Select(d => 0.3 / Lever(model, d))];
            double[] size = [weight, .. spinning.Select(d => weight * Lever(model, d))];
            double[,]? inverse = SmallNewton.Solve(new Residual<R1>(model, hook, spinning), x, scale, size);
            if (inverse is null)
            {
                if (spinning.Length == 0)
                {
                    return null;
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
                return null;
            }

            if (!Regroup(model, load, omega, stands) || change == MostChanges - 1)
            {
                return new StandingPull(traction, traction + model.AlongGravity.Value, omega, inverse, spinning)
                {
                    IsMixed = spinning.Length > 0 && spinning.Length < model.IsDriven.Count(driven => driven),
                };
            }
        }

        return null;
    }

    // On falling friction drives in series cannot share a slide: the slowest, and those like it, come to a stand for good
    private static void StopSlowest(LimitModel<R1> model, int[] spinning, double[] omega, bool[] stands)
    {
        int slowest = spinning.MinBy(d => omega[d] * Lever(model, d));
        double limit = Together * omega[slowest] * Lever(model, slowest);
        foreach (int d in spinning.Where(d => omega[d] * Lever(model, d) <= limit))
        {
            (omega[d], stands[d]) = (0.0, true);
        }
    }

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

    private static double Lever(LimitModel<R1> model, int d)
    {
        int i = model.WheelsOf[d][0];
        return model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value;
    }

    private static R1[] Torques(LimitModel<R1> model, double[] omega)
    {
        R1[] spin = [.. omega.Select(w => (R1)w)];
        R1[] torque = new R1[omega.Length];
        model.Torques(spin, torque);
        return torque;
    }

    // F of one wheel per torque of its stalled drive
    private static double Share(LimitModel<R1> model, R1[] load, int d, int wheel)
    {
        double sum = 0.0;
        foreach (int i in model.WheelsOf[d])
        {
            sum += load[i].Value * model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value;
        }

        return sum > 0.0 ? load[wheel].Value / sum : 0.0;
    }

    private static T Sliding<T>(LimitModel<T> model, T load, int wheel, T omega)
        where T : struct, IReal<T>
    {
        T surface = model.Wheels[wheel].DriveRatio * model.Wheels[wheel].Radius * omega;
        return SteadyTyre.Force(model.Wheels[wheel], model.FloorOf[wheel], load, surface, surface);
    }

    private static double Resistance(LimitModel<R1> model, R1[] load, int d, double omega)
    {
        double sum = 0.0;
        foreach (int i in model.WheelsOf[d])
        {
            double lever = model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value;
            double spin = model.Wheels[i].DriveRatio.Value * omega;
            double force = omega > 0.0 ? Sliding(model, load[i], i, omega).Value : SteadyTyre.Peak(model.Wheels[i], model.FloorOf[i], load[i]).Value;
            sum += lever * (force + (model.Wheels[i].RollingResistance.Value * load[i].Value * Math.Tanh(spin * model.Wheels[i].InverseRollingSpeed.Value)));
        }

        return sum;
    }

    private static bool BreaksAway(LimitModel<R1> model, R1[] load, double[] omega, int d)
    {
        double kept = omega[d];
        omega[d] = 0.0;
        bool breaks = Torques(model, omega)[d].Value > Resistance(model, load, d, 0.0);
        omega[d] = kept;
        return breaks;
    }

    // The speed of one drive, the others held
    private static double Spin(LimitModel<R1> model, R1[] load, double[] omega, int d)
    {
        if (!BreaksAway(model, load, omega, d))
        {
            return 0.0;
        }

        double least = Standstill / Lever(model, d);
        double most = FreeSpeed(model, d);
        double low = least;
        double high = most;
        for (int k = 0; k < ScanPoints; k++)
        {
            double at = most * Math.Pow(SlowestShare, 1.0 - ((k + 1.0) / ScanPoints));
            if (Balance(at) < 0.0)
            {
                high = at;
                break;
            }

            low = at;
        }

        for (int k = 0; k < Bisections; k++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Balance(middle) > 0.0 ? (middle, high) : (low, middle);
        }

        return omega[d] = 0.5 * (low + high);

        double Balance(double at)
        {
            omega[d] = at;
            return Torques(model, omega)[d].Value - Resistance(model, load, d, at);
        }
    }

    private static double FreeSpeed(LimitModel<R1> model, int d)
    {
        double most = 0.0;
        foreach (Powertrain.MotorParameters<R1> m in model.Motors.Where(m => m.Drive == d))
        {
            most = Math.Max(most, 1.1 * model.OpenCircuit.Value / m.Constant.Value);
        }

        return most;
    }

    private static double Force(LimitModel<R1> model, R1[] load, double[] omega, int d)
    {
        if (!model.IsDriven[d])
        {
            return 0.0;
        }

        // on the way a drive that will spin may still count as stalled: no wheel gives more than it holds
        double torque = omega[d] > 0.0 ? 0.0 : Math.Clamp(Torques(model, omega)[d].Value, 0.0, Resistance(model, load, d, 0.0));
        double sum = 0.0;
        foreach (int i in model.WheelsOf[d])
        {
            sum += omega[d] > 0.0 ? Sliding(model, load[i], i, omega[d]).Value : Share(model, load, d, i) * torque;
        }

        return sum;
    }

    // Skids creep forward and hold against it.
    private static T Drag<T>(LimitModel<T> model, ReadOnlySpan<T> load)
        where T : struct, IReal<T>
    {
        T sum = 0.0;
        for (int i = 0; i < load.Length; i++)
        {
            if (model.Wheels[i].Drive < 0)
            {
                sum = sum - SteadyTyre.Peak(model.Wheels[i], model.FloorOf[i], load[i]);
            }
        }

        return sum;
    }

    private static double Drag(LimitModel<R1> model, R1[] load) => Drag<R1>(model, load).Value;
}
