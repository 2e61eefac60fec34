namespace PushSim.Powertrain;

/// <summary>A brushed permanent-magnet motor (or the equivalent brushed motor of a brushless one), per terminal pair, without
/// its gearbox. Inductance counts within a controller's pulses only: its time constant L/R is far below the mechanical ones.</summary>
public sealed record MotorSettings
{
    /// <summary>Name used in tables and messages.</summary>
    public required string Name { get; init; }

    /// <summary>Torque constant Kt = Ke [N m/A = V s/rad].</summary>
    public required double TorqueConstant { get; init; }

    /// <summary>Winding resistance at <see cref="ReferenceTemperature"/> [ohm].</summary>
    public required double Resistance { get; init; }

    /// <summary>Temperature at which the resistance was measured [degree Celsius].</summary>
    public double ReferenceTemperature { get; init; } = 25.0;

    /// <summary>Dry friction torque at the motor shaft, tau0 [N m] (for example Kt I0 less the viscous part).</summary>
    public double FrictionTorque { get; init; }

    /// <summary>Viscous friction at the motor shaft [N m s/rad].</summary>
    public double ViscousFriction { get; init; }

    /// <summary>Rotor inertia [kg m^2].</summary>
    public double RotorInertia { get; init; }

    /// <summary>Brush voltage drop, both brushes [V]; 0 is off.</summary>
    public double BrushDrop { get; init; }

    /// <summary>Winding inductance [H]; counts within the pulses of a controller, never integrated. Null: estimated from resistance and motor constant.</summary>
    public double? Inductance { get; init; }

    /// <summary>Thermal resistance winding to case [K/W]; 0 switches heating off.</summary>
    public double WindingToCaseThermalResistance { get; init; }

    /// <summary>Thermal resistance case to air [K/W].</summary>
    public double CaseToAirThermalResistance { get; init; }

    /// <summary>Heat capacity of the winding [J/K].</summary>
    public double WindingHeatCapacity { get; init; }

    /// <summary>Heat capacity of the case [J/K].</summary>
    public double CaseHeatCapacity { get; init; }

    /// <summary>Temperature the winding must not pass [degree Celsius]; only reported.</summary>
    public double WindingLimitTemperature { get; init; } = 125.0;

    /// <summary>Sensorless brushless drive: output torque share available at standstill [1]; 1 is a sensored or brushed motor.</summary>
    public double StandstillTorqueShare { get; init; } = 1.0;

    /// <summary>Sensorless brushless drive: shaft speed from which full torque comes [rad/s].</summary>
    public double FullTorqueSpeed { get; init; }
}
