namespace PushSim.Powertrain;

/// <summary>Open-circuit voltages of single lithium cells against state of charge, as tables for <see cref="BatterySettings.CellVoltage"/>.</summary>
public static class CellCurves
{
    // Closer where the exponential bends, so that a straight line between two points is within 3 mV of the formula.
    private static readonly double[] s_charges =
    [
        0.0, 0.0035, 0.0072, 0.011, 0.0152, 0.0197, 0.0245, 0.0298, 0.0357, 0.0422, 0.0497, 0.0585,
        0.069, 0.082, 0.099, 0.122, 0.158, 0.26, 0.42, 0.56, 0.69, 0.80, 0.90, 1.0,
    ];

    /// <summary>A polymer lithium-ion cell of 0.85 Ah by the published fit, 24 points, (share 0..1, V).</summary>
    public static IReadOnlyList<(double Charge, double Voltage)> PolymerCell { get; } =
        [.. s_charges.Select(s => (s, PolymerCellVoltage(s)))];

    /// <summary>The rest voltages hobby builders read a lithium-polymer pack's charge from, in steps of 5 %, (share 0..1, V). A
    /// chart that is handed around without measurement conditions; no standard stands behind it.</summary>
    public static IReadOnlyList<(double Charge, double Voltage)> HobbyChart { get; } =
    [
        (0.00, 3.27), (0.05, 3.61), (0.10, 3.69), (0.15, 3.71), (0.20, 3.73), (0.25, 3.75), (0.30, 3.77),
        (0.35, 3.79), (0.40, 3.80), (0.45, 3.82), (0.50, 3.84), (0.55, 3.85), (0.60, 3.87), (0.65, 3.91),
        (0.70, 3.95), (0.75, 3.98), (0.80, 4.02), (0.85, 4.08), (0.90, 4.11), (0.95, 4.15), (1.00, 4.20),
    ];

    /// <summary>Open-circuit voltage of a polymer lithium-ion cell of 0.85 Ah [V]:
    /// V = -1.031 e^(-35 s) + 3.685 + 0.2156 s - 0.1178 s^2 + 0.3201 s^3
    /// (Chen and Rincon-Mora, IEEE Transactions on Energy Conversion 21(2), 2006, read second-hand).</summary>
    /// <param name="s">State of charge, 0..1 [1].</param>
    public static double PolymerCellVoltage(double s) =>
        (-1.031 * Math.Exp(-35.0 * s)) + 3.685 + (s * (0.2156 + (s * (-0.1178 + (s * 0.3201)))));
}
