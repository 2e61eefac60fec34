namespace PushSim.Simulation;

/// <summary>Follows one run from step end to step end and keeps what its verdict hangs on: touch, ground, line, tip, peaks. A
/// recorded run and a lane use it alike, so that both give the same verdict to the bit, whatever the sample rate.</summary>
internal sealed class MatchWatch
{
    /// <summary>Residual of the bus equation that means no root, not rounding [V].</summary>
    public const double BusFailure = 1e-6;

    // The same in single precision, whose rounding alone leaves some microvolts [V].
    private const double BusFailureSingle = 1e-3;

    /// <summary>A wheel off the floor for longer does not hop any more [s].</summary>
    public const double LongestHop = 0.05;

    /// <summary>All driven wheels off the floor for this long: they do not come down by themselves, as after any fall that a robot survives [s].</summary>
    public const double LongestFlight = 0.5;

    // Robots that push bounce off each other for shorter than this [s].
    private const double LongestBounce = 0.1;

    // Greatest weight of an end slope in the step's cubic, 4/27, and a little more [1].
    private const double SlopeWeight = 0.1482;

    // x of the robots at both ends of a step: y0, slope 0, y1, slope 1
    private readonly double[] _x = new double[8];
    private readonly DenseOutput _dense;
    private readonly EventFinder<Behind> _line;
    private readonly EventFinder<Beyond> _far;
    private readonly RobotWatch[] _robots = [new(), new()];
    private int _count;
    private bool _hasLine, _playsOn;
    private double _lastTouch;
    private double _busFailure;
    private GroundCount _ground;

    public MatchWatch()
    {
        _dense = new DenseOutput(_x, 0, 2, 4, 6, 2, 2, []);
        _line = new EventFinder<Behind>(default, 2);
        _far = new EventFinder<Beyond>(default, 2);
    }

    /// <summary>When a robot was pushed over its line [s]; NaN if none was.</summary>
    public double LineTime { get; private set; }

    /// <summary>End of the first step at whose end the first robot touched something [s]; NaN if it never did.</summary>
    public double TouchTime { get; private set; }

    /// <summary>Place of the contact along the floor at the last touch [m].</summary>
    public double LastPlace { get; private set; }

    /// <summary>Which robot had been pushed over a line then.</summary>
    public int OverLine { get; private set; }

    /// <summary>Whether that line was the other robot's: the pair had swapped ends.</summary>
    public bool IsFarLine { get; private set; }

    /// <summary>Ground that the first robot gained, as <see cref="GroundCount"/> counts it, up to the moment of the line where one was crossed [m].</summary>
    public double GroundGained { get; private set; }

    /// <summary>Ground that it had gained when the line was crossed; NaN if none was [m]. Where matches go on behind the line <see cref="GroundGained"/> counts to their end.</summary>
    public double GroundAtLine { get; private set; }

    /// <summary>Whether a robot tipped or lost the floor.</summary>
    public bool HasTipped => _robots[0].HasTipped || (_count == 2 && _robots[1].HasTipped);

    /// <summary>Which robot's battery could not deliver; -1 for none.</summary>
    public int Starved
    {
        get
        {
            for (int k = 0; k < _count; k++)
            {
                if (_robots[k].BusResidual > _busFailure)
                {
                    return k;
                }
            }

            return -1;
        }
    }

    /// <summary>What was seen of each robot.</summary>
    public ReadOnlySpan<RobotWatch> Robots => _robots.AsSpan(0, _count);

    /// <summary>Begins with a scene at its start.</summary>
    public void Start(SceneSystem scene, ScenarioSettings scenario)
    {
        (LineTime, TouchTime, LastPlace, OverLine, IsFarLine, GroundGained, GroundAtLine) = (double.NaN, double.NaN, 0.0, -1, false, 0.0, double.NaN);
        (_lastTouch, _ground) = (double.NegativeInfinity, default);
        _count = scene.Robots.Count;
        _busFailure = scenario.Numerics.Precision == Precision.Single ? BusFailureSingle : BusFailure;
        (_hasLine, _playsOn) = (_count == 2, scenario.Shove.PlaysOn);
        for (int k = 0; k < _count; k++)
        {
            RobotSystem robot = scene.Robots[k];
            _robots[k].Start(scene.FirstExplicit(k), robot, Driven(robot.Scenario.Robot));
        }

        if (_hasLine)
        {
            (double first, double second) = (scene.Robots[0].Start.X, scene.Robots[1].Start.X);
            _line.Function.Set(first, second, scenario.Shove.Line);
            _far.Function.Set(first, second, scenario.Shove.Line);
        }
    }

    /// <summary>Takes the start of a segment [s]; the features were read there, after the commands have jumped.</summary>
    public void OnSegment<T>(double time, StepFeatures<T> features, int lane)
        where T : struct, ILanes<T>, IReal<T>
    {
        for (int k = 0; k < _count; k++)
        {
            _robots[k].Peaks(features.Robots[k], lane, time);
        }
    }

    /// <summary>Takes one step; the features were read at its end.</summary>
    /// <returns>Whether the run goes on.</returns>
    public StepDecision OnStep<T>(in LaneStep step, StepFeatures<T> features, int lane)
        where T : struct, ILanes<T>, IReal<T>
    {
        double before = _ground.Gained;
        Touch(step, Lane.Get(features.Force, lane), Lane.Get(features.Along, lane), Lane.Get(features.Across, lane));
        GroundGained = _ground.Gained;
        for (int k = 0; k < _count; k++)
        {
            _robots[k].Measure(step, features.Robots[k], lane, !double.IsNaN(TouchTime));
        }

        if (_hasLine && CrossesLine(step))
        {
            // a step may end a centimetre behind the line
            GroundAtLine = before + ((_ground.Gained - before) * (LineTime - step.T0) / (step.T1 - step.T0));
            if (!_playsOn)
            {
                GroundGained = GroundAtLine;
                return StepDecision.Stop;
            }

            _hasLine = false;
        }

        bool stands = true;
        for (int k = 0; k < _count; k++)
        {
            stands &= _robots[k].Stands(step, Lane.Get(features.Robots[k].Carries, lane));
        }

        return stands ? StepDecision.Continue : StepDecision.Stop;
    }

    private static bool Driven(RobotSettings robot)
    {
        foreach (Powertrain.DriveSettings drive in robot.Drives)
        {
            if (drive.Motors.Count > 0 && drive.Wheels.Count > 0)
            {
                return true;
            }
        }

        return false;
    }

    private void Touch(in LaneStep step, double force, double along, double across)
    {
        bool isTouching = force > 0.0;
        if (isTouching)
        {
            TouchTime = double.IsNaN(TouchTime) ? step.T1 : TouchTime;
            (LastPlace, _lastTouch) = (along / force, step.T1);
        }

        if (_count == 2)
        {
            (int first, int second) = (_robots[0].First, _robots[1].First);
            _ground.Next(
                isTouching ? (LastPlace, across / force) : null,
                step.Y1(first + StateLayout.X), step.Y1(first + StateLayout.Y), step.Y1(second + StateLayout.X), step.Y1(second + StateLayout.Y));
        }
    }

    private bool CrossesLine(in LaneStep step)
    {
        double reach = double.NegativeInfinity;
        bool isPushed = step.T1 - _lastTouch <= LongestBounce;
        for (int k = 0; k < 2; k++)
        {
            int x = _robots[k].First + StateLayout.X;
            (_x[k], _x[2 + k], _x[4 + k], _x[6 + k]) = (step.Y0(x), step.Slope0(x), step.Y1(x), step.Slope1(x));
            double bow = SlopeWeight * (step.T1 - step.T0) * (Math.Abs(_x[2 + k]) + Math.Abs(_x[6 + k]));
            reach = Math.Max(reach, _line.Function.Of(k, Math.Min(_x[k], _x[4 + k]) - bow));
            reach = isPushed ? Math.Max(reach, _far.Function.Of(k, Math.Max(_x[k], _x[4 + k]) + bow)) : reach;
        }

        // most steps end far from the line
        if (reach < -1e-9)
        {
            return false;
        }

        _dense.SetInterval(step.T0, step.T1);
        _ = _line.TryFind(_dense, out double back);
        double over = double.NaN;
        _ = isPushed && _far.TryFind(_dense, out over);
        if (double.IsNaN(back) && double.IsNaN(over))
        {
            return false;
        }

        IsFarLine = over < back || double.IsNaN(back);
        LineTime = IsFarLine ? over : back;

        (double first, double second) = (_dense.Evaluate(LineTime, 0), _dense.Evaluate(LineTime, 1));
        bool isFirst = IsFarLine ? _far.Function.Of(0, first) > _far.Function.Of(1, second) : _line.Function.Of(0, first) > _line.Function.Of(1, second);
        OverLine = isFirst ? 0 : 1;
        return true;
    }

    // How far the robot that has been pushed back furthest is behind its line, negative before it [m].
    private struct Behind : IEventFunction
    {
        private double _first, _second, _line;

        public void Set(double first, double second, double line) => (_first, _second, _line) = (first, second, line);

        public readonly double Of(int robot, double x) => (robot == 0 ? _first : _second) - x - _line;

        public readonly double Evaluate(double t, ReadOnlySpan<double> y) => Math.Max(_first - y[0], _second - y[1]) - _line;
    }

    // The same for the line of the other robot, reached by a way forward: a pair that has swapped ends pushes there.
    private struct Beyond : IEventFunction
    {
        private double _first, _second, _line;

        public void Set(double first, double second, double line) => (_first, _second, _line) = (first, second, line);

        public readonly double Of(int robot, double x) => (robot == 0 ? _second : _first) + x - _line;

        public readonly double Evaluate(double t, ReadOnlySpan<double> y) => Math.Max(_second + y[0], _first + y[1]) - _line;
    }
}
