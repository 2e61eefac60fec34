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

    /// <summary>Width of a wheel, given, that of its tyre's cover, or usual [m]: 0.4 of the diameter, but beside the body no more than turns free of it by 1 mm. Both are common practice, no source.</summary>
    /// <param name="wheel">One of its wheels.</param>
    public double WidthOf(WheelSettings wheel)
    {
        double usual = 0.8 * wheel.Radius;
        double beside = 2.0 * (Math.Abs(wheel.Y) - OutlineOrBox.Corners.Max(c => Math.Abs(c.Y)) - 1e-3);
        return wheel.Width ?? wheel.Tyre.CoverWidth ?? (beside > 0.0 ? Math.Min(usual, beside) : usual);
    }
}
