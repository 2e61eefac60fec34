using PushSim.Chassis;
using PushSim.Contact;
using PushSim.Powertrain;
using PushSim.Tyres;

namespace PushSim.Simulation;

/// <summary>One robot, whole. SI, angles in rad, ISO 8855 axes.</summary>
public sealed record RobotSettings
{
    /// <summary>Name used in tables and messages.</summary>
    public required string Name { get; init; }

    /// <summary>The body.</summary>
    public required ChassisSettings Chassis { get; init; }

    /// <summary>2 to 8 wheels.</summary>
    public required IReadOnlyList<WheelSettings> Wheels { get; init; }

    /// <summary>The drives; a wheel in none turns freely unless it is a skid.</summary>
    public required IReadOnlyList<DriveSettings> Drives { get; init; }

    /// <summary>The controllers.</summary>
    public required IReadOnlyList<ControllerSettings> Controllers { get; init; }

    /// <summary>The battery; may be null only if no controller is there.</summary>
    public BatterySettings? Battery { get; init; }

    /// <summary>What others touch; null: the body box.</summary>
    public OutlineSettings? Outline { get; init; }

    /// <summary>Wheels on drives with motors, by their place in <see cref="Wheels"/>, drive by drive; none on a robot that is towed.</summary>
    public IReadOnlyList<int> DrivenWheels => [.. Drives.Where(d => d.Motors.Count > 0).SelectMany(d => d.Wheels).Select(w => w.Wheel)];

    /// <summary>What others touch, given or the body box.</summary>
    public OutlineSettings OutlineOrBox => Outline ?? OutlineSettings.Box(Chassis, OutlineSettings.DefaultClearance, Chassis.Height);
}
