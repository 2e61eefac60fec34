namespace PushSim.Powertrain;

/// <summary>Numbers of a battery but for its curve, and nothing else.</summary>
internal struct BatteryNumbers<T>
    where T : struct, IReal<T>
{
    /// <summary>Inner resistance [ohm], state of charge at the start [1], 1/capacity [1/(A s)], voltage when empty [V].</summary>
    public T Resistance, InitialCharge, InverseCapacity, FirstVoltage;

    /// <summary>R_1 [ohm], 1/tau [1/s], c [1/K], e [1], 1/s_e [1], 1/C [K/J], 1/R_th [W/K].</summary>
    public T SlowResistance, InverseSlowTime, Fall, EmptyResistance, InverseEmptyShare, InverseHeatCapacity, HeatConductance;
}
