namespace PushSim.Simulation;

/// <summary>What is recorded of a motor; one property a series.</summary>
/// <param name="part">The motor.</param>
/// <param name="drive">Index of its drive in the robot.</param>
/// <param name="motor">Index of the motor in its drive.</param>
public sealed class MotorTrace(TracePart part, int drive, int motor)
{
    private const double RpmPerRadian = 30.0 / Math.PI;

    /// <summary>Name of its drive and its number in it from 1 on, e.g. "front left 1".</summary>
    public string Name { get; } = part.Name;

    /// <summary>Index of its drive in the robot [1].</summary>
    public int Drive { get; } = drive;

    /// <summary>Index of the motor in its drive [1].</summary>
    public int Motor { get; } = motor;

    /// <summary>Current, positive where it drives forward [A].</summary>
    public Series Current { get; } = part.Add("motor_*_current_a", "A", p => p.Motor.Current.Value);

    /// <summary>Speed of its shaft, forward drive positive [rpm].</summary>
    public Series Speed { get; } = part.Add("motor_*_speed_rpm", "rpm", p => p.MotorSpeed(drive, motor) * RpmPerRadian);

    /// <summary>Temperature of the winding; null where its heat is not followed [°C].</summary>
    public Series? WindingTemperature { get; } = part.AddIfAny("motor_*_winding_temperature_degc", "°C", part.Layout.MotorHeat[part.Index]);

    /// <summary>Temperature of the case; null where its heat is not followed [°C].</summary>
    public Series? CaseTemperature { get; } = part.AddIfAny("motor_*_case_temperature_degc", "°C", part.Layout.MotorHeat[part.Index], after: 1);
}
