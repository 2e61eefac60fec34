namespace PushSim.Powertrain;

/// <summary>A pack of cells in series: open-circuit voltage by charge, inner resistance at once and after a while, by temperature and towards empty, heat.</summary>
public sealed record BatterySettings
{
    /// <summary>Cells in series [1].</summary>
    public required int Cells { get; init; }

    /// <summary>Open-circuit voltage of one cell against state of charge, (share 0..1, V), rising, at most 24 points; one point is a constant.</summary>
    public required IReadOnlyList<(double Charge, double Voltage)> CellVoltage { get; init; }

    /// <summary>Inner resistance of the whole pack with its leads, that of the first second or so, at 25 degrees Celsius [ohm].</summary>
    public required double Resistance { get; init; }

    /// <summary>What a load that lasts adds to it, at 25 degrees Celsius [ohm]; 0 is off.</summary>
    public double SlowResistance { get; init; }

    /// <summary>Time after which 63 % of that has come [s].</summary>
    public double SlowTime { get; init; } = 60.0;

    /// <summary>Share by which both resistances fall with each kelvin [1/K].</summary>
    public double ResistanceFall { get; init; }

    /// <summary>How much more both are when the pack is empty, as a multiple [1]; 0 is off.</summary>
    public double EmptyResistance { get; init; }

    /// <summary>State of charge at which that has fallen to 37 % [1].</summary>
    public double EmptyShare { get; init; } = 0.05;

    /// <summary>Heat capacity [J/K]; 0 leaves the pack at the air's temperature.</summary>
    public double HeatCapacity { get; init; }

    /// <summary>Thermal resistance to air [K/W]; 0: it keeps its heat.</summary>
    public double ThermalResistance { get; init; }

    /// <summary>Capacity [A s].</summary>
    public required double Capacity { get; init; }

    /// <summary>State of charge at the start, 0..1 [1].</summary>
    public double InitialCharge { get; init; } = 1.0;

    /// <summary>Pack voltage under load below which a warning is given [V]; 0 is off.</summary>
    public double CutOffVoltage { get; init; }

    /// <summary>Open-circuit voltage of one cell at the start, between the points of <see cref="CellVoltage"/> on a straight line, beyond them as at the nearest [V].</summary>
    internal double InitialCellVoltage
    {
        get
        {
            int i = 0;
            while (i < CellVoltage.Count - 2 && CellVoltage[i + 1].Charge < InitialCharge)
            {
                i++;
            }

            (double c0, double v0) = CellVoltage[i];
            (double c1, double v1) = CellVoltage[Math.Min(i + 1, CellVoltage.Count - 1)];
            return c1 > c0 ? v0 + (Math.Clamp((InitialCharge - c0) / (c1 - c0), 0.0, 1.0) * (v1 - v0)) : v0;
        }
    }
}
