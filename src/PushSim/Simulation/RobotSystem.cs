using System.Runtime.InteropServices;
using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <summary>The scalar form of one robot's equations as a system the integrator can take, with its commands by segment.</summary>
internal sealed partial class RobotSystem : IAdditiveSystem, ISegmented
{
    private readonly ScenarioSettings _scenario;
    private readonly CommandProfile[] _profiles;
    private readonly double _stableStep;

    /// <param name="scenario">Scenario whose robot is in canonical order, in the robot's own floor frame.</param>
    /// <param name="start">Where its centre of mass starts; null for the origin.</param>
    public RobotSystem(ScenarioSettings scenario, StartPose? start = null)
    {
        _scenario = scenario;
        Start = start ?? new StartPose(0.0, 0.0, scenario.Manoeuvre.InitialHeading);
        Layout = new StateLayout(scenario);
        Equations = ModelBuilder.Build<R1>(scenario, Layout);
        Static = StaticState.Solve(scenario, Equations);
        Balance = new Balance(scenario.Robot);
        _profiles = [.. scenario.Robot.Controllers.Select(c => new CommandProfile(scenario.Manoeuvre, c))];
        Breakpoints = FindBreakpoints();
        _stableStep = StableStep.Of(Equations, Static.Loads);
    }

    /// <summary>The scenario as this robot sees it.</summary>
    public ScenarioSettings Scenario => _scenario;

    public StateLayout Layout { get; }

    public StartPose Start { get; }

    /// <summary>Rising times at which commands or the anchor's speed jump or kink [s].</summary>
    public double[] Breakpoints { get; }

    public StaticState Static { get; }

    /// <summary>How far it may tilt.</summary>
    public Balance Balance { get; }

    public RobotEquations<R1> Equations { get; }

    /// <summary>Bound on the step where the robot may come to rest, so that it truly rests [s].</summary>
    public double LongestStep { get; private set; } = double.PositiveInfinity;

    public int ExplicitCount => Layout.ExplicitCount;

    public int ImplicitCount => Layout.Count - Layout.ExplicitCount;

    private double[] FindBreakpoints()
    {
        double end = _scenario.Manoeuvre.EndTime;
        IEnumerable<double> times = _profiles.SelectMany(p => p.Starts).Concat(_scenario.GivenSpeeds.SelectMany(g => g.Points.Select(p => p.Time)));
        if (_scenario.Tether is not null)
        {
            times = times.Concat(_scenario.Tether.AnchorSpeed.Select(p => p.Time));
        }

        return [.. times.Where(t => t > 0.0 && t < end).Distinct().Order()];
    }

    public IReadOnlyList<(int From, int To)> PredictedRanges => [(Layout.Tread(0) - Layout.ExplicitCount, Layout.Bristle(0) - Layout.ExplicitCount)];

    public IReadOnlyList<(int From, int To)> CurveRanges => [(0, Layout.Tread(0) - Layout.ExplicitCount)];

    public double StepBound => Equations.StepBound().Value;

    public void Evaluate(double t, double g, Span<double> y, Span<double> dy) => Evaluate(t, g, y, y[Layout.ExplicitCount..], dy);

    public void Evaluate(double t, double g, Span<double> y, ReadOnlySpan<double> predicted, Span<double> dy) => Equations.Evaluate(
        t, g, MemoryMarshal.Cast<double, R1>(y), MemoryMarshal.Cast<double, R1>(predicted), MemoryMarshal.Cast<double, R1>(dy));

    public void EnterSegment(int index) => EnterAt(index == 0 ? 0.0 : Breakpoints[index - 1]);

    /// <summary>Takes up the commands in force from a time on [s].</summary>
    public void EnterAt(double t)
    {
        RobotCommands<R1> commands = Equations.Commands;
        commands.Segment.Start = t;
        DriveCommand<R1>[] drives = commands.Drives;
        for (int d = 0; d < drives.Length; d++)
        {
            drives[d].IsHeld = _scenario.Robot.Drives[d].Motors.Count > 0 ? 1.0 : 0.0;
        }

        bool mayRest = true;

        for (int k = 0; k < _profiles.Length; k++)
        {
            (double value, double slope, bool isZero) = _profiles[k].At(t);
            ControllerSettings controller = _scenario.Robot.Controllers[k];
            ref ControllerCommand<R1> told = ref commands.Controllers[k];
            (told.Value, told.Slope) = (value, slope);
            told.IsZero = isZero ? 1.0 : 0.0;
            told.IsOpen = isZero && controller.ZeroCommand != ZeroCommand.Brake ? 1.0 : 0.0;
            mayRest &= isZero;
            bool isLocked = isZero && controller.ZeroCommand == ZeroCommand.Locked;
            foreach ((int drive, int _) in controller.Motors)
            {
                drives[drive].IsHeld = isLocked ? drives[drive].IsHeld : 0.0;
            }
        }

        (commands.Segment.AnchorSpeed, commands.Segment.AnchorSlope) = AnchorSpeedAt(t);
        foreach (GivenSpeed given in _scenario.GivenSpeeds)
        {
            drives[given.Drive].GivenRate = given.SlopeAt(t);
        }

        // a stalled pull rests too, and shaken bristles of the plain law lose a tenth of its force; the switch keeps it
        mayRest |= _scenario.Tether is not null && Equations.Kinds.Any(w => w.Shape.Plain);
        LongestStep = mayRest ? _stableStep : double.PositiveInfinity;
    }

    private (double Value, double Slope) AnchorSpeedAt(double t)
    {
        IReadOnlyList<(double Time, double Speed)>? points = _scenario.Tether?.AnchorSpeed;
        if (points is null || points.Count == 0)
        {
            return (0.0, 0.0);
        }

        int i = 0;
        while (i < points.Count && points[i].Time <= t)
        {
            i++;
        }

        if (i == 0 || i == points.Count)
        {
            return (points[Math.Max(0, i - 1)].Speed, 0.0);
        }

        double slope = (points[i].Speed - points[i - 1].Speed) / (points[i].Time - points[i - 1].Time);
        return (points[i - 1].Speed + (slope * (t - points[i - 1].Time)), slope);
    }
}
