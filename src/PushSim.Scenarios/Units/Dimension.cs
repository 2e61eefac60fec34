namespace PushSim.Scenarios.Units;

/// <summary>What a quantity measures; decides which units it may carry.</summary>
public enum Dimension
{
    /// <summary>A pure number or a percentage.</summary>
    Ratio,

    /// <summary>Length, in m.</summary>
    Length,

    /// <summary>Mass, in kg.</summary>
    Mass,

    /// <summary>Force, in N.</summary>
    Force,

    /// <summary>Torque, in N m.</summary>
    Torque,

    /// <summary>Turning speed, in rad/s.</summary>
    AngularSpeed,

    /// <summary>Motor speed constant, in rad/s/V.</summary>
    SpeedConstant,

    /// <summary>Motor torque constant, in N m/A.</summary>
    TorqueConstant,

    /// <summary>Voltage, in V.</summary>
    Voltage,

    /// <summary>Current, in A.</summary>
    Current,

    /// <summary>Electric resistance, in ohm.</summary>
    Resistance,

    /// <summary>Inductance, in H.</summary>
    Inductance,

    /// <summary>Electric charge, in A s.</summary>
    Charge,

    /// <summary>Angle, in rad.</summary>
    Angle,

    /// <summary>Temperature, in degree Celsius.</summary>
    Temperature,

    /// <summary>Speed, in m/s.</summary>
    Speed,

    /// <summary>Time, in s.</summary>
    Time,

    /// <summary>Stiffness, in N/m.</summary>
    Stiffness,

    /// <summary>Damping of a motion along a line, in N s/m.</summary>
    Damping,

    /// <summary>Damping of a turning motion, in N m s/rad.</summary>
    RotaryDamping,

    /// <summary>Moment of inertia, in kg m2.</summary>
    Inertia,

    /// <summary>Thermal resistance, in K/W.</summary>
    ThermalResistance,

    /// <summary>Heat capacity, in J/K.</summary>
    HeatCapacity,

    /// <summary>Frequency, in Hz.</summary>
    Frequency,

    /// <summary>Change per time, in 1/s.</summary>
    Rate,

    /// <summary>Volume, in m3.</summary>
    Volume,

    /// <summary>Reciprocal length, in 1/m.</summary>
    InverseLength,

    /// <summary>Reciprocal speed, in s/m.</summary>
    InverseSpeed,

    /// <summary>Pressure, modulus of elasticity, or stiffness per area, in N/m2.</summary>
    Pressure,

    /// <summary>Share per angle, in 1/rad.</summary>
    InverseAngle,

    /// <summary>Density, in kg/m3.</summary>
    Density,
}
