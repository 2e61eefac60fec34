namespace PushSim.Simulation;

/// <summary>What is recorded of the battery; one property a series.</summary>
/// <param name="part">The battery.</param>
public sealed class BatteryTrace(TracePart part)
{
    /// <summary>Voltage under load [V].</summary>
    public Series Voltage { get; } = part.Add("battery_voltage_v", "V", p => p.Robot.BusVoltage.Value);

    /// <summary>Current taken from it [A].</summary>
    public Series Current { get; } = part.Add("battery_current_a", "A", p => p.Robot.BatteryCurrent.Value);

    /// <summary>Voltage that it would have without load [V].</summary>
    public Series OpenCircuitVoltage { get; } = part.Add("battery_open_circuit_voltage_v", "V", p => p.Robot.OpenCircuit.Value);

    /// <summary>Charge taken since the start [A s].</summary>
    public Series ChargeUsed { get; } = part.AddState("charge_used_a_s", "A s", part.Layout.Charge);

    /// <summary>Temperature; null where its heat is not followed [°C].</summary>
    public Series? Temperature { get; } = part.AddIfAny("battery_temperature_degc", "°C", part.Layout.BatteryHeat);
}
