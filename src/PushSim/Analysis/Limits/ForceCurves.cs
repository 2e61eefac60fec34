using PushSim.Numerics;

namespace PushSim.Analysis.Limits;

/// <summary>
/// Motors' and tyres' forces against speed: motors with all wheels rolling at that speed, tyres at the slip that gives most, both with the load
/// that the wheels carry while they give it.
/// </summary>
internal sealed class ForceCurves
{
    // Slips that are tried for the greatest friction of a rolling tyre, geometric [m/s].
    private const int Slips = 28;
    private const double LeastSlip = 1e-3;
    private const double GreatestSlip = 5.0;

    // Passes of traction and load transfer; each takes the rest down to a third or less.
    private const int Passes = 40;

    private readonly LimitModel<R1> _model;
    private readonly LimitHook _hook;
    private readonly R1[] _load;
    private readonly R1[] _omega;
    private readonly R1[] _torque;

    public ForceCurves(LimitModel<R1> model, LimitHook hook)
    {
        (_model, _hook) = (model, hook);
        _load = new R1[model.Wheels.Length];
        _omega = new R1[model.Drives.Length];
        _torque = new R1[model.Drives.Length];
    }

    /// <summary>Peak or sliding force of each wheel with its load under that traction; where the robot would tip, with its load at rest; null where it does not stand.</summary>
    public (double[] Force, double[] Load)? Tyres(double speed, bool isSliding)
    {
        double[] force = new double[_load.Length];
        double traction = 0.0;
        bool tips = false;
        for (int pass = 0; pass < Passes; pass++)
        {
            tips |= !_model.Loads(traction, traction + _model.AlongGravity.Value, _hook, _load);
            if (tips && !_model.Loads(0.0, 0.0, null, _load))
            {
                return null;
            }

            double sum = 0.0;
            for (int i = 0; i < force.Length; i++)
            {
                force[i] = _model.IsDrivenWheel[i] ? (isSliding ? Sliding(i) : Peak(i, speed)) : 0.0;
                sum += force[i];
            }

            double change = sum - traction;
            traction = sum;
            if (Math.Abs(change) < 1e-12 * Math.Max(1e-9, sum))
            {
                break;
            }
        }

        return (force, [.. _load.Select(n => n.Value)]);
    }

    /// <summary>What each wheel's motors can give at a speed, a drive's force shared by load [N].</summary>
    public double[] Motors(double speed, double[] load)
    {
        for (int d = 0; d < _omega.Length; d++)
        {
            _omega[d] = speed / _model.Lever(d);
        }

        _model.Torques(_omega, _torque);
        double[] force = new double[load.Length];
        for (int d = 0; d < _omega.Length; d++)
        {
            if (!_model.IsDriven[d])
            {
                continue;
            }

            int[] wheels = _model.WheelsOf[d];
            double all = wheels.Sum(i => load[i]);
            foreach (int i in wheels)
            {
                double lever = _model.Wheels[i].DriveRatio.Value * _model.Wheels[i].Radius.Value;
                double share = all > 0.0 ? load[i] / all : 1.0 / wheels.Length;
                double rolling = speed > 0.0 ? _model.Wheels[i].RollingResistance.Value * load[i] : 0.0;
                force[i] = (share * _torque[d].Value / lever) - rolling;
            }
        }

        return force;
    }

    /// <summary>What limits the motors at the state last looked at: controllers, battery or the motors themselves.</summary>
    public string MotorWord(IEnumerable<int>? controllers = null)
    {
        int[] looked = [.. controllers ?? Enumerable.Range(0, _model.Controllers.Length)];
        if (looked.Length > 0 && looked.Average(k => _model.ControllerWork[k].IsLimiting.Value) > PushLimits.BindingShare)
        {
            return "controllers";
        }

        return _model.BusVoltage.Value < (1.0 - PushLimits.BatterySag) * _model.OpenCircuit.Value ? "battery" : "motors";
    }

    /// <summary>The curve of some wheels over speeds.</summary>
    public ForceCurve Curve(double[] speeds, Func<int, bool> counts)
    {
        double[] motor = new double[speeds.Length];
        double[] peak = new double[speeds.Length];
        double[] sliding = new double[speeds.Length];
        string[] binding = new string[speeds.Length];
        (double[] Force, double[] Load)? slide = Tyres(0.0, isSliding: true);
        for (int k = 0; k < speeds.Length; k++)
        {
            (double[] Force, double[] Load)? hold = Tyres(speeds[k], isSliding: false);
            double[] load = hold?.Load ?? [.. _load.Select(n => n.Value)];
            motor[k] = Sum(Motors(speeds[k], load), counts);
            peak[k] = hold is { } h ? Sum(h.Force, counts) : double.NaN;
            sliding[k] = slide is { } s ? Sum(s.Force, counts) : double.NaN;
            binding[k] = motor[k] > peak[k] ? "tyres" : MotorWord();
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

    private static double Sum(double[] force, Func<int, bool> counts) => force.Where((_, i) => counts(i)).Sum();

    private double Sliding(int i) => LaunchEstimate<R1>.SlidingForce(_model.Wheels[i], _model.FloorOf[i], _load[i]).Value;

    private double Peak(int i, double speed)
    {
        double most = 0.0;
        if (speed <= 0.0)
        {
            return SteadyTyre.Peak(_model.Wheels[i], _model.FloorOf[i], _load[i]).Value;
        }

        for (int k = 0; k < Slips; k++)
        {
            double slip = LeastSlip * Math.Pow(GreatestSlip / LeastSlip, k / (Slips - 1.0));
            most = Math.Max(most, SteadyTyre.Force(_model.Wheels[i], _model.FloorOf[i], _load[i], slip, speed + slip).Value);
        }

        return most;
    }
}
