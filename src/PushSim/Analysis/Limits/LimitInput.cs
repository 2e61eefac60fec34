namespace PushSim.Analysis.Limits;

/// <summary>A part of the robot of which there could be more.</summary>
public enum LimitInput
{
    /// <summary>Friction of all tyres on this floor.</summary>
    Friction,

    /// <summary>Load on driven wheels without more mass, as by a magnet or weight moved onto them.</summary>
    DrivenLoad,

    /// <summary>Gear ratio of every motor.</summary>
    Ratio,

    /// <summary>Radius of every wheel.</summary>
    WheelRadius,

    /// <summary>Torque (and speed) constant of every motor.</summary>
    MotorConstant,

    /// <summary>Winding resistance of every motor.</summary>
    WindingResistance,

    /// <summary>Current limit of every controller.</summary>
    CurrentLimit,

    /// <summary>Inner resistance of the battery.</summary>
    BatteryResistance,

    /// <summary>Mass of the robot, spread as it is.</summary>
    Mass,

    /// <summary>Height of the centre of mass.</summary>
    CentreOfMassHeight,
}
