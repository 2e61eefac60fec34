using PushSim.Binding;

namespace PushSim.Simulation;

/// <summary>What was seen of one robot.</summary>
internal sealed class RobotWatch
{
    private readonly BindingTally _tally = new();
    private SteadyWheel[] _steady = [];
    private double _mean;
    private double _airborneSince, _heading;
    private bool _isDriven;
    private Balance? _balance;
    private RobotSettings _robot = null!;
    private Peak _battery, _voltage, _motor, _wheel;

    /// <summary>Where its explicit states begin.</summary>
    public int First { get; private set; }

    /// <summary>How it lost its stand, if it did.</summary>
    public Upset Upset { get; private set; }

    /// <summary>Whether it tipped or lost the floor.</summary>
    public bool HasTipped => Upset != Upset.None;

    /// <summary>Greatest residual of the bus equation [V].</summary>
    public double BusResidual { get; private set; }

    /// <summary>Greatest turn off its start heading after the first touch [rad].</summary>
    public double Turned { get; private set; }

    /// <summary>Greatest battery current and controller current [A], lowest battery voltage [V].</summary>
    public double PeakBatteryCurrent => _battery.Value;

    public double PeakControllerCurrent { get; private set; }

    public double LowestVoltage => _voltage.Value;

    /// <summary>Its peaks, with their limits.</summary>
    public RobotPeaks AllPeaks
    {
        get
        {
            bool isFed = _robot.Battery is not null && _robot.Controllers.Count > 0;
            return new RobotPeaks
            {
                BatteryCurrent = isFed ? _battery : null,
                BatteryVoltage = isFed ? _voltage with { Limit = _robot.Battery!.CutOffVoltage > 0.0 ? _robot.Battery.CutOffVoltage : null } : null,
                MotorCurrent = isFed ? _motor with { Limit = HasLimit(_motor.Index) ? _motor.Limit : null } : null,
                WheelLoad = _robot.Wheels.Count > 0 ? _wheel : null,
            };
        }
    }

    /// <summary>What bound it since the first touch; <see cref="BindingKind.Nothing"/> if there was none or nothing was commanded.</summary>
    public BindingKind LimitedBy => _tally.Leading();

    /// <summary>The same with all that bound it; null for nothing.</summary>
    public BindingShares? Binding => _tally.Shares();

    public void Start(int first, RobotSystem robot, bool isDriven)
    {
        double[] loads = robot.Static.Loads;
        _robot = robot.Scenario.Robot;
        _balance = robot.Balance;
        _mean = 0.0;
        foreach (double load in loads)
        {
            _mean += load / loads.Length;
        }

        Array.Fill(_steady, new SteadyWheel(_mean));
        (First, _heading, _isDriven, _airborneSince) = (first, robot.Scenario.Manoeuvre.InitialHeading, isDriven, double.NaN);
        (Upset, BusResidual, Turned) = (Upset.None, 0.0, 0.0);
        PeakControllerCurrent = 0.0;
        (_battery, _voltage, _motor, _wheel) = (default, new Peak(double.PositiveInfinity, 0.0), default, default);
        _tally.Clear();
    }

    public void Measure<T>(in LaneStep step, in RobotFeatures<T> f, int lane, bool touched)
        where T : struct, ILanes<T>, IReal<T>
    {
        BusResidual = Math.Max(BusResidual, Lane.Get(f.Residual, lane));
        Peaks(f, lane, step.T1);
        Bind(f, lane, step.T1 - step.T0, touched);
        if (touched)
        {
            double turn = step.Y1(First + StateLayout.Heading) - _heading;
            Turned = Math.Abs(turn) > Math.Abs(Turned) ? turn : Turned;
        }
    }

    /// <summary>Takes the peaks at a moment [s] at which the features were read.</summary>
    public void Peaks<T>(in RobotFeatures<T> f, int lane, double time)
        where T : struct, ILanes<T>, IReal<T>
    {
        PeakControllerCurrent = Math.Max(PeakControllerCurrent, Lane.Get(f.ControllerCurrent, lane));
        Raise(ref _battery, Lane.Get(f.BatteryCurrent, lane), time, 0, null);
        double voltage = Lane.Get(f.Voltage, lane);
        _voltage = voltage < _voltage.Value ? new Peak(voltage, time) : _voltage;
        Raise(ref _motor, Lane.Get(f.MotorCurrent, lane), time, (int)Lane.Get(f.Motor, lane), Lane.Get(f.MotorLimit, lane));
        Raise(ref _wheel, Lane.Get(f.Load, lane), time, (int)Lane.Get(f.Wheel, lane), null);
    }

    private static void Raise(ref Peak peak, double value, double time, int index, double? limit)
    {
        if (value > peak.Value)
        {
            peak = new Peak(value, time, index, limit);
        }
    }

    private void Bind<T>(in RobotFeatures<T> f, int lane, double time, bool counts)
        where T : struct, ILanes<T>, IReal<T>
    {
        if (_steady.Length != f.Loads.Length)
        {
            _steady = new SteadyWheel[f.Loads.Length];
            Array.Fill(_steady, new SteadyWheel(_mean));
        }

        bool isAnyLifted = false;
        for (int i = 0; i < _steady.Length; i++)
        {
            BindingKind kind = _steady[i].Next(Lane.Get(f.Loads[i], lane), Lane.Get(f.Slides[i], lane), (BindingKind)(int)Lane.Get(f.Kinds[i], lane), time);
            isAnyLifted |= kind == BindingKind.Lifted;
            if (counts)
            {
                _tally.Add(kind, Lane.Get(f.Forces[i], lane), time);
            }
        }

        if (counts)
        {
            _tally.AddTime(isAnyLifted, time);
        }
    }

    public bool Stands(in LaneStep step, double carries)
    {
        bool isAirborne = _isDriven && carries <= 0.0;
        _airborneSince = !isAirborne ? double.NaN : double.IsNaN(_airborneSince) ? step.T1 : _airborneSince;
        (double rollState, double pitchState) = (step.Y1(First + StateLayout.Roll), step.Y1(First + StateLayout.Pitch));
        bool isPast = _balance!.IsPast(rollState, pitchState);
        Upset = isPast && Math.Abs(rollState) > Math.Abs(pitchState) ? Upset.SideUp
            : isPast ? (pitchState < 0.0 ? Upset.NoseUp : Upset.TailUp)
            : step.T1 - _airborneSince > MatchWatch.LongestFlight ? Upset.WheelsUp
            : Upset.None;
        return !HasTipped;
    }

    // Whether the controller of a motor, in the order of the controllers, has a limit of current.
    private bool HasLimit(int motor)
    {
        foreach (Powertrain.ControllerSettings controller in _robot.Controllers)
        {
            if (motor < controller.Motors.Count)
            {
                return double.IsFinite(controller.CurrentLimit);
            }

            motor -= controller.Motors.Count;
        }

        return false;
    }
}
