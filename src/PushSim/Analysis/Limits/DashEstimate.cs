using PushSim.Tyres;

namespace PushSim.Analysis.Limits;

/// <summary>A dash from standstill straight ahead, without pitch and heave, in time: what battery, motors and controllers take while the wheels first spin up
/// to where their motors give no more than the tyres hold, and then roll along as the robot catches up. A drive d is in one of two states:
/// <code>
///   grips: omega = V/lever,   its tyres hold T_d(omega)/lever - crr N - I_d/lever^2 V', while that is no more than they hold as they break away
///   slips: I_d omega' = T_d(omega) - sum ratio_i R_i (F_i + crr N_i),   F_i the steady tyre curve at the slip ratio_i R_i omega - V, until V has caught up
///   (m + sum_grips I_d/lever^2) V' = sum_grips (T_d/lever - crr N) + sum_slips F_i - sum_skid mu N + m g_along
/// </code>
/// The share s of the tyre curve is that of a spinning wheel on a standing robot throughout, so that the force is continuous where a tyre lets go.
/// Steps are those of Bogacki and Shampine's pair of order 3 (2), Applied Mathematics Letters 2, 1989.</summary>
internal sealed class DashEstimate
{
    // Error of a step in speed, of the chassis or of a wheel's surface, as a share of the greatest speed so far [1], and the least speed that counts [m/s].
    private const double Tolerance = 1e-3;
    private const double LeastSpeed = 0.05;

    // [s]
    private const double FirstStep = 1e-5;
    private const double LongestStep = 0.02;
    private const double ShortestStep = 1e-6;

    // Tried steps after which the shortest one is that share of the dash, so that tyres that let go and catch on again without end cost no more than as many again [1].
    private const int MostTrials = 4000;

    // [1]
    private const double LeastCommand = 1e-6;

    // A drive that turns as lightly as this share of the robot's mass follows its motor within a millisecond; lighter ones would only ask for finer steps [1].
    private const double LeastSpinShare = 0.002;

    // Loads follow the traction and the traction the loads.
    private const int LoadPasses = 2;

    private readonly LimitModel<R1> _model;
    private readonly R1[] _omega;
    private readonly R1[] _torque;
    private readonly R1[] _load;
    private readonly R1[] _kept;
    private readonly bool[] _slips;
    private readonly double[] _lever;
    private readonly double[] _spinMass;
    private readonly double[] _copper;
    private readonly double[] _loss;
    private double _traction;

    /// <param name="model">Robot at its charge and heat; its controllers are left at its throttle.</param>
    public DashEstimate(LimitModel<R1> model)
    {
        _model = model;
        int drives = model.Drives.Length;
        (_omega, _torque, _slips) = (new R1[drives], new R1[drives], new bool[drives]);
        (_load, _kept) = (new R1[model.Wheels.Length], new R1[model.Wheels.Length]);
        _lever = [.. Enumerable.Range(0, drives).Select(d => model.Lever(d).Value)];
        _spinMass = [.. Enumerable.Range(0, drives).Select(d => Math.Max(LeastSpinShare * model.Mass.Value, model.Drives[d].Inertia.Value / (_lever[d] * _lever[d])))];
        _copper = new double[model.Motors.Length];
        _loss = new double[model.Controllers.Length];
    }

    /// <summary>Mean copper loss of each motor [W].</summary>
    public IReadOnlyList<double> Copper => _copper;

    /// <summary>Mean loss of each controller [W].</summary>
    public IReadOnlyList<double> Loss => _loss;

    /// <summary>Mean battery current [A].</summary>
    public double Current { get; private set; }

    /// <summary>Lowest battery voltage [V].</summary>
    public double LowestVoltage { get; private set; } = double.PositiveInfinity;

    /// <summary>Steps tried [1].</summary>
    public int Trials { get; private set; }

    /// <summary>Speed at the end [m/s].</summary>
    public double Speed { get; private set; }

    /// <summary>Follows the dash for a time [s].</summary>
    public void Run(double length)
    {
        int n = _omega.Length + 1;
        double[] y = new double[n];
        double[] next = new double[n];
        double[][] k = [new double[n], new double[n], new double[n], new double[n]];
        _model.Loads(_model.LeastTraction, 0.0, null, _kept);
        double t = 0.0;
        double step = FirstStep;
        double fastest = LeastSpeed;
        double shortest = ShortestStep;
        while (length - t > 1e-12)
        {
            step = Math.Min(Math.Min(step, LongestStep), length - t);
            Command(t);
            Regroup(y);
            Rate(y, k[0]);
            Work before = Worked();
            while (true)
            {
                shortest = ++Trials == MostTrials ? Math.Max(shortest, length / MostTrials) : shortest;
                Command(t + (0.5 * step));
                Rate(Moved(y, step, (0.5, k[0])), k[1]);
                Command(t + (0.75 * step));
                Rate(Moved(y, step, (0.75, k[1])), k[2]);
                Command(t + step);
                Moved(y, step, (2.0 / 9.0, k[0]), (1.0 / 3.0, k[1]), (4.0 / 9.0, k[2])).CopyTo(next, 0);
                Rate(next, k[3]);
                double error = 0.0;
                for (int i = 0; i < n; i++)
                {
                    double off = step * ((-5.0 / 72.0 * k[0][i]) + (k[1][i] / 12.0) + (k[2][i] / 9.0) - (0.125 * k[3][i]));
                    error = Math.Max(error, Math.Abs(off) * (i == 0 ? 1.0 : _lever[i - 1]) / (Tolerance * fastest));
                }

                double factor = error > 0.0 ? Math.Clamp(0.9 / Math.Cbrt(error), 0.2, 4.0) : 4.0;
                if (!(error > 1.0) || step <= shortest)
                {
                    Take(before, Worked(), step / length);
                    (t, step) = (t + step, Math.Max(shortest, step * factor));
                    break;
                }

                step = Math.Max(shortest, step * factor);
            }

            next.CopyTo(y, 0);
            fastest = Math.Max(fastest, Math.Max(Math.Abs(y[0]), Enumerable.Range(0, _omega.Length).Max(d => Math.Abs(y[d + 1] * _lever[d]))));
        }

        Speed = y[0];
        Command(double.PositiveInfinity);

        double[] Moved(double[] from, double dt, params ReadOnlySpan<(double Weight, double[] Rate)> parts)
        {
            double[] to = [.. from];
            foreach ((double weight, double[] rate) in parts)
            {
                for (int i = 0; i < to.Length; i++)
                {
                    to[i] += dt * weight * rate[i];
                }
            }

            return to;
        }
    }

    // Slew limits from standstill on; a command of exactly zero would be the brake
    private void Command(double t)
    {
        for (int c = 0; c < _loss.Length; c++)
        {
            double slew = _model.Scenario.Robot.Controllers[c].SlewLimit;
            _model.Command(c, double.IsPositiveInfinity(slew) ? _model.Throttle : Math.Min(_model.Throttle, Math.Max(slew * t, LeastCommand)));
        }
    }

    // What battery, motors and controllers do at one moment
    private readonly record struct Work(double Current, double[] Copper, double[] Loss);

    private Work Worked()
    {
        LowestVoltage = Math.Min(LowestVoltage, _model.BusVoltage.Value);
        return new Work(_model.BatteryCurrent.Value, [.. _model.MotorWork.Select(m => m.CopperPower.Value)], [.. _model.ControllerWork.Select(c => c.Loss.Value)]);
    }

    private void Take(Work from, Work to, double weight)
    {
        Current += 0.5 * weight * (from.Current + to.Current);
        for (int m = 0; m < _copper.Length; m++)
        {
            _copper[m] += 0.5 * weight * (from.Copper[m] + to.Copper[m]);
        }

        for (int c = 0; c < _loss.Length; c++)
        {
            _loss[c] += 0.5 * weight * (from.Loss[c] + to.Loss[c]);
        }
    }

    // Who slips and who grips from here on; a gripping drive turns with the robot
    private void Regroup(double[] y)
    {
        for (int d = 0; d < _slips.Length; d++)
        {
            _slips[d] &= y[d + 1] * _lever[d] > y[0];
            y[d + 1] = _slips[d] ? y[d + 1] : y[0] / _lever[d];
        }

        // one that lets go leaves more for the others
        bool isChanged = true;
        while (isChanged)
        {
            isChanged = false;
            double a = Chassis(y);
            for (int d = 0; d < _slips.Length; d++)
            {
                if (!_slips[d] && _model.IsDriven[d] && Own(d) - (_spinMass[d] * a) > Force(d, 0.0, 0.0, out _))
                {
                    isChanged = _slips[d] = true;
                }
            }
        }
    }

    private void Rate(double[] y, double[] rate)
    {
        rate[0] = Chassis(y);
        for (int d = 0; d < _slips.Length; d++)
        {
            if (!_slips[d])
            {
                rate[d + 1] = rate[0] / _lever[d];
                continue;
            }

            Force(d, y[d + 1], y[0], out double resisting);
            rate[d + 1] = (_torque[d].Value - resisting) / (_spinMass[d] * _lever[d] * _lever[d]);
        }
    }

    // V' at this state, with torques and loads
    private double Chassis(double[] y)
    {
        for (int d = 0; d < _omega.Length; d++)
        {
            _omega[d] = _slips[d] ? y[d + 1] : y[0] / _lever[d];
        }

        _model.Torques(_omega, _torque);
        double mass = _model.Mass.Value;
        double a = 0.0;
        for (int pass = 0; pass < LoadPasses; pass++)
        {
            // where it would rear up the loads stay as they were
            bool stands = _model.Loads(_traction, 0.0, null, _load);
            (stands ? _load : _kept).CopyTo(stands ? _kept : _load, 0);
            double sum = _model.AlongGravity.Value;
            double moved = mass;
            for (int d = 0; d < _slips.Length; d++)
            {
                (sum, moved) = _slips[d] ? (sum + Force(d, y[d + 1], y[0], out _), moved) : (sum + Own(d), moved + _spinMass[d]);
            }

            for (int i = 0; i < _load.Length; i++)
            {
                sum -= _model.Kinds[i].Shape.Drive < 0 ? LaunchEstimate<R1>.SlidingForce(_model.Wheels[i], _model.Kinds[i], _model.FloorOf[i], _load[i]).Value : 0.0;
            }

            // what cannot start is held: motors that stall do not drive backwards
            a = y[0] > 0.0 ? sum / moved : Math.Max(0.0, sum / moved);
            _traction = (mass * a) - _model.AlongGravity.Value;
        }

        return a;
    }

    // What a gripping drive gives at the floor, its own inertia left out [N]
    private double Own(int d)
    {
        double rolling = 0.0;
        foreach (int i in _model.WheelsOf[d])
        {
            rolling += _model.Wheels[i].RollingResistance.Value * _load[i].Value;
        }

        return (_torque[d].Value / _lever[d]) - rolling;
    }

    // What the tyres of a drive give as they slip [N], and the torque against it [N m]; at no slip at all what they hold as they break away
    private double Force(int d, double omega, double speed, out double resisting)
    {
        double sum = 0.0;
        resisting = 0.0;
        foreach (int i in _model.WheelsOf[d])
        {
            ref readonly WheelParameters<R1> p = ref _model.Wheels[i];
            double lever = p.DriveRatio.Value * p.Radius.Value;
            double slip = (lever * omega) - speed;
            R1 size = Math.Max(Math.Abs(slip), 1e-9);
            double force = (slip < 0.0 ? -1.0 : 1.0) * SteadyTyre.Force(p, _model.Kinds[i], _model.FloorOf[i], _load[i], size, size).Value;
            sum += force;
            resisting += lever * (force + (p.RollingResistance.Value * _load[i].Value));
        }

        return sum;
    }
}
