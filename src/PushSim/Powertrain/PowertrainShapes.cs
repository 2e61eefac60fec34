namespace PushSim.Powertrain;

/// <summary>What is no number of a drive.</summary>
internal readonly record struct DriveShape
{
    /// <summary>Index of the bristle s among the implicit states, -1 without friction.</summary>
    public int BristleIndex { get; init; }

    /// <summary>How many motors turn it, and how many wheels it turns [1].</summary>
    public int Motors { get; init; }

    /// <summary>See <see cref="Motors"/>.</summary>
    public int Wheels { get; init; }

    /// <summary>Whether it is turned from outside.</summary>
    public bool IsGiven { get; init; }
}

/// <summary>What is no number of a motor.</summary>
internal readonly record struct MotorShape
{
    /// <summary>Drive it sits on.</summary>
    public int Drive { get; init; }

    /// <summary>Index of the winding temperature (the case follows it), -1 when heating is off.</summary>
    public int HeatIndex { get; init; }

    /// <summary>Whether the sensorless start is on.</summary>
    public bool IsSensorless { get; init; }
}

/// <summary>What is no number of a controller.</summary>
internal readonly record struct ControllerShape
{
    /// <summary>How its motors are wired.</summary>
    public Wiring Wiring { get; init; }

    /// <summary>What it does between pulses.</summary>
    public BetweenPulses BetweenPulses { get; init; }

    /// <summary>Whether pulses count: means over each, and not only the mean voltage.</summary>
    public bool HasPulses { get; init; }

    /// <summary>Whether its limit ends each pulse and does not hold the mean.</summary>
    public bool LimitsEachPulse { get; init; }

    /// <summary>Whether power flows back to the battery.</summary>
    public bool Regeneration { get; init; }

    /// <summary>Whether brushes take a voltage.</summary>
    public bool HasBrushDrop { get; init; }

    /// <summary>Index of its temperature, -1 when heating is off.</summary>
    public int HeatIndex { get; init; }

    /// <summary>Its motors: first in the robot's motor list (motors are ordered by controller) and count [1].</summary>
    public int FirstMotor { get; init; }

    /// <summary>See <see cref="FirstMotor"/>.</summary>
    public int MotorCount { get; init; }
}

/// <summary>What is no number of a battery.</summary>
/// <param name="Pieces">Straight pieces of its curve [1].</param>
/// <param name="Varies">Whether the resistances hang on charge or temperature.</param>
internal readonly record struct BatteryShape(int Pieces, bool Varies);
