using PushSim.Binding;

namespace PushSim.Analysis.Limits;

/// <summary>Motors' and tyres' forces against speed: motors with all wheels rolling at that speed, tyres at the slip that gives most, both with the load
/// that the wheels carry while they give it.</summary>
/// <param name="model">The robot in its state.</param>
/// <param name="hook">Where it is held back.</param>
internal sealed class ForceCurves(LimitModel<R1> model, LimitHook hook)
{
    // Slips that are tried for the greatest friction of a rolling tyre, geometric [m/s].
    private const int Slips = 28;
    private const double LeastSlip = 1e-3;
    private const double GreatestSlip = 5.0;

    // Passes of traction and load transfer; each takes the rest down to friction times height of the hook over wheelbase, of most robots a third.
    private const int Passes = 40;

    private readonly R1[] _load = new R1[model.Wheels.Length];
    private readonly R1[] _omega = new R1[model.Drives.Length];
    private readonly R1[] _torque = new R1[model.Drives.Length];

    /// <summary>Peak or sliding force of each wheel with its load under that traction. Where the robot would rear up before, with its load at the moment it does;
    /// null where it does not stand at all.</summary>
    public HeldForces? Tyres(double speed, bool isSliding)
    {
        double traction = model.LeastTraction.Value;
        for (int pass = 0; pass < Passes; pass++)
        {
            if (!Loads(traction))
            {
                return NearTipping(speed, isSliding, traction);
            }

            double sum = Forces(speed, isSliding).Sum();
            double change = sum - traction;
            traction = sum;
            if (Math.Abs(change) < 1e-12 * Math.Max(1e-9, sum))
            {
                return Held(speed, isSliding, null);
            }
        }

        return Slowly(speed, isSliding, traction);
    }

    /// <summary>Peak or sliding force of each wheel under loads that are given [N].</summary>
    public double[] Tyres(double speed, bool isSliding, double[] load)
    {
        for (int i = 0; i < load.Length; i++)
        {
            _load[i] = load[i];
        }

        return Forces(speed, isSliding);
    }

    /// <summary>Greatest traction under which the robot stands [N], to a millionth of its weight, and each wheel's load then; null where it rears up under none below <paramref name="most"/>.</summary>
    public HeldForces? Tipping(double most)
    {
        double low = model.LeastTraction.Value;
        if (Loads(most) || !Loads(low))
        {
            return null;
        }

        for (double high = most; high - low > 1e-6 * model.Mass.Value * model.Scenario.Floor.Gravity;)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Loads(middle) ? (middle, high) : (low, middle);
        }

        Loads(low);
        return Held(0.0, false, low);
    }

    /// <summary>What each wheel's motors can give at a speed, a drive's force shared by load [N].</summary>
    public double[] Motors(double speed, double[] load)
    {
        for (int d = 0; d < _omega.Length; d++)
        {
            _omega[d] = speed / model.Lever(d);
        }

        model.Torques(_omega, _torque);
        double[] force = new double[load.Length];
        for (int d = 0; d < _omega.Length; d++)
        {
            if (!model.IsDriven[d])
            {
                continue;
            }

            int[] wheels = model.WheelsOf[d];
            double all = wheels.Sum(i => load[i]);
            foreach (int i in wheels)
            {
                double lever = model.Wheels[i].DriveRatio.Value * model.Wheels[i].Radius.Value;
                double share = all > 0.0 ? load[i] / all : 1.0 / wheels.Length;
                double rolling = speed > 0.0 ? model.Wheels[i].RollingResistance.Value * load[i] : 0.0;
                force[i] = (share * _torque[d].Value / lever) - rolling;
            }
        }

        return force;
    }

    // What binds the wheels that count at the speed that the motors were just asked for: their tyres where the motors could give more, else what binds most of what the motors give
    private BindingKind Bound(double[] load, double[] motor, bool isMore, Func<int, bool> counts)
    {
        var tally = new BindingTally();
        BindingKind?[] kinds = SteadyBinding.Wheels(model, [.. load.Select(n => (R1)n)], motor, _ => 0.0);
        for (int i = 0; i < load.Length; i++)
        {
            tally.Add(counts(i) && kinds[i] is { } kind ? isMore ? BindingKind.Tyre : kind : BindingKind.Nothing, motor[i], 1.0);
        }

        return tally.Leading();
    }

    /// <summary>The curve of some wheels over speeds.</summary>
    public ForceCurve Curve(double[] speeds, Func<int, bool> counts)
    {
        double[] motor = new double[speeds.Length];
        double[] peak = new double[speeds.Length];
        double[] sliding = new double[speeds.Length];
        BindingKind[] binding = new BindingKind[speeds.Length];
        HeldForces? slide = Tyres(0.0, isSliding: true);
        for (int k = 0; k < speeds.Length; k++)
        {
            HeldForces? hold = Tyres(speeds[k], isSliding: false);
            double[] load = hold?.Load ?? [.. _load.Select(n => n.Value)];
            double[] each = Motors(speeds[k], load);
            motor[k] = Sum(each, counts);
            peak[k] = hold is null ? double.NaN : Sum(hold.Force, counts);
            sliding[k] = hold is { TipsAt: not null } ? Sum(Tyres(0.0, isSliding: true, hold.Load), counts) : slide is null ? double.NaN : Sum(slide.Force, counts);
            binding[k] = Bound(load, each, motor[k] > peak[k], counts);
        }

        return new ForceCurve(speeds, motor, peak, sliding, binding);
    }

    /// <summary>Motors' surplus over the tyres' peak, all wheels together [N].</summary>
    public double Surplus(double speed)
    {
        if (Tyres(speed, isSliding: false) is not { } hold)
        {
            return double.NaN;
        }

        return Motors(speed, hold.Load).Sum() - hold.Force.Sum();
    }

    // At some traction on the way to the answer the robot tips: it rears up if the tyres hold more than it stands, else the answer lies between.
    private HeldForces? NearTipping(double speed, bool isSliding, double tips)
    {
        if (Tipping(tips) is not { } end)
        {
            return model.Loads(0.0, 0.0, null, _load) ? Held(speed, isSliding, 0.0) : null;
        }

        double high = end.TipsAt!.Value;
        Loads(high);
        HeldForces held = Held(speed, isSliding, high);
        if (held.Force.Sum() >= high)
        {
            return held;
        }

        return Halved(speed, isSliding, high);
    }

    // The hook is so high that pass after pass brings the answer hardly nearer, or to and fro about it: from a traction that is more than the tyres give, by halving.
    private HeldForces? Slowly(double speed, bool isSliding, double most)
    {
        for (most = Math.Max(most, 1e-6 * model.Mass.Value * model.Scenario.Floor.Gravity); Loads(most); most *= 2.0)
        {
            if (!(Forces(speed, isSliding).Sum() > most))
            {
                return Halved(speed, isSliding, most);
            }
        }

        return NearTipping(speed, isSliding, most);
    }

    // The traction up to this one that the tyres give under its loads; they give less than this one.
    private HeldForces Halved(double speed, bool isSliding, double high)
    {
        for (double low = model.LeastTraction.Value; high - low > 1e-12 * Math.Max(1e-9, high);)
        {
            double middle = 0.5 * (low + high);
            if (middle <= low || middle >= high)
            {
                break;
            }

            Loads(middle);
            (low, high) = Forces(speed, isSliding).Sum() > middle ? (middle, high) : (low, middle);
        }

        return Held(speed, isSliding, null);
    }

    private bool Loads(double traction) => model.Loads(traction, traction + model.AlongGravity.Value, hook, _load);

    private HeldForces Held(double speed, bool isSliding, double? tips) => new(Forces(speed, isSliding), [.. _load.Select(n => n.Value)], tips);

    private double[] Forces(double speed, bool isSliding) =>
        [.. Enumerable.Range(0, _load.Length).Select(i => !model.IsDrivenWheel[i] ? 0.0 : isSliding ? Sliding(i) : Peak(i, speed))];

    private static double Sum(double[] force, Func<int, bool> counts) => force.Where((_, i) => counts(i)).Sum();

    private double Sliding(int i) => LaunchEstimate<R1>.SlidingForce(model.Wheels[i], model.Kinds[i], model.FloorOf[i], _load[i]).Value;

    private double Peak(int i, double speed)
    {
        double most = 0.0;
        if (speed <= 0.0)
        {
            return SteadyTyre.Peak(model.Wheels[i], model.Kinds[i], model.FloorOf[i], _load[i]).Value;
        }

        for (int k = 0; k < Slips; k++)
        {
            double slip = LeastSlip * Math.Pow(GreatestSlip / LeastSlip, k / (Slips - 1.0));
            most = Math.Max(most, SteadyTyre.Force(model.Wheels[i], model.Kinds[i], model.FloorOf[i], _load[i], slip, speed + slip).Value);
        }

        return most;
    }
}
