using PushSim.Powertrain;

namespace PushSim.Analysis.Compare;

/// <summary>One quantity of a robot's log over its times.</summary>
/// <param name="Kind">What it is.</param>
/// <param name="Side">Whose side it is; null for the whole robot.</param>
/// <param name="Column">Head of its column.</param>
/// <param name="Values">Its values, NaN where a cell is empty [SI unit of its kind].</param>
public sealed record Channel(ChannelKind Kind, CommandSide? Side, string Column, double[] Values)
{
    /// <summary>Whether it is a command, which is put in and not compared.</summary>
    public bool IsCommand => Kind is ChannelKind.Throttle or ChannelKind.Turn or ChannelKind.SideCommand;

    /// <summary>Whether it tells how fast wheels turn.</summary>
    public bool IsWheels => Kind is ChannelKind.SideSpeed or ChannelKind.WheelSpin or ChannelKind.MotorSpin;

    /// <summary>Key for scripts, e.g. "left_wheel_speed".</summary>
    public string Name => (Side switch { CommandSide.Left => "left_", CommandSide.Right => "right_", _ => "" }) + Kind switch
    {
        ChannelKind.Throttle => "throttle",
        ChannelKind.Turn => "turn",
        ChannelKind.SideCommand => "command",
        ChannelKind.SideSpeed => "rim_speed",
        ChannelKind.WheelSpin => "wheel_speed",
        ChannelKind.MotorSpin => "motor_speed",
        ChannelKind.Speed => "speed",
        ChannelKind.YawRate => "yaw_rate",
        ChannelKind.Voltage => "battery_voltage",
        ChannelKind.Current => "battery_current",
        ChannelKind.SideCurrent => "current",
        _ => "force",
    };

    /// <summary>Its unit.</summary>
    public string Unit => Kind switch
    {
        ChannelKind.SideSpeed or ChannelKind.Speed => "m/s",
        ChannelKind.WheelSpin or ChannelKind.MotorSpin or ChannelKind.YawRate => "rad/s",
        ChannelKind.Voltage => "V",
        ChannelKind.Current or ChannelKind.SideCurrent => "A",
        ChannelKind.Force => "N",
        _ => "1",
    };
}
