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

/// <summary>What a change may buy.</summary>
public enum LimitOutput
{
    /// <summary>Steady pull on a tether at standstill [N].</summary>
    Pull,

    /// <summary>Distance in the first half second of a launch [m].</summary>
    LaunchDistance,

    /// <summary>Time for the first metre of a launch [s].</summary>
    LaunchTime,

    /// <summary>Yaw rate of a turn on the spot at full command [rad/s].</summary>
    SpotTurnRate,

    /// <summary>Own push less the opponent's, both at standstill [N].</summary>
    ShoveMargin,
}

/// <summary>Words and keys of inputs and outputs.</summary>
public static class LimitWords
{
    private static readonly string[] s_inputs =
    [
        "friction", "load on driven wheels", "gear ratio", "wheel radius", "motor constant", "winding resistance", "current limit",
        "battery resistance", "mass", "height of the centre of mass",
    ];

    private static readonly string[] s_inputKeys =
    [
        "friction", "driven_load", "gear_ratio", "wheel_radius", "motor_constant", "winding_resistance", "current_limit", "battery_resistance", "mass",
        "centre_of_mass_height",
    ];

    private static readonly string[] s_outputs = ["pull", "launch distance in 0.5 s", "launch time for 1 m", "spot-turn rate", "shove margin"];

    private static readonly string[] s_outputKeys = ["pull_n", "launch_distance_m", "launch_time_s", "spot_turn_rate_rad_per_s", "shove_margin_n"];

    private static readonly string[] s_outputUnits = ["N", "m", "s", "rad/s", "N"];

    /// <summary>Plain words.</summary>
    public static string Of(LimitInput input) => s_inputs[(int)input];

    /// <summary>Plain words.</summary>
    public static string Of(LimitOutput output) => s_outputs[(int)output];

    /// <summary>Unit of its value.</summary>
    public static string Unit(LimitOutput output) => s_outputUnits[(int)output];

    /// <summary>Key for scripts.</summary>
    public static string Key(LimitInput input) => s_inputKeys[(int)input];

    /// <summary>Key for scripts, with the unit.</summary>
    public static string Key(LimitOutput output) => s_outputKeys[(int)output];
}
