namespace PushSim.Analysis.Compare;

/// <summary>What a column of a robot's log holds.</summary>
public enum ChannelKind
{
    /// <summary>Throttle of both sides [1].</summary>
    Throttle,

    /// <summary>Turn command, left positive [1].</summary>
    Turn,

    /// <summary>Command of one side [1].</summary>
    SideCommand,

    /// <summary>Rim speed of one side's wheels [m/s].</summary>
    SideSpeed,

    /// <summary>Turning speed of one side's wheels [rad/s].</summary>
    WheelSpin,

    /// <summary>Turning speed of one side's motors [rad/s].</summary>
    MotorSpin,

    /// <summary>Speed of the body ahead [m/s].</summary>
    Speed,

    /// <summary>Yaw rate, left positive [rad/s].</summary>
    YawRate,

    /// <summary>Voltage of the battery [V].</summary>
    Voltage,

    /// <summary>Current of the battery [A].</summary>
    Current,

    /// <summary>Current of one side's controllers [A].</summary>
    SideCurrent,

    /// <summary>Force on the tether [N].</summary>
    Force,
}
