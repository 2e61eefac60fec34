using System.Runtime.CompilerServices;
using PushSim.Powertrain;
using PushSim.Simulation;
using PushSim.Tyres;

namespace PushSim.Analysis.Limits;

/// <summary>A robot as the run's own equations see it, without its motion: what its drives give at given speeds (battery, controllers and motors are
/// those of the run), and what its wheels carry under a given pull. Written over a number type, so that dual numbers carry the slope by one
/// scaled part.
/// <code>
///   sum N = m g + D - V,   sum x N = x_D D - h F - (z_h - h) H - x_h V,   sum y N = y_D D,   N_i = -k_i (z - x_i theta + y_i phi) >= 0
/// </code>
/// F traction, H and V horizontal and vertical force of what holds it back. Slopes across are left out.</summary>
internal sealed class LimitModel<T>
    where T : struct, IReal<T>
{
    private readonly RobotEquations<T> _equations;
    private readonly double[] _stiffness;
    private readonly double[] _x;
    private readonly double[] _y;
    private readonly T[] _heat;
    private readonly T _loadFactor;
    private readonly Dictionary<int, double[]> _inverses = [];

    /// <param name="scenario">Scenario whose robot is in canonical order.</param>
    /// <param name="condition">Charge, heat, throttle.</param>
    /// <param name="input">Part that is scaled; null: none.</param>
    /// <param name="factor">Its factor [1].</param>
    public LimitModel(ScenarioSettings scenario, LimitCondition condition, LimitInput? input, T factor)
    {
        Scenario = scenario;
        Throttle = condition.Throttle;
        RobotSettings robot = scenario.Robot;
        _equations = ModelBuilder.Build<T>(scenario, new StateLayout(scenario));
        _stiffness = [.. robot.Wheels.Select(w => w.Tyre.VerticalStiffness)];
        _x = [.. robot.Wheels.Select(w => w.X - robot.Chassis.CentreOfMassX)];
        _y = [.. robot.Wheels.Select(w => w.Y - robot.Chassis.CentreOfMassY)];
        IsDriven = [.. robot.Drives.Select(d => d.Motors.Count > 0)];
        IsDrivenWheel = [.. _equations.Kinds.Select(w => w.Shape.Drive >= 0 && IsDriven[w.Shape.Drive])];
        WheelsOf = [.. robot.Drives.Select((_, d) => Enumerable.Range(0, robot.Wheels.Count).Where(i => _equations.Kinds[i].Shape.Drive == d).ToArray())];
        Direction = [.. robot.Drives.Select(_ => 1.0)];
        _loadFactor = input == LimitInput.DrivenLoad ? factor : (T)1.0;
        Scale(robot, input, factor);
        Array.Fill(FloorOf = new T[robot.Wheels.Count], _equations.Body.FloorFriction);
        _heat = new T[Motors.Length + Controllers.Length];
        SetHeat(scenario, condition);
        if (scenario.Robot.Battery is BatterySettings battery)
        {
            SetCharge(condition.Charge ?? battery.InitialCharge);
        }

        for (int k = 0; k < Controllers.Length; k++)
        {
            Command(k, condition.Throttle);
        }
    }

    public ScenarioSettings Scenario { get; }

    /// <summary>Puts its state to the rule of what binds; built once.</summary>
    public BindingReader<T> Binding => field ??= new(Scenario.Robot);

    /// <summary>Throttle, or turn command on the spot [1].</summary>
    public double Throttle { get; }

    public WheelParameters<T>[] Wheels => _equations.Wheels;

    public WheelKind<T>[] Kinds => _equations.Kinds;

    public DriveParameters<T>[] Drives => _equations.Drives;

    public MotorParameters<T>[] Motors => _equations.Motors;

    public MotorShape[] MotorShapes => _equations.MotorShapes;

    public ControllerParameters<T>[] Controllers => _equations.Controllers;

    public ControllerShape[] ControllerShapes => _equations.ControllerShapes;

    public MotorWork<T>[] MotorWork => _equations.MotorWork;

    public ControllerWork<T>[] ControllerWork => _equations.ControllerWork;

    /// <summary>Whether each drive has motors; whether each wheel is on such a drive; the wheels of each drive.</summary>
    public bool[] IsDriven { get; }

    public bool[] IsDrivenWheel { get; }

    public int[][] WheelsOf { get; }

    /// <summary>Speed over the floor per speed of a drive whose wheels roll [m]: ratio and radius of its first wheel.</summary>
    public T Lever(int drive)
    {
        int i = WheelsOf[drive][0];
        return Wheels[i].DriveRatio * Wheels[i].Radius;
    }

    /// <summary>Which way each drive turns, 1 forward, -1 backward: its friction acts against it [1].</summary>
    public double[] Direction { get; }

    /// <summary>Friction scale of the floor under each wheel [1].</summary>
    public T[] FloorOf { get; }

    /// <summary>Wheels held off the floor carry nothing.</summary>
    public int Lifted { get; set; } = -1;

    public T Mass => _equations.Body.Mass;

    /// <summary>Gravity along the robot [N]; negative uphill.</summary>
    public T AlongGravity
    {
        get
        {
            (double sine, double cosine) = Math.SinCos(Scenario.Manoeuvre.InitialHeading);
            return _equations.Body.Mass * ((cosine * _equations.Body.GravityX) + (sine * _equations.Body.GravityY));
        }
    }

    /// <summary>Traction of a robot whose tether hangs slack, least of all since a tether does not push [N]: uphill the tyres hold it up, downhill (below zero) they hold it back.</summary>
    public T LeastTraction => -AlongGravity;

    public T BusVoltage { get; private set; }

    public T BatteryCurrent { get; private set; }

    public T OpenCircuit { get; private set; }

    /// <summary>Residual of the bus voltage at the last torques [V]; far from 0 when the battery cannot deliver what the controllers ask for, and then currents and torques are too high.</summary>
    public T BusResidual { get; private set; }

    /// <summary>Sets one controller's command [1].</summary>
    public void Command(int controller, double duty)
    {
        ControllerWork[controller].Duty = duty;
        ControllerWork[controller].IsZero = duty == 0.0 ? 1.0 : 0.0;
        ControllerWork[controller].IsOpen = duty == 0.0 && Scenario.Robot.Controllers[controller].ZeroCommand != ZeroCommand.Brake ? 1.0 : 0.0;
    }

    /// <summary>Temperature of one winding [degree Celsius]; of one controller.</summary>
    public void SetWinding(int motor, double temperature)
    {
        MotorShapes[motor] = MotorShapes[motor] with { HeatIndex = motor };
        _heat[motor] = temperature;
    }

    public void SetController(int controller, double temperature)
    {
        ControllerShapes[controller] = ControllerShapes[controller] with { HeatIndex = Motors.Length + controller };
        _heat[Motors.Length + controller] = temperature;
    }

    public void SetCharge(double charge)
    {
        Charge = charge;
        _equations.Battery!.Numbers.InitialCharge = charge;
    }

    /// <summary>State of charge [1].</summary>
    public double Charge { get; private set; }

    /// <summary>Battery voltage without load [V].</summary>
    public T RestVoltage => _equations.Battery is null ? 0.0 : _equations.Battery.OpenCircuitVoltage(0.0);

    /// <summary>Torque of each drive after its own friction, which acts against <see cref="Direction"/> [N m].</summary>
    [MethodImpl(Kernel.Part)]
    public void Torques(ReadOnlySpan<T> omega, Span<T> torque)
    {
        for (int d = 0; d < Drives.Length; d++)
        {
            torque[d] = -(Drives[d].Viscous * omega[d]) - (Direction[d] * Drives[d].DryFriction);
        }

        if (_equations.Battery is null)
        {
            return;
        }

        PowertrainEquations.Gather<T>(Motors, MotorShapes, Controllers, ControllerShapes, omega, _heat, MotorWork, ControllerWork);
        OpenCircuit = _equations.Battery.OpenCircuitVoltage(0.0);
        T inner = _equations.Battery.ResistanceFactor(0.0, _equations.Body.AirTemperature) * _equations.Battery.Numbers.Resistance;
        BusVoltage = _equations.Battery.Solve(OpenCircuit, inner, Controllers, ControllerShapes, ControllerWork, out T residual);
        BusResidual = residual;
        PowertrainEquations.Settle<T>(Motors, Controllers, ControllerShapes, BusVoltage, MotorWork, ControllerWork);
        T power = 0.0;
        for (int k = 0; k < Controllers.Length; k++)
        {
            power = power + ControllerWork[k].BusPower;
        }

        BatteryCurrent = power / BusVoltage;
        for (int m = 0; m < Motors.Length; m++)
        {
            int d = MotorShapes[m].Drive;
            T i = MotorWork[m].Current;
            torque[d] = torque[d] + (Motors[m].Constant * i) - (Direction[d] * Motors[m].GearLoss * T.Abs(i));
        }
    }

    /// <summary>Load of each wheel under a traction F and a hold H at a hook [N].</summary>
    /// <returns>False where the robot tips.</returns>
    [MethodImpl(Kernel.Part)]
    public bool Loads(T traction, T hold, LimitHook? hook, Span<T> load)
    {
        T h = _equations.Body.Height;
        T rise = 0.0;
        T moment = (_equations.Body.DownforceX * _equations.Body.Downforce) - (h * traction);
        if (hook is not null)
        {
            rise = hook.Rise * hold;
            moment = moment - ((hook.Height - h) * hold) - ((hook.X - Scenario.Robot.Chassis.CentreOfMassX) * rise);
        }

        T weight = (_equations.Body.Mass * _equations.Body.GravityZ) + _equations.Body.Downforce - rise;
        T across = _equations.Body.DownforceY * _equations.Body.Downforce;
        int stands = (1 << _stiffness.Length) - 1;
        while (true)
        {
            if (Inverse(stands) is not double[] a)
            {
                return false;
            }

            T heave = (a[0] * weight) + (a[1] * moment) + (a[2] * across);
            T pitch = (a[3] * weight) + (a[4] * moment) + (a[5] * across);
            T roll = (a[6] * weight) + (a[7] * moment) + (a[8] * across);
            int worst = -1;
            for (int i = 0; i < load.Length; i++)
            {
                load[i] = (stands & (1 << i)) == 0 ? 0.0 : -(_stiffness[i] * (heave - (_x[i] * pitch) + (_y[i] * roll)));
                if (T.AllLess(load[i], 0.0) && (worst < 0 || T.AllLess(load[i], load[worst])))
                {
                    worst = i;
                }
            }

            if (worst < 0)
            {
                break;
            }

            stands &= ~(1 << worst);
        }

        for (int i = 0; i < load.Length; i++)
        {
            load[i] = i == Lifted ? 0.0 : IsDrivenWheel[i] ? _loadFactor * load[i] : load[i];
        }

        return true;
    }

    // Inverse of the balance of heave, pitch and roll on the wheels that stand; null where they do not carry the robot.
    private double[]? Inverse(int stands)
    {
        if (_inverses.TryGetValue(stands, out double[]? known))
        {
            return known.Length > 0 ? known : null;
        }

        double[] m = new double[9];
        for (int i = 0; i < _stiffness.Length; i++)
        {
            if ((stands & (1 << i)) != 0)
            {
                double[] row = [1.0, _x[i], _y[i]];
                double[] column = [-1.0, _x[i], -_y[i]];
                for (int r = 0; r < 9; r++)
                {
                    m[r] += _stiffness[i] * row[r / 3] * column[r % 3];
                }
            }
        }

        double[] inverse = [
            (m[4] * m[8]) - (m[5] * m[7]), (m[2] * m[7]) - (m[1] * m[8]), (m[1] * m[5]) - (m[2] * m[4]),
            (m[5] * m[6]) - (m[3] * m[8]), (m[0] * m[8]) - (m[2] * m[6]), (m[2] * m[3]) - (m[0] * m[5]),
            (m[3] * m[7]) - (m[4] * m[6]), (m[1] * m[6]) - (m[0] * m[7]), (m[0] * m[4]) - (m[1] * m[3]),
        ];
        double determinant = (m[0] * inverse[0]) + (m[1] * inverse[3]) + (m[2] * inverse[6]);

        // fewer than three wheels, or all in a line, leave a direction without stiffness
        double scale = Math.Abs(m[0] * m[4] * m[8]);
        known = !(Math.Abs(determinant) > 1e-12 * scale) ? [] : [.. inverse.Select(v => v / determinant)];
        _inverses[stands] = known;
        return known.Length > 0 ? known : null;
    }

    private void SetHeat(ScenarioSettings scenario, LimitCondition condition)
    {
        for (int m = 0; m < Motors.Length; m++)
        {
            double? given = condition.WindingTemperatures?[m] ?? condition.WindingTemperature;
            bool hasHeat = MotorShapes[m].HeatIndex >= 0;
            MotorShapes[m] = MotorShapes[m] with { HeatIndex = -1 };
            if (given is not null || hasHeat)
            {
                SetWinding(m, given ?? scenario.Floor.AirTemperature);
            }
        }

        for (int k = 0; k < Controllers.Length; k++)
        {
            ControllerShapes[k] = ControllerShapes[k] with { HeatIndex = -1 };
            if (condition.ControllerTemperatures is { } hot)
            {
                SetController(k, hot[k]);
            }
        }
    }

    private void Scale(RobotSettings robot, LimitInput? input, T factor)
    {
        for (int m = 0; m < Motors.Length; m++)
        {
            ref MotorParameters<T> p = ref Motors[m];
            bool isConstant = input is LimitInput.Ratio or LimitInput.MotorConstant;
            p.Constant = isConstant ? p.Constant * factor : p.Constant;
            p.GearLoss = isConstant ? p.GearLoss * factor : p.GearLoss;
            p.InverseFullTorqueSpeed = input == LimitInput.Ratio ? p.InverseFullTorqueSpeed * factor : p.InverseFullTorqueSpeed;
            p.Resistance = input == LimitInput.WindingResistance ? p.Resistance * factor : p.Resistance;
        }

        for (int d = 0; d < Drives.Length && input == LimitInput.Ratio; d++)
        {
            DriveSettings s = robot.Drives[d];
            Drives[d].Viscous = Drives[d].Viscous * factor * factor;
            Drives[d].DryFriction = s.FrictionTorque + (factor * s.Motors.Sum(m => m.Motor.FrictionTorque * m.Ratio));
            double rotors = s.Motors.Sum(m => m.Ratio * m.Ratio * m.Motor.RotorInertia);
            Drives[d].Inertia = Drives[d].Inertia + (rotors * ((factor * factor) - 1.0));
        }

        for (int i = 0; i < Wheels.Length && input == LimitInput.WheelRadius; i++)
        {
            Wheels[i].Radius = Wheels[i].Radius * factor;
            Wheels[i].InverseRollingSpeed = Wheels[i].InverseRollingSpeed * factor;
        }

        for (int k = 0; k < Controllers.Length && input == LimitInput.CurrentLimit; k++)
        {
            Controllers[k].CurrentLimit = Controllers[k].CurrentLimit * factor;
        }

        if (input == LimitInput.BatteryResistance && _equations.Battery is not null)
        {
            _equations.Battery.Numbers.Resistance = _equations.Battery.Numbers.Resistance * factor;
        }

        _equations.Body.Mass = input == LimitInput.Mass ? _equations.Body.Mass * factor : _equations.Body.Mass;
        _equations.Body.Height = input == LimitInput.CentreOfMassHeight ? _equations.Body.Height * factor : _equations.Body.Height;
        _equations.Body.FloorFriction = input == LimitInput.Friction ? _equations.Body.FloorFriction * factor : _equations.Body.FloorFriction;
    }
}
