using PushSim.Numerics;
using PushSim.Powertrain;

namespace PushSim.Simulation;

/// <summary>The recorded series of one robot. All channels are allocated before the run.</summary>
internal sealed class RobotRecord
{
    private readonly RobotSystem _system;
    private readonly double[] _state;
    private readonly int _first;
    private readonly int _samples;
    private readonly List<(Channel Channel, Func<double> Read)> _channels = [];
    private readonly Func<double>[] _readers;
    private readonly double[][] _values;

    /// <param name="system">The robot, whose equations were evaluated at each sample.</param>
    /// <param name="state">State of the whole scene at the sample.</param>
    /// <param name="first">Where the robot's explicit states begin in it.</param>
    /// <param name="samples">Room for that many samples.</param>
    public RobotRecord(RobotSystem system, double[] state, int first, int samples)
    {
        (_system, _state, _first, _samples) = (system, state, first, samples);
        AddBody();
        AddWheels();
        AddPowertrain();
        _readers = [.. _channels.Select(c => c.Read)];
        _values = [.. _channels.Select(c => c.Channel.Values)];
    }

    public RobotSystem System => _system;

    /// <summary>The channels, cut to the samples taken.</summary>
    public IReadOnlyList<Channel> Channels(int count) =>
        [.. _channels.Select(c => count == _samples ? c.Channel : c.Channel with { Values = c.Channel.Values[..count] })];

    public void Sample(int index)
    {
        for (int i = 0; i < _readers.Length; i++)
        {
            _values[i][index] = _readers[i]();
        }
    }

    private void Add(string key, string label, string unit, Func<double> read) =>
        _channels.Add((new Channel(key, label, unit, new double[_samples]), read));

    private void AddState(string key, string label, string unit, int index) => Add(key, label, unit, () => _state[_first + index]);

    private void AddBody()
    {
        RobotEquations<R1> eq = _system.Equations;
        AddState("x_m", "Position along the floor", "m", StateLayout.X);
        AddState("y_m", "Position across the floor", "m", StateLayout.Y);
        AddState("heading_rad", "Heading", "rad", StateLayout.Heading);
        AddState("speed_m_per_s", "Forward speed", "m/s", StateLayout.U);
        AddState("lateral_speed_m_per_s", "Sideways speed", "m/s", StateLayout.V);
        AddState("yaw_rate_rad_per_s", "Yaw rate", "rad/s", StateLayout.YawRate);
        Add("acceleration_m_per_s2", "Forward acceleration", "m/s²", () => eq.AccelerationX.Value);
        AddState("heave_m", "Heave", "m", StateLayout.Heave);
        AddState("pitch_rad", "Pitch, nose down", "rad", StateLayout.Pitch);
        AddState("roll_rad", "Roll, left side up", "rad", StateLayout.Roll);
        Add("scrub_moment_n_m", "Moment of the sideways tyre forces", "N m", () =>
        {
            double sum = 0.0;
            for (int i = 0; i < eq.Wheels.Length; i++)
            {
                sum += eq.Wheels[i].X.Value * eq.WheelWork[i].Fy.Value;
            }

            return sum;
        });
        if (eq.Tether is not null)
        {
            Add("tether_force_n", "Tether force", "N", () => eq.Tether.Tension.Value);
        }
    }

    private void AddWheels()
    {
        RobotEquations<R1> eq = _system.Equations;
        for (int k = 0; k < eq.Wheels.Length; k++)
        {
            int i = k;
            string name = _system.Scenario.Robot.Wheels[i].Name;
            string key = "wheel_" + Slug.Of(name) + "_";
            Add(key + "load_n", "Load, " + name, "N", () => eq.WheelWork[i].Load.Value);
            Add(key + "longitudinal_force_n", "Drive force, " + name, "N", () => eq.WheelWork[i].Fx.Value);
            Add(key + "lateral_force_n", "Sideways force, " + name, "N", () => eq.WheelWork[i].Fy.Value);
            Add(key + "surface_speed_m_per_s", "Wheel surface speed, " + name, "m/s", () => eq.WheelWork[i].SurfaceSpeed.Value);
            Add(key + "tread_slip_speed_m_per_s", "Slip, " + name, "m/s", () => eq.WheelWork[i].SlipSpeed.Value);
            Add(key + "friction", "Friction now, " + name, "1", () => eq.WheelWork[i].Friction.Value);
            Add(key + "sliding", "Sliding (0 stuck, 1 sliding), " + name, "1", () => eq.WheelWork[i].Alpha.Value);
            if (_system.Layout.Wear[i] >= 0)
            {
                AddState(key + "wear_m3", "Wear, " + name, "m³", _system.Layout.Wear[i]);
                AddState(key + "friction_work_j", "Friction work of the tread, " + name, "J", _system.Layout.FrictionWork[i]);
            }

            if (_system.Layout.Fouling[i] >= 0)
            {
                AddState(key + "fouling", "Fouling, " + name, "1", _system.Layout.Fouling[i]);
            }
        }
    }

    private void AddPowertrain()
    {
        RobotEquations<R1> eq = _system.Equations;
        if (eq.Battery is null)
        {
            return;
        }

        Add("battery_voltage_v", "Battery voltage", "V", () => eq.BusVoltage.Value);
        Add("battery_current_a", "Battery current", "A", () => eq.BatteryCurrent.Value);
        Add("battery_open_circuit_voltage_v", "Battery voltage without load", "V", () => eq.OpenCircuit.Value);
        AddState("charge_used_a_s", "Charge used", "A s", _system.Layout.Charge);
        for (int k = 0; k < eq.Controllers.Length; k++)
        {
            int i = k;
            ControllerSettings controller = _system.Scenario.Robot.Controllers[i];
            string key = "controller_" + Slug.Of(controller.Name) + "_";
            Add("command_" + Slug.Of(controller.Name), "Command, " + controller.Name, "1", () => eq.ControllerWork[i].Duty.Value);
            Add(key + "current_a", "Current, " + controller.Name, "A", () => eq.ControllerWork[i].Current.Value);
            Add(key + "limiting", "Current limit acts, " + controller.Name, "1", () => eq.ControllerWork[i].IsLimiting.Value);
            if (_system.Layout.ControllerHeat[i] >= 0)
            {
                AddState(key + "temperature_degc", "Temperature, " + controller.Name, "°C", _system.Layout.ControllerHeat[i]);
            }
        }

        int m = 0;
        foreach ((int drive, int motor) in _system.Scenario.Robot.Controllers.SelectMany(c => c.Motors))
        {
            int i = m++;
            string drives = _system.Scenario.Robot.Drives[drive].Name;
            string key = $"motor_{Slug.Of(drives)}_{motor + 1}_";
            Add(key + "current_a", $"Motor current, {drives} {motor + 1}", "A", () => eq.MotorWork[i].Current.Value);
            if (_system.Layout.MotorHeat[i] >= 0)
            {
                AddState(key + "winding_temperature_degc", $"Winding temperature, {drives} {motor + 1}", "°C", _system.Layout.MotorHeat[i]);
                AddState(key + "case_temperature_degc", $"Case temperature, {drives} {motor + 1}", "°C", _system.Layout.MotorHeat[i] + 1);
            }
        }
    }
}
