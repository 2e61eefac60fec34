namespace PushSim.Powertrain;

/// <summary>A pack's inner resistance from its voltage under two steady loads: R = (V1 - V2)/(I2 - I1). The longer the load is held, the more
/// of the cells' slow resistance is in it: read both after the same time, a second or so. Exact for a straight V(I).</summary>
/// <param name="Resistance">Inner resistance R; not positive if the readings contradict each other, NaN if both currents are one [ohm].</param>
/// <param name="RestVoltage">Voltage without load on that line, V1 + I1 R [V].</param>
public sealed record BatteryFromLoads(double Resistance, double RestVoltage)
{
    /// <summary>The resistance and rest voltage of two readings, current [A] and voltage [V] each.</summary>
    public static BatteryFromLoads Solve(double current1, double voltage1, double current2, double voltage2)
    {
        double r = current1 == current2 ? double.NaN : (voltage1 - voltage2) / (current2 - current1);
        return new BatteryFromLoads(r, voltage1 + (current1 * r));
    }
}
