namespace PushSim.Simulation;

/// <summary>Peaks of one robot; null where it has no battery, no motor or no wheel.</summary>
public sealed record RobotPeaks
{
    /// <summary>No peaks.</summary>
    public static RobotPeaks None { get; } = new();

    /// <summary>Greatest battery current [A].</summary>
    public Peak? BatteryCurrent { get; init; }

    /// <summary>Lowest battery voltage [V]; its limit is the voltage at which the battery counts as empty.</summary>
    public Peak? BatteryVoltage { get; init; }

    /// <summary>Greatest motor current, never negative; its limit is what its controller holds the motor to then [A]. A current that the motor itself drives, as while it brakes, is held by no controller.</summary>
    public Peak? MotorCurrent { get; init; }

    /// <summary>Greatest load of a wheel [N].</summary>
    public Peak? WheelLoad { get; init; }
}
