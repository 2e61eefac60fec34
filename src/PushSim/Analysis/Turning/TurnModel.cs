using MathNet.Numerics.LinearAlgebra;
using PushSim.Powertrain;
using PushSim.Runs;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Turning;

/// <summary>One robot under a constant command on an even floor, as an autonomous system y' = f(y) whose rest points are its steady turns.
/// Battery and windings stay as they are at the start, tyres clean and unworn: what they change is slow against any chatter.
/// Place and heading are left out, since nothing on an even floor hangs on them.</summary>
internal sealed class TurnModel
{
    // The state that is not changed by what a turn does to it; far beyond any run [A s].
    private const double EndlessCapacity = 1e12;

    // Where the law stops following N/(f N0) [1].
    private const double MostLoadRatio = 20.0;

    private readonly RobotEquations<Dual<R1>> _dual;
    private readonly Dual<R1>[] _y;
    private readonly Dual<R1>[] _dy;

    private TurnModel(ScenarioSettings frozen, WorkBudget work)
    {
        Scenario = frozen;
        Work = work;
        System = new RobotSystem(frozen);
        System.EnterSegment(0);
        StateLayout layout = System.Layout;
        double[] typical = System.Typical();
        int[] still = [StateLayout.X, StateLayout.Y, StateLayout.Heading, layout.Charge, layout.SlowVoltage, layout.BatteryHeat, .. Enumerable.Range(layout.FloorBristle, Contact.ContactFriction.Bristles)];
        Moving = [.. Enumerable.Range(0, layout.Count).Where(i => double.IsFinite(typical[i]) && !still.Contains(i))];
        Typical = [.. Moving.Select(i => typical[i])];
        _dual = ModelBuilder.Build<Dual<R1>>(frozen, layout);
        new NumberCopy<Dual<R1>>().Carry(_dual.Commands, System.Equations.Commands);
        _y = new Dual<R1>[layout.Count];
        _dy = new Dual<R1>[layout.Count];
    }

    /// <summary>The scenario with its slow states frozen and its command constant; its robot is in canonical order.</summary>
    public ScenarioSettings Scenario { get; }

    /// <summary>What its evaluations are booked to.</summary>
    public WorkBudget Work { get; }

    /// <summary>The engine's system for it.</summary>
    public RobotSystem System { get; }

    /// <summary>Indices of the states that move, bristles among them.</summary>
    public int[] Moving { get; }

    /// <summary>What is typical of each of them [its own unit].</summary>
    public double[] Typical { get; }

    /// <summary>The model of a scenario's last command; null, with the cause, where there is no steady turn to look for.</summary>
    /// <param name="scenario">The turn.</param>
    /// <param name="cause">Why there is none.</param>
    /// <param name="work">What its evaluations are booked to; null: nothing.</param>
    public static TurnModel? Create(ScenarioSettings scenario, out NoModesCause cause, WorkBudget? work = null)
    {
        cause = WhyNot(scenario);
        if (cause != NoModesCause.None)
        {
            return null;
        }

        try
        {
            return new TurnModel(Freeze(scenario), work ?? WorkBudget.Endless());
        }
        catch (SimulationException)
        {
            cause = NoModesCause.NoStand;
            return null;
        }
    }

    /// <summary>The scenario with a robot changed.</summary>
    public static ScenarioSettings With(ScenarioSettings scenario, Func<TyreSettings, TyreSettings> tyre) => scenario with
    {
        Robot = scenario.Robot with { Wheels = [.. scenario.Robot.Wheels.Select(w => w with { Tyre = tyre(w.Tyre) })] },
    };

    /// <summary>Derivatives of the moving states.</summary>
    public double[] Rates(double[] y)
    {
        Work.Add(1);
        double[] dy = new double[y.Length];
        System.Evaluate(0.0, 0.0, [.. y], dy);
        return [.. Moving.Select(i => dy[i])];
    }

    /// <summary>df/dy over the moving states, exact, by dual numbers, in typical units: entry (i, j) times typical j over typical i [1/s].</summary>
    public Matrix<double> Jacobian(double[] y)
    {
        int n = Moving.Length;
        Work.Add(n);
        Matrix<double> a = Matrix<double>.Build.Dense(n, n);
        for (int j = 0; j < n; j++)
        {
            Differentiate(y, Moving[j]);
            for (int i = 0; i < n; i++)
            {
                a[i, j] = _dy[Moving[i]].Slope.Value * Typical[j] / Typical[i];
            }
        }

        return a;
    }

    /// <summary>The same around a steady turn of a robot that differs from this one in what feeds its swings, not in the turn itself.</summary>
    /// <param name="y">The steady turn.</param>
    /// <param name="isFlat">Whether friction keeps its value here at every slip speed.</param>
    /// <param name="isLoadSteady">Whether treads are held as if each wheel kept its load here, and friction its value at that load.</param>
    public Matrix<double> Jacobian(double[] y, bool isFlat, bool isLoadSteady)
    {
        double[] friction = Frictions(y);
        WheelParameters<Dual<R1>>[] own = [.. _dual.Wheels];
        WheelKind<Dual<R1>>[] kinds = [.. _dual.Kinds];
        for (int i = 0; isFlat && i < own.Length; i++)
        {
            _dual.Kinds[i] = kinds[i].Flat(ref _dual.Wheels[i], 1.0);
        }

        double[] unit = Frictions(y);
        for (int i = 0; isFlat && i < own.Length; i++)
        {
            _dual.Kinds[i] = kinds[i].Flat(ref _dual.Wheels[i], friction[i] / unit[i]);
        }

        for (int i = 0; isLoadSteady && i < own.Length; i++)
        {
            HoldLoadFactor(y, i);
        }

        Matrix<double> a = Jacobian(y);
        if (isLoadSteady)
        {
            TakeLoadSwings(a, y);
        }

        own.CopyTo(_dual.Wheels, 0);
        kinds.CopyTo(_dual.Kinds, 0);
        return a;
    }

    /// <summary>Slope of a wheel's friction coefficient over its slip speed, dmu/d|v| [s/m].</summary>
    public double FrictionSlope(double[] y, int wheel)
    {
        int v = System.Layout.Tread(wheel);
        double speed = double.Hypot(y[v], y[v + 1]);
        if (speed <= 0.0)
        {
            return 0.0;
        }

        // along the slip: (v_x d/dv_x + v_y d/dv_y) / |v|
        Differentiate(y, v);
        double slope = _dual.WheelWork[wheel].Friction.Slope.Value * y[v] / speed;
        Differentiate(y, v + 1);
        return slope + (_dual.WheelWork[wheel].Friction.Slope.Value * y[v + 1] / speed);
    }

    /// <summary>Integrates from a state; the observer sees every step; y becomes the last state.</summary>
    public IntegrationReport Integrate(double[] y, double duration, double tolerance, IStepObserver observer)
    {
        var integration = new SingleRun<RobotSystem>(System, AdditiveTableau.ByName(Scenario.Numerics.Method));
        var settings = new IntegrationSettings
        {
            RelativeTolerance = tolerance,
            AbsoluteTolerances = System.AbsoluteTolerances(tolerance),
            MaximumStep = 0.05,
            MaximumEvaluations = (long)Math.Max(1e5, Scenario.Numerics.MaxEvaluationsPerSecond * duration),
        };
        IntegrationReport report = integration.Run(0.0, duration, y, [], settings with { MaximumEvaluations = Math.Min(Work.Left, settings.MaximumEvaluations) }, observer);
        Work.Spend(report, settings.MaximumEvaluations);
        return report;
    }

    private double[] Frictions(double[] y)
    {
        Differentiate(y, -1);
        return [.. _dual.WheelWork.Select(w => w.Friction.Value.Value)];
    }

    // The law clamps N/(f N0) at 20: far beyond it the factor is a constant, here the one of this load.
    private void HoldLoadFactor(double[] y, int wheel)
    {
        ref WheelParameters<Dual<R1>> p = ref _dual.Wheels[wheel];
        if (_dual.Kinds[wheel].Shape.HasLoadExponent)
        {
            double with = Frictions(y)[wheel];
            p.LoadExponent = 0.0;
            (p.LoadExponent, p.InverseReferenceLoad) = (-Math.Log(with / Frictions(y)[wheel]) / Math.Log(MostLoadRatio), 1e12);
        }
    }

    // In m_t v' = T - F the tread's hold T is as the load N; in a steady turn T = F, so dv'/dy = F/(N m_t) dN/dy is what swings of the load do.
    private void TakeLoadSwings(Matrix<double> a, double[] y)
    {
        for (int j = 0; j < Moving.Length; j++)
        {
            Differentiate(y, Moving[j]);
            for (int i = 0; i < Moving.Length; i++)
            {
                int place = Moving[i] - System.Layout.Tread(0);
                int wheel = place / 2;
                if (place < 0 || wheel >= _dual.Wheels.Length || _dual.WheelWork[wheel].Load.Value.Value <= 0.0)
                {
                    continue;
                }

                ref readonly WheelWork<Dual<R1>> w = ref _dual.WheelWork[wheel];
                double force = place % 2 == 0 ? w.Fx.Value.Value : w.Fy.Value.Value / _dual.Wheels[wheel].LateralRatio.Value.Value;
                a[i, j] -= force / w.Load.Value.Value * w.Load.Slope.Value * _dual.Wheels[wheel].InverseTreadMass.Value.Value * Typical[j] / Typical[i];
            }
        }
    }

    private void Differentiate(double[] y, int seeded)
    {
        for (int i = 0; i < y.Length; i++)
        {
            _y[i] = new Dual<R1>(y[i], i == seeded ? 1.0 : 0.0);
        }

        _dual.Evaluate(0.0, _y, _dy);
    }

    private static NoModesCause WhyNot(ScenarioSettings s)
    {
        if (s.Floor.SlopeX != 0.0 || s.Floor.SlopeY != 0.0 || s.Floor.Patches.Count > 0)
        {
            return NoModesCause.UnevenFloor;
        }

        if (s.Manoeuvre.Driver.HeadingHold > 0.0 || s.Tether is not null || s.Opponent is not null || s.Walls.Count > 0)
        {
            return NoModesCause.HeldBack;
        }

        return Command(s.Manoeuvre) is null || s.Robot.Battery is null ? NoModesCause.NoCommand : NoModesCause.None;
    }

    private static CommandPoint? Command(ManoeuvreSettings m) => m.Commands.LastOrDefault(c => c.Throttle != 0.0 || c.Turn != 0.0);

    private static ScenarioSettings Freeze(ScenarioSettings s)
    {
        RobotSettings robot = ModelBuilder.InCanonicalOrder(s.Robot);
        BatterySettings battery = robot.Battery!;
        double voltage = battery.InitialCellVoltage;
        CommandPoint command = Command(s.Manoeuvre)!;
        return s with
        {
            Robot = robot with
            {
                Battery = Still(battery, s.Floor.AirTemperature) with { CellVoltage = [(0.0, voltage)], Capacity = EndlessCapacity, InitialCharge = 1.0 },
                Wheels = [.. robot.Wheels.Select(w => w with { Tyre = w.Tyre with { SpecificWear = 0.0, FoulingDistance = 0.0 } })],
                Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (Cold(m.Motor, s.Floor.AirTemperature), m.Ratio))] })],
                Controllers = [.. robot.Controllers.Select(c => c with { ThermalResistance = 0.0, SlewLimit = double.PositiveInfinity })],
            },
            Manoeuvre = s.Manoeuvre with { Commands = [new CommandPoint(0.0, command.Throttle, command.Turn)], Driver = new DriverSettings(), InitialSpeed = 0.0 },
        };
    }

    // as it starts, with the resistance of that moment
    private static BatterySettings Still(BatterySettings b, double air) => b with
    {
        Resistance = b.Resistance * new BatteryEquations<R1>(b).ResistanceFactor(0.0, air).Value, SlowResistance = 0.0, ResistanceFall = 0.0, EmptyResistance = 0.0, HeatCapacity = 0.0,
    };

    // heating off; the resistance is the one at the air's temperature
    private static MotorSettings Cold(MotorSettings m, double air)
    {
        if (m.WindingToCaseThermalResistance <= 0.0)
        {
            return m;
        }

        double rise = PowertrainEquations.CopperRise / (1.0 + (PowertrainEquations.CopperRise * (m.ReferenceTemperature - 20.0)));
        return m with { WindingToCaseThermalResistance = 0.0, Resistance = m.Resistance * (1.0 + (rise * (air - m.ReferenceTemperature))) };
    }
}
