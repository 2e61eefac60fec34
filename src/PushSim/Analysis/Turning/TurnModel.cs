using MathNet.Numerics.LinearAlgebra;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Turning;

/// <summary>
/// One robot under a constant command on an even floor, as an autonomous system y' = f(y) whose rest points are its steady turns.
/// Battery and windings stay as they are at the start, tyres clean and unworn: what they change is slow against any chatter.
/// Place and heading are left out, since nothing on an even floor hangs on them.
/// </summary>
internal sealed class TurnModel
{
    // The state that is not changed by what a turn does to it; far beyond any run [A s].
    private const double EndlessCapacity = 1e12;

    private readonly RobotEquations<Dual<R1>> _dual;
    private readonly Dual<R1>[] _y;
    private readonly Dual<R1>[] _dy;

    private TurnModel(ScenarioSettings frozen)
    {
        Scenario = frozen;
        System = new RobotSystem(frozen);
        System.EnterSegment(0);
        StateLayout layout = System.Layout;
        double[] typical = [.. System.AbsoluteTolerances(1.0).Select(a => a / RobotSystem.ShareOfTypical)];
        int[] still = [StateLayout.X, StateLayout.Y, StateLayout.Heading, layout.Charge];
        Moving = [.. Enumerable.Range(0, layout.Count).Where(i => double.IsFinite(typical[i]) && !still.Contains(i))];
        Typical = [.. Moving.Select(i => typical[i])];
        _dual = ModelBuilder.Build<Dual<R1>>(frozen, layout, System.Static.Loads);
        for (int k = 0; k < _dual.CommandValue.Length; k++)
        {
            _dual.CommandValue[k] = System.Equations.CommandValue[k].Value;
            _dual.ControllerWork[k].IsZero = System.Equations.ControllerWork[k].IsZero.Value;
            _dual.ControllerWork[k].IsOpen = System.Equations.ControllerWork[k].IsOpen.Value;
        }

        for (int d = 0; d < _dual.IsHeld.Length; d++)
        {
            _dual.IsHeld[d] = System.Equations.IsHeld[d].Value;
        }

        _y = new Dual<R1>[layout.Count];
        _dy = new Dual<R1>[layout.Count];
    }

    /// <summary>The scenario with its slow states frozen and its command constant; its robot is in canonical order.</summary>
    public ScenarioSettings Scenario { get; }

    /// <summary>The engine's system for it.</summary>
    public RobotSystem System { get; }

    /// <summary>Indices of the states that move, bristles among them.</summary>
    public int[] Moving { get; }

    /// <summary>What is typical of each of them [its own unit].</summary>
    public double[] Typical { get; }

    /// <summary>The model of a scenario's last command; null, with the reason in words, where there is no steady turn to look for.</summary>
    public static TurnModel? Create(ScenarioSettings scenario, out string reason)
    {
        reason = WhyNot(scenario);
        if (reason.Length > 0)
        {
            return null;
        }

        try
        {
            return new TurnModel(Freeze(scenario));
        }
        catch (SimulationException e)
        {
            reason = e.Message;
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
        double[] dy = new double[y.Length];
        System.Evaluate(0.0, 0.0, [.. y], dy);
        return [.. Moving.Select(i => dy[i])];
    }

    /// <summary>df/dy over the moving states, exact, by dual numbers, in typical units: entry (i, j) times typical j over typical i [1/s].</summary>
    public Matrix<double> Jacobian(double[] y)
    {
        int n = Moving.Length;
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

    /// <summary>Slope of a wheel's friction coefficient over its slip speed, dmu/d|v| [s/m].</summary>
    public double FrictionSlope(double[] y, int wheel)
    {
        int v = StateLayout.FirstWheel + (StateLayout.WheelStates * wheel) + 2;
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
    public IntegrationReport Integrate<TObserver>(double[] y, double duration, double tolerance, ref TObserver observer)
        where TObserver : IStepObserver
    {
        var integration = new Integration<RobotSystem>(System, AdditiveTableau.ByName(Scenario.Numerics.Method));
        var settings = new IntegrationSettings
        {
            RelativeTolerance = tolerance,
            AbsoluteTolerances = System.AbsoluteTolerances(tolerance),
            MaximumStep = 0.05,
            MaximumEvaluations = (long)Math.Max(1e5, Scenario.Numerics.MaxEvaluationsPerSecond * duration),
        };
        return integration.Run(0.0, duration, y, [], settings, ref observer);
    }

    private void Differentiate(double[] y, int seeded)
    {
        for (int i = 0; i < y.Length; i++)
        {
            _y[i] = new Dual<R1>(y[i], i == seeded ? 1.0 : 0.0);
        }

        _dual.Evaluate(0.0, 0.0, _y, _dy);
    }

    private static string WhyNot(ScenarioSettings s)
    {
        if (s.Floor.SlopeX != 0.0 || s.Floor.SlopeY != 0.0 || s.Floor.Patches.Count > 0)
        {
            return "the floor is not the same all around, so there is no steady turn";
        }

        if (s.Manoeuvre.Driver.HeadingHold > 0.0 || s.Tether is not null || s.Opponent is not null || s.Walls.Count > 0)
        {
            return "something holds the robot back, so there is no steady turn";
        }

        return Command(s.Manoeuvre) is null || s.Robot.Battery is null ? "nothing is commanded" : "";
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
                Battery = battery with { CellVoltage = [(0.0, voltage)], Capacity = EndlessCapacity, InitialCharge = 1.0 },
                Wheels = [.. robot.Wheels.Select(w => w with { Tyre = w.Tyre with { SpecificWear = 0.0, FoulingDistance = 0.0 } })],
                Drives = [.. robot.Drives.Select(d => d with { Motors = [.. d.Motors.Select(m => (Cold(m.Motor, s.Floor.AirTemperature), m.Ratio))] })],
                Controllers = [.. robot.Controllers.Select(c => c with { ThermalResistance = 0.0, SlewLimit = double.PositiveInfinity })],
            },
            Manoeuvre = s.Manoeuvre with { Commands = [new CommandPoint(0.0, command.Throttle, command.Turn)], Driver = new DriverSettings(), InitialSpeed = 0.0 },
        };
    }

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
