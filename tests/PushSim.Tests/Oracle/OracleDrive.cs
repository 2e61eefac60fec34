using PushSim.Powertrain;

namespace PushSim.Tests.Oracle;

/// <summary>One motor of a drive, with its heat.</summary>
internal sealed class OracleMotor(MotorSettings settings, double ratio, double air)
{
    public MotorSettings Settings { get; } = settings;

    /// <summary>Motor speed / drive speed, G.</summary>
    public double Ratio { get; } = ratio;

    public double Current;
    public double Winding = air;
    public double Case = air;

    /// <summary>Kt G.</summary>
    public double Constant { get; } = settings.TorqueConstant * ratio;

    /// <summary>R = R_ref (1 + a (T - T_ref)), a = a20 / (1 + a20 (T_ref - 20)), a20 = 0.00393; heating off: R_ref.</summary>
    public double Resistance
    {
        get
        {
            if (Settings.WindingToCaseThermalResistance <= 0.0)
            {
                return Settings.Resistance;
            }
            double a = 0.00393 / (1.0 + (0.00393 * (Settings.ReferenceTemperature - 20.0)));
            return Settings.Resistance * (1.0 + (a * (Winding - Settings.ReferenceTemperature)));
        }
    }

    /// <summary>C_w T_w' = i^2 R - (T_w - T_c)/R_wc,  C_c T_c' = (T_w - T_c)/R_wc - (T_c - air)/R_ca.</summary>
    public void Heat(double h, double airTemperature)
    {
        if (Settings.WindingToCaseThermalResistance <= 0.0)
        {
            return;
        }
        double across = (Winding - Case) / Settings.WindingToCaseThermalResistance;
        double loss = Current * Current * Resistance;
        Winding += h * (loss - across) / Settings.WindingHeatCapacity;
        Case += h * (across - ((Case - airTemperature) / Settings.CaseToAirThermalResistance)) / Settings.CaseHeatCapacity;
    }
}

/// <summary>One spin with its motors, wheels and gear friction.</summary>
internal sealed class OracleDrive
{
    private const double ElasticShare = 0.8;
    private readonly DriveSettings _settings;
    private readonly double _dry;
    private readonly double _inertia;
    private double _windUpTime;

    public OracleDrive(DriveSettings settings, OracleWheel[] wheels, double air)
    {
        _settings = settings;
        Motors = [.. settings.Motors.Select(m => new OracleMotor(m.Motor, m.Ratio, air))];
        Wheels = [.. settings.Wheels.Select(w => wheels[w.Wheel])];
        Ratios = [.. settings.Wheels.Select(w => w.Ratio)];

        // I = sum ratio^2 I_wheel + sum G^2 J_rotor (+ what the shafts add)
        _inertia = settings.ExtraInertia;
        for (int i = 0; i < Wheels.Length; i++)
        {
            _inertia += Ratios[i] * Ratios[i] * Wheels[i].SpinInertia;
        }
        _dry = settings.FrictionTorque;
        foreach (OracleMotor m in Motors)
        {
            _inertia += m.Ratio * m.Ratio * m.Settings.RotorInertia;
            _dry += m.Settings.FrictionTorque * m.Ratio;
        }
    }

    /// <summary>
    /// Whether tau_s is limited as the tyre's sigma1 is, tau_s / (1 + tau_s a / 4). The model as written says so of the tyre only;
    /// the engine does it here too, seen from outside. Off: the model as written.
    /// </summary>
    public bool LimitedDamping { get; set; }

    public double Inertia => _inertia;
    public OracleMotor[] Motors { get; }
    public OracleWheel[] Wheels { get; }
    public double[] Ratios { get; }
    public double Speed;
    public double WindUp;
    public double Friction;
    public bool Held;

    /// <summary>
    /// tau_s = 2 zeta sqrt(I s_max / T_max). The model as written leaves T_max open; here the largest that the bracket of T_f can
    /// become, with each motor at its controller's limit or, if less, its stall current.
    /// </summary>
    public void SetDamping(Func<OracleMotor, double> largestCurrent)
    {
        double largest = _dry + _settings.HoldTorque;
        foreach (OracleMotor m in Motors)
        {
            largest += (1.0 - _settings.GearEfficiency) * m.Constant * largestCurrent(m);
        }
        _windUpTime = largest > 0.0 ? 2.0 * _settings.FrictionDamping * Math.Sqrt(_inertia * _settings.FrictionWindUp / largest) : 0.0;
    }

    /// <summary>Largest friction torque without current.</summary>
    public double HoldLimit(bool locked) => _dry + (locked ? _settings.HoldTorque : 0.0);

    /// <summary>Wind-up that holds the wheels' forces at rest without current, at most s_max.</summary>
    public void Lean()
    {
        double torque = 0.0;
        for (int i = 0; i < Wheels.Length; i++)
        {
            torque -= Ratios[i] * Wheels[i].Radius * Wheels[i].ForceX;
        }
        double limit = _dry + _settings.HoldTorque;
        WindUp = limit > 0.0 ? _settings.FrictionWindUp * Math.Clamp(torque / limit, -1.0, 1.0) : 0.0;
    }

    /// <summary>
    /// I omega' = sum(Kt G i - visc G^2 omega) - T_f - sum ratio (R F_x + crr N R tanh(omega_i / omega_s))
    /// T_f = (sum(tau0 G + (1 - eta)|Kt G i|) + T_hold)(s + tau_s s') / s_max,  s' = omega - alpha (|omega| / s_max) s.
    /// </summary>
    public void Step(double h, double rollingSpeed)
    {
        double torque = 0.0;
        double limit = _dry + (Held ? _settings.HoldTorque : 0.0);
        foreach (OracleMotor m in Motors)
        {
            double drive = m.Constant * m.Current;
            torque += drive - (m.Settings.ViscousFriction * m.Ratio * m.Ratio * Speed);
            limit += (1.0 - _settings.GearEfficiency) * Math.Abs(drive);
        }
        double trial = WindUp + (h * Speed);
        double along = Math.Max(0.0, Speed * Math.Sign(trial));
        double length = OracleSwitch.Length(Math.Abs(trial), h, along / _settings.FrictionWindUp, 0.0, _settings.FrictionWindUp, ElasticShare, false);
        double next = Math.Sign(trial) * length;
        double windUpTime = _windUpTime;
        if (LimitedDamping)
        {
            double decay = OracleSwitch.Alpha(length, _settings.FrictionWindUp, ElasticShare, false) * along / _settings.FrictionWindUp;
            windUpTime /= 1.0 + (0.25 * windUpTime * decay);
        }
        Friction = limit * (next + (windUpTime * (next - WindUp) / h)) / _settings.FrictionWindUp;
        WindUp = next;
        for (int i = 0; i < Wheels.Length; i++)
        {
            OracleWheel w = Wheels[i];
            torque -= Ratios[i] * ((w.Radius * w.ForceX) + (w.RollingTorque * Math.Tanh(Ratios[i] * Speed / rollingSpeed)));
        }
        Speed += h * (torque - Friction) / _inertia;
    }
}
