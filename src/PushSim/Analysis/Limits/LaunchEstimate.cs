namespace PushSim.Analysis.Limits;

/// <summary>A launch from rest straight ahead, without pitch and heave: at each speed the acceleration a solves
/// <code>
///   m a = sum_d min(F_d(V) - (I_d/(ratio R)^2) a, hold_d(N(a))) - sum_free (I/R^2 a + crr N) - sum_skid mu N + m g_along
/// </code>
/// F_d what the motors of a drive give at the floor with its wheels rolling, hold_d what its tyres hold: the sliding friction once the motors can break
/// them away at standstill, else the breakaway friction. With V = V_top (1 - e^-y) times and distances are smooth integrals over y,
/// t = int V_top e^-y / a dy, x = int V V_top e^-y / a dy, by four-point Gauss in panels.</summary>
internal sealed class LaunchEstimate<T>
    where T : struct, IReal<T>
{
    private const double Panel = 0.1;
    private const int MostPanels = 160;
    private const int NewtonSteps = 60;

    // Bound on any acceleration that is looked for [m/s^2].
    private const double Steepest = 1e4;

    private static readonly double[] s_points = [-0.8611363115940526, -0.3399810435848563, 0.3399810435848563, 0.8611363115940526];
    private static readonly double[] s_weights = [0.3478548451374538, 0.6521451548625461, 0.6521451548625461, 0.3478548451374538];

    private readonly LimitModel<T> _model;
    private readonly T[] _omega;
    private readonly T[] _torque;
    private readonly T[] _load;
    private readonly bool[] _breaks;
    private readonly T _allMass;
    private T _top;

    public LaunchEstimate(LimitModel<T> model)
    {
        _model = model;
        _omega = new T[model.Drives.Length];
        _torque = new T[model.Drives.Length];
        _load = new T[model.Wheels.Length];
        _breaks = new bool[model.Drives.Length];
        _allMass = model.Mass;
        for (int d = 0; d < _omega.Length; d++)
        {
            _allMass = _allMass + SpinMass(d);
        }

        FindWhatBreaksAway();
        TopSpeed = FindTop();
        _top = TopSpeed;
    }

    /// <summary>Speed at which nothing is left to accelerate with [m/s]; 0 if it does not start.</summary>
    public T TopSpeed { get; }

    /// <summary>Whether the robot moves at all.</summary>
    public bool Starts => T.AllLess(1e-6, TopSpeed) && T.AllLess(1e-6, Acceleration(0.0));

    /// <summary>Distance after a time [m].</summary>
    public T DistanceAt(double time) => Find(time, isTime: true);

    /// <summary>Time for a distance [s]; infinite if it takes for ever.</summary>
    public T TimeFor(double distance) => Find(distance, isTime: false);

    /// <summary>Battery current with the wheels rolling at a speed [A].</summary>
    public T BatteryCurrent(double speed)
    {
        Rolling(speed);
        return _model.BatteryCurrent;
    }

    /// <summary>Acceleration at a speed [m/s^2].</summary>
    public T Acceleration(T speed)
    {
        Rolling(speed);
        T a = 0.0;
        T low = -Steepest;
        T high = Steepest;
        for (int n = 0; n < NewtonSteps; n++)
        {
            // the surplus falls with a; where the robot would tip, back or forward, a is too large in size
            T value = Surplus(a, _torque);
            bool isTipping = !T.AllLess(value, double.PositiveInfinity);
            bool isAbove = isTipping ? T.AllLess(a, 0.0) : T.AllLess(0.0, value);
            (low, high) = isAbove ? (a, high) : (low, a);
            bool isDone = T.AllLess(T.Abs(value), 1e-12 * _allMass);
            T step = 1e-4 * (1.0 + T.Abs(a));
            T slope = (Surplus(a + step, _torque) - value) / step;
            T next = a - (value / slope);
            bool isInside = T.AllLess(low, next) && T.AllLess(next, high);
            a = isDone || isInside ? next : 0.5 * (low + high);
            if (isDone)
            {
                break;
            }
        }

        return a;
    }

    private T SpinMass(int d)
    {
        T lever = _model.Lever(d);
        return _model.Drives[d].Inertia / (lever * lever);
    }

    private void Rolling(T speed)
    {
        for (int d = 0; d < _omega.Length; d++)
        {
            _omega[d] = speed / _model.Lever(d);
        }

        _model.Torques(_omega, _torque);
    }

    private void FindWhatBreaksAway()
    {
        Rolling(0.0);
        T[] still = [.. _torque];
        T a = 0.0;

        // with all tyres at their peak the load has moved back as far as it can
        for (int pass = 0; pass < 20; pass++)
        {
            a = Surplus(a, still, isPeak: true) / _model.Mass + a;
        }

        _model.Loads(_model.Mass * a, 0.0, null, _load);
        for (int d = 0; d < _breaks.Length; d++)
        {
            _breaks[d] = _model.IsDriven[d] && T.AllLess(Hold(d, isSliding: false), (still[d] / _model.Lever(d)) - (SpinMass(d) * a));
        }
    }

    private T Hold(int d, bool isSliding)
    {
        T sum = 0.0;
        foreach (int i in _model.WheelsOf[d])
        {
            ref readonly Tyres.WheelParameters<T> p = ref _model.Wheels[i];
            T force = isSliding ? SlidingForce(p, _model.Kinds[i], _model.FloorOf[i], _load[i]) : SteadyTyre.Peak(p, _model.Kinds[i], _model.FloorOf[i], _load[i]);
            sum = sum + force;
        }

        return sum;
    }

    /// <summary>Force of a tyre that slides far above the speed at which its friction falls [N].</summary>
    public static T SlidingForce(in Tyres.WheelParameters<T> p, Tyres.WheelKind<T> kind, T floor, T load)
    {
        T slip = 5.0 / p.InverseSlipSpeed;
        T mu = floor * Tyres.WheelEquations.Friction(p, kind, slip, load);
        return load * mu * SteadyTyre.Share(p, kind.Shape, mu, 1.0);
    }

    // Sum of all forces less m a
    private T Surplus(T a, T[] torque, bool isPeak = false)
    {
        T traction = (_model.Mass * a) - _model.AlongGravity;
        if (!_model.Loads(traction, 0.0, null, _load))
        {
            return double.NaN;
        }

        T sum = -traction;
        for (int d = 0; d < _breaks.Length; d++)
        {
            T rolling = 0.0;
            foreach (int i in _model.WheelsOf[d])
            {
                rolling = rolling + (_model.Wheels[i].RollingResistance * _load[i]);
            }

            T own = (torque[d] / _model.Lever(d)) - rolling - (SpinMass(d) * a);
            if (_model.IsDriven[d])
            {
                sum = sum + T.Min(own, Hold(d, _breaks[d] && !isPeak));
            }
            else
            {
                sum = sum + own;
            }
        }

        for (int i = 0; i < _load.Length; i++)
        {
            if (_model.Kinds[i].Shape.Drive < 0)
            {
                sum = sum - SlidingForce(_model.Wheels[i], _model.Kinds[i], _model.FloorOf[i], _load[i]);
            }
        }

        return sum;
    }

    // Zero of the acceleration over speed: bisection, then Newton with slopes
    private T FindTop()
    {
        if (!T.AllLess(0.0, Acceleration(1e-3)))
        {
            return 0.0;
        }

        T high = 0.1;
        int doublings = 0;
        while (T.AllLess(0.0, Acceleration(high)) && doublings++ < 14)
        {
            high = high + high;
        }

        T low = 0.0;
        for (int n = 0; n < 40; n++)
        {
            T middle = 0.5 * (low + high);
            T a = Acceleration(middle);
            (low, high) = T.AllLess(0.0, a) ? (middle, high) : (low, middle);
        }

        T v = low;
        for (int n = 0; n < 3; n++)
        {
            T step = 1e-5 * v;
            T a = Acceleration(v);
            v = v - (a * step / (Acceleration(v + step) - a));
        }

        return v;
    }

    // Marches panel by panel until the wanted time or distance lies in one, then finds its part of the panel.
    private T Find(double target, bool isTime)
    {
        T sum = 0.0;
        T other = 0.0;
        for (int n = 0; n < MostPanels; n++)
        {
            Integrate(n * Panel, Panel, out T t, out T x);
            T next = sum + (isTime ? t : x);
            if (T.AllLess(target, next))
            {
                T part = Panel * (target - sum) / (next - sum);
                for (int k = 0; k < 5; k++)
                {
                    Integrate(n * Panel, part, out T partT, out T partX);
                    T y = (n * Panel) + part;
                    T speed = _top * (1.0 - T.Exp(-y));
                    T rate = _top * T.Exp(-y) / Acceleration(speed) * (isTime ? 1.0 : speed);
                    part = part - ((sum + (isTime ? partT : partX) - target) / rate);
                }

                Integrate(n * Panel, part, out T lastT, out T lastX);
                return other + (isTime ? lastX : lastT);
            }

            sum = next;
            other = other + (isTime ? x : t);
        }

        // the rest at top speed
        return other + (isTime ? (target - sum) * _top : (target - sum) / _top);
    }

    private void Integrate(double from, T width, out T t, out T x)
    {
        t = 0.0;
        x = 0.0;
        for (int k = 0; k < s_points.Length; k++)
        {
            T y = from + (width * (0.5 * (1.0 + s_points[k])));
            T rest = _top * T.Exp(-y);
            T speed = _top - rest;
            T rate = (0.5 * s_weights[k]) * width * rest / Acceleration(speed);
            t = t + rate;
            x = x + (rate * speed);
        }
    }
}
