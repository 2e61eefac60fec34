using System.Runtime.InteropServices;
using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <summary>The scalar form of one robot's equations as a system the integrator can take, with its commands by segment.</summary>
internal sealed class RobotSystem : IAdditiveSystem, ISegmented
{
    // 1 left the energy balance of a robot that only rocks on its tyres open by 2e-3; 0.1 costs a tenth more work [1].
    public const double ShareOfTypical = 0.1;

    // How much wider the error of deflections, treads and bristles is judged [1], and what is typical of the deflections of tyres that hardly give [m]. Their errors
    // die out within a step; what they do to the robot counts in its speeds. A printed tyre's bristle else asks for steps of nanoseconds wherever it touches down.
    private const double StiffShare = 10.0;
    private const double LeastDeflection = 1e-4;

    // Share of its grip or hold that a robot set down on a slope may take up at once [1].
    private const double LeaningShare = 0.99;

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
        Static = StaticState.Solve(scenario);
        Balance = new Balance(scenario.Robot);
        Equations = ModelBuilder.Build<R1>(scenario, Layout);
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

    /// <summary>State at the start: standing on its wheels, or rolling at the given speed.</summary>
    public double[] InitialState()
    {
        double[] y = new double[Layout.Count];
        ManoeuvreSettings m = _scenario.Manoeuvre;
        RobotSettings robot = _scenario.Robot;
        y[StateLayout.X] = Start.X;
        y[StateLayout.Y] = Start.Y;
        y[StateLayout.Heading] = m.InitialHeading;
        y[StateLayout.Heave] = Static.Heave;
        y[StateLayout.Pitch] = Static.Pitch;
        y[StateLayout.Roll] = Static.Roll;
        y[StateLayout.U] = m.InitialSpeed;
        for (int i = 0; i < robot.Wheels.Count; i++)
        {
            // a moving start: tread with the rim; a driven wheel rolls (w = 0), a skid is dragged (w = u)
            y[Layout.Tread(i)] = Equations.Kinds[i].Shape.Drive >= 0 ? 0.0 : m.InitialSpeed;
        }

        for (int d = 0; d < robot.Drives.Count; d++)
        {
            (int wheel, double ratio) = robot.Drives[d].Wheels[0];
            y[Layout.FirstDrive + d] = m.InitialSpeed / (ratio * robot.Wheels[wheel].Radius);
        }

        foreach (GivenSpeed given in _scenario.GivenSpeeds)
        {
            y[Layout.FirstDrive + given.Drive] = given.At(0.0);
        }

        if (m.InitialSpeed == 0.0)
        {
            LeanOnTheSlope(y);
        }

        for (int i = 0; i < robot.Wheels.Count; i++)
        {
            if (Layout.Fouling[i] >= 0)
            {
                y[Layout.Fouling[i]] = robot.Wheels[i].InitialFouling;
            }
        }

        double air = _scenario.Floor.AirTemperature;
        foreach (int i in Layout.MotorHeat.Where(i => i >= 0))
        {
            y[i] = air;
            y[i + 1] = air;
        }

        foreach (int i in Layout.ControllerHeat.Append(Layout.BatteryHeat).Where(i => i >= 0))
        {
            y[i] = air;
        }

        if (Layout.Anchor >= 0)
        {
            y[Layout.Anchor] = _scenario.Tether!.AnchorX;
        }

        return y;
    }

    // A robot set down gently: wheels whose drives are held at the start carry its weight along the slope, each by its load,
    // tyre body, bristle and gear already leaning. Where that would be more than they hold it starts unloaded, and slides.
    private void LeanOnTheSlope(double[] y)
    {
        (double gx, double gy, double _) = ModelBuilder.Gravity(_scenario.Floor);
        (double sine, double cosine) = Math.SinCos(_scenario.Manoeuvre.InitialHeading);
        double mass = _scenario.Robot.Chassis.Mass;
        double along = -mass * ((cosine * gx) + (sine * gy));
        double across = -mass * ((cosine * gy) - (sine * gx));
        EnterSegment(0);
        bool[] holds = [.. Equations.Kinds.Select(w => w.Shape.Drive < 0 || Equations.Commands.Drives[w.Shape.Drive].IsHeld.Value > 0.5)];
        double all = Static.Loads.Sum();
        double held = Static.Loads.Where((_, i) => holds[i]).Sum();
        double[] torque = new double[Equations.Drives.Length];
        double[] leaning = (double[])y.Clone();
        for (int i = 0; i < holds.Length; i++)
        {
            ref readonly Tyres.WheelParameters<R1> p = ref Equations.Wheels[i];
            double load = Static.Loads[i];
            double fx = holds[i] && held > 0.0 ? along * load / held : 0.0;
            double fy = across * load / all;
            double grip = load * _scenario.Floor.FrictionScale * (p.KineticFriction.Value + p.FrictionDrop.Value);
            if (double.Hypot(fx, fy / p.LateralRatio.Value) > LeaningShare * grip)
            {
                return;
            }

            if (load > 0.0)
            {
                leaning[Layout.Deflection(i)] = fx / p.BodyStiffness.Value;
                leaning[Layout.Deflection(i) + 1] = fy / p.LateralRatio.Value / p.BodyStiffness.Value;
                leaning[Layout.Bristle(i)] = -fx / (load * p.Sigma0.Value);
                leaning[Layout.Bristle(i) + 1] = -fy / p.LateralRatio.Value / (load * p.Sigma0.Value);
            }

            int drive = Equations.Kinds[i].Shape.Drive;
            if (drive >= 0)
            {
                torque[drive] -= p.DriveRatio.Value * p.Radius.Value * fx;
            }
        }

        for (int d = 0; d < torque.Length; d++)
        {
            ref readonly DriveParameters<R1> p = ref Equations.Drives[d];
            double capacity = p.DryFriction.Value + p.HoldTorque.Value;
            if (Math.Abs(torque[d]) > LeaningShare * capacity)
            {
                return;
            }

            if (Equations.DriveShapes[d].BristleIndex >= 0 && torque[d] != 0.0)
            {
                leaning[Layout.DriveBristle[d]] = torque[d] / capacity * p.WindUp.Value;
            }
        }

        leaning.CopyTo(y, 0);
    }

    /// <summary>Absolute tolerance of each component at a relative tolerance: a share of what is typical of that quantity, in its own
    /// unit; more of it for the stiff states of tyres, whose errors die out. Quadratures are out of the norm.</summary>
    public double[] AbsoluteTolerances(double relative)
    {
        double[] a = Typical();
        for (int i = 0; i < a.Length; i++)
        {
            bool isLength = i >= Layout.Deflection(0) && i < Layout.AfterTyres && (i < Layout.Tread(0) || i >= Layout.Bristle(0));
            bool isTread = i >= Layout.Tread(0) && i < Layout.Bristle(0);
            double typical = isLength ? StiffShare * Math.Max(LeastDeflection, a[i]) : isTread ? StiffShare * a[i] : a[i];
            a[i] = relative * ShareOfTypical * typical;
        }

        return a;
    }

    /// <summary>What is typical of each component, in its own unit; infinite for quadratures.</summary>
    public double[] Typical()
    {
        double[] a = new double[Layout.Count];
        Array.Fill(a, double.PositiveInfinity);
        Set(a, StateLayout.X, 2, 0.3);
        Set(a, StateLayout.Heading, 1, 1.0);
        Set(a, StateLayout.U, 2, 0.3);
        Set(a, StateLayout.YawRate, 1, 2.0);
        Set(a, StateLayout.Heave, 1, 1e-3);
        Set(a, StateLayout.Pitch, 2, 1e-2);
        Set(a, StateLayout.HeaveRate, 1, 0.1);
        Set(a, StateLayout.PitchRate, 2, 1.0);
        for (int i = 0; i < Equations.Wheels.Length; i++)
        {
            TyreScales(i, out double deflection, out double bristle);
            Set(a, Layout.Deflection(i), 2, deflection);
            Set(a, Layout.Tread(i), 2, 0.3);
            Set(a, Layout.Bristle(i), 2, bristle);
            if (Layout.Spin[i] is >= 0 and int turning)
            {
                Set(a, Layout.Deflection(0) + turning, 1, deflection);
                Set(a, Layout.Tread(0) + turning, 1, 0.3);
                Set(a, Layout.Bristle(0) + turning, 1, bristle);
            }

            if (Equations.Kinds[i].Shape.Drive >= 0)
            {
                double spin = 0.3 / (Equations.Wheels[i].Radius.Value * Math.Abs(Equations.Wheels[i].DriveRatio.Value));
                Set(a, Layout.FirstDrive + Equations.Kinds[i].Shape.Drive, 1, spin);
            }

            Set(a, Layout.Fouling[i], 1, 1.0);
        }

        for (int d = 0; d < Layout.DriveBristle.Count; d++)
        {
            Set(a, Layout.DriveBristle[d], 1, Equations.Drives[d].WindUp.Value);
        }

        Set(a, Layout.FloorBristle, Contact.ContactFriction.Bristles, _scenario.Robot.OutlineOrBox.Underside.FrictionDeflection);
        Set(a, Layout.Charge, 1, 100.0);
        Set(a, Layout.SlowVoltage, 1, 0.1);
        Set(a, Layout.BatteryHeat, 1, 20.0);
        Set(a, Layout.Anchor, 1, 0.3);
        Set(a, Layout.HeadingHold, 1, 0.1);
        Set(a, Layout.Steering, DriverEquations<R1>.SteeringStates, 0.1);
        Set(a, Layout.Easing, DriverEquations<R1>.EasingStates, 0.1);
        foreach (int i in Layout.MotorHeat)
        {
            Set(a, i, 2, 20.0);
        }

        foreach (int i in Layout.ControllerHeat)
        {
            Set(a, i, 1, 20.0);
        }

        return a;

        void Set(double[] target, int first, int count, double typical)
        {
            for (int i = first; first >= 0 && i < first + count; i++)
            {
                target[i] = typical;
            }
        }
    }

    private void TyreScales(int i, out double deflection, out double bristle)
    {
        double friction = _scenario.Robot.Wheels[i].Tyre.StaticFriction;
        deflection = friction * Math.Max(Static.Loads[i], 0.1) / Equations.Wheels[i].BodyStiffness.Value;
        bristle = friction / Equations.Wheels[i].Sigma0.Value;
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
