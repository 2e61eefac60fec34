namespace PushSim.Scenarios.Estimates;

/// <summary>What a builder knows of a motor: any part of it that determines the constants. Speeds without load and stall torques are at
/// the output shaft of the gearbox they were measured through; everything else at the motor. SI.</summary>
public sealed record MotorData
{
    /// <summary>Name used in tables and messages.</summary>
    public required string Name { get; init; }

    /// <summary>Winding resistance R [ohm].</summary>
    public double? Resistance { get; init; }

    /// <summary>Torque constant Kt = Ke [N m/A = V s/rad].</summary>
    public double? TorqueConstant { get; init; }

    /// <summary>Speed constant Kv = 1/Ke [rad/s/V].</summary>
    public double? SpeedConstant { get; init; }

    /// <summary>Voltage V of the no-load and stall data [V].</summary>
    public double? Voltage { get; init; }

    /// <summary>No-load speed at the output shaft [rad/s].</summary>
    public double? NoLoadSpeed { get; init; }

    /// <summary>The same, said so that nobody takes it for the bare motor's; it goes before <see cref="NoLoadSpeed"/> [rad/s].</summary>
    public double? OutputSpeed { get; init; }

    /// <summary>No-load current I0 [A].</summary>
    public double? NoLoadCurrent { get; init; }

    /// <summary>Stall current [A].</summary>
    public double? StallCurrent { get; init; }

    /// <summary>Stall torque at the output shaft [N m].</summary>
    public double? StallTorque { get; init; }

    /// <summary>The same, said so that nobody takes it for the bare motor's; it goes before <see cref="StallTorque"/> [N m].</summary>
    public double? OutputStallTorque { get; init; }

    /// <summary>Voltage of a test with the shaft held [V].</summary>
    public double? LockedRotorVoltage { get; init; }

    /// <summary>Current of a test with the shaft held [A].</summary>
    public double? LockedRotorCurrent { get; init; }

    /// <summary>Motor speed / output shaft speed of the gearbox the data were measured through, G; 1 too where it is not known: the motor's shaft is then that of the gearbox [1].</summary>
    public double GearRatio { get; init; } = 1.0;

    /// <summary>Efficiency of that gearbox, eta [1]; null: nothing is known of it.</summary>
    public double? GearEfficiency { get; init; }

    /// <summary>Brush voltage drop, both brushes [V].</summary>
    public double BrushDrop { get; init; }

    /// <summary>Dry friction torque at the motor shaft [N m]; null: from the no-load current.</summary>
    public double? FrictionTorque { get; init; }

    /// <summary>Viscous friction at the motor shaft, b [N m s/rad].</summary>
    public double ViscousFriction { get; init; }

    /// <summary>How far each written value may be off; empty where nothing is known of that.</summary>
    public IReadOnlyList<MotorDoubt> Doubts { get; init; } = [];
}
