using PushSim.Powertrain;

namespace PushSim.Tests.Oracle;

/// <summary>One controller and the currents of its motors, by the wiring.</summary>
internal sealed class OracleController
{
    private readonly ControllerSettings _settings;
    private readonly OracleDrive[] _drives;
    private readonly OracleMotor[] _motors;
    private double _temperature;
    private double _backEmf;
    private double _resistance;
    private double _drop;

    public OracleController(ControllerSettings settings, OracleDrive[] drives, double air)
    {
        _settings = settings;
        _drives = [.. settings.Motors.Select(m => drives[m.Drive])];
        _motors = [.. settings.Motors.Select(m => drives[m.Drive].Motors[m.Motor])];
        _temperature = air;
        if (settings.Wiring == Wiring.Parallel && _motors.Any(m => m.Settings.BrushDrop != 0.0))
        {
            throw new NotSupportedException("brush drop with parallel wiring");
        }
        if (_motors.Any(m => m.Settings.StandstillTorqueShare != 1.0))
        {
            throw new NotSupportedException("sensorless start");
        }
    }

    public double Command;
    public double Current;
    public double Voltage;
    public bool IsLeft => _settings.Side == CommandSide.Left;
    public double Temperature => _temperature;

    public bool Has(OracleMotor motor) => Array.IndexOf(_motors, motor) >= 0;

    /// <summary>The limit or, if less, the stall current on a full pack without sag.</summary>
    public double LargestCurrent(OracleMotor motor, BatterySettings battery) => Math.Min(
        _settings.CurrentLimit, battery.Cells * battery.CellVoltage[^1].Voltage / (motor.Settings.Resistance + _settings.OnResistance));

    /// <summary>Deadband, then slew limit.</summary>
    public void Follow(double h, double wanted)
    {
        double target = Math.Abs(wanted) < _settings.Deadband ? 0.0 : wanted;
        double most = _settings.SlewLimit * h;
        Command = Math.Abs(target - Command) <= most ? target : Command + (Math.Sign(target - Command) * most);
    }

    /// <summary>One equivalent motor for the wiring: parallel adds conductances, series adds resistances and voltages.</summary>
    public void Prepare()
    {
        if (_settings.Wiring == Wiring.Parallel)
        {
            double conductance = 0.0;
            double sum = 0.0;
            for (int i = 0; i < _motors.Length; i++)
            {
                conductance += 1.0 / _motors[i].Resistance;
                sum += _motors[i].Constant * _drives[i].Speed / _motors[i].Resistance;
            }
            _backEmf = sum / conductance;
            _resistance = 1.0 / conductance;
            _drop = 0.0;
            return;
        }
        _backEmf = 0.0;
        _resistance = 0.0;
        _drop = 0.0;
        for (int i = 0; i < _motors.Length; i++)
        {
            _backEmf += _motors[i].Constant * _drives[i].Speed;
            _resistance += _motors[i].Resistance;
            _drop += _motors[i].Settings.BrushDrop;
        }
    }

    /// <summary>
    /// Voltage between 0 and d V_b, as near to d V_b as |i| within the limit allows; i R_total = V - E - drop sign(i).
    /// Returns the power taken from the bus.
    /// </summary>
    public double BusPower(double bus)
    {
        if (Command == 0.0 && _settings.ZeroCommand != ZeroCommand.Brake)
        {
            Voltage = 0.0;
            Current = 0.0;
            return 0.0;
        }
        double full = Command * bus;
        double total = _resistance + _settings.OnResistance;
        Voltage = full;
        Current = CurrentAt(full, total);
        double limit = _settings.CurrentLimit * FoldBack();
        if (Math.Abs(Current) > limit)
        {
            double wanted = _backEmf + (Math.Sign(Current) * ((limit * total) + _drop));
            Voltage = Math.Clamp(wanted, Math.Min(0.0, full), Math.Max(0.0, full));
            Current = CurrentAt(Voltage, total);
        }
        double power = Voltage * Current;
        return _settings.Regeneration ? power : Math.Max(0.0, power);
    }

    /// <summary>Gives each motor its current and each drive its hold.</summary>
    public void Share()
    {
        bool zero = Command == 0.0;
        for (int i = 0; i < _motors.Length; i++)
        {
            _drives[i].Held = zero && _settings.ZeroCommand == ZeroCommand.Locked;
            double current = Current;
            if (_settings.Wiring == Wiring.Parallel)
            {
                double terminal = _backEmf + (Current * _resistance);
                current = zero && _settings.ZeroCommand == ZeroCommand.Locked
                    ? 0.0 : (terminal - (_motors[i].Constant * _drives[i].Speed)) / _motors[i].Resistance;
            }
            _motors[i].Current = current;
        }
    }

    /// <summary>C T' = i^2 R_on - (T - air)/R_th.</summary>
    public void Heat(double h, double air)
    {
        if (_settings.ThermalResistance > 0.0)
        {
            double loss = Current * Current * _settings.OnResistance;
            _temperature += h * (loss - ((_temperature - air) / _settings.ThermalResistance)) / _settings.HeatCapacity;
        }
    }

    private double CurrentAt(double voltage, double total)
    {
        double left = voltage - _backEmf;
        return Math.Abs(left) <= _drop ? 0.0 : (left - (Math.Sign(left) * _drop)) / total;
    }

    private double FoldBack() => _settings.ThermalResistance <= 0.0
        ? 1.0
        : Math.Clamp((_settings.ShutDownTemperature - _temperature) / (_settings.ShutDownTemperature - _settings.FoldBackTemperature), 0.0, 1.0);
}

/// <summary>The pack: V_b = V_oc(charge) - R_b sum(P_k(V_b)) / V_b, the largest root, by false position between two ends (Illinois).</summary>
internal sealed class OracleBattery(BatterySettings settings)
{
    private double _charge = settings.InitialCharge;

    public double Voltage;
    public double Current;
    public double ChargeUsed => (settings.InitialCharge - _charge) * settings.Capacity;

    public void Solve(OracleController[] controllers)
    {
        double open = OpenVoltage();
        double high = open;
        double above = Residual(controllers, high, open);
        while (above < 0.0)
        {
            high *= 1.1;
            above = Residual(controllers, high, open);
        }
        double low = 0.5 * open;
        double below = Residual(controllers, low, open);
        if (below > 0.0)
        {
            throw new InvalidOperationException("the battery cannot deliver this");
        }
        Voltage = high;
        for (double last = low; Math.Abs(Voltage - last) > 1e-11;)
        {
            last = Voltage;
            Voltage = above > below ? ((low * above) - (high * below)) / (above - below) : low;
            double residual = Residual(controllers, Voltage, open);
            if (residual > 0.0)
            {
                // an end that stays counts half as much the next time
                (high, above, below) = (Voltage, residual, 0.5 * below);
            }
            else
            {
                (low, below, above) = (Voltage, residual, 0.5 * above);
            }
        }
        Residual(controllers, Voltage, open);
        Current = (open - Voltage) / settings.Resistance;
    }

    public void Discharge(double h) => _charge -= h * Current / settings.Capacity;

    private double Residual(OracleController[] controllers, double voltage, double open)
    {
        double power = 0.0;
        foreach (OracleController c in controllers)
        {
            power += c.BusPower(voltage);
        }
        return voltage - open + (settings.Resistance * power / voltage);
    }

    private double OpenVoltage()
    {
        IReadOnlyList<(double Charge, double Voltage)> table = settings.CellVoltage;
        int last = table.Count - 1;
        if (_charge <= table[0].Charge || last == 0)
        {
            return settings.Cells * table[0].Voltage;
        }
        for (int i = 1; i <= last; i++)
        {
            if (_charge <= table[i].Charge)
            {
                double share = (_charge - table[i - 1].Charge) / (table[i].Charge - table[i - 1].Charge);
                return settings.Cells * (table[i - 1].Voltage + (share * (table[i].Voltage - table[i - 1].Voltage)));
            }
        }
        return settings.Cells * table[last].Voltage;
    }
}
