using PushSim.Analysis.Limits;
using PushSim.Powertrain;

namespace PushSim.Words.Limits;

/// <summary>Words and keys of the limits.</summary>
public static class LimitWords
{
    // in the order of LimitInput
    private static readonly (string Words, string Key)[] s_inputs =
    [
        ("friction", "friction"), ("load on driven wheels", "driven_load"), ("gear ratio", "gear_ratio"), ("wheel radius", "wheel_radius"),
        ("motor constant", "motor_constant"), ("winding resistance", "winding_resistance"), ("current limit", "current_limit"),
        ("battery resistance", "battery_resistance"), ("mass", "mass"), ("height of the centre of mass", "centre_of_mass_height"),
    ];

    // in the order of LimitOutput
    private static readonly (string Words, string Key, string Unit)[] s_outputs =
    [
        ("pull", "pull_n", "N"), ("launch distance in 0.5 s", "launch_distance_m", "m"), ("launch time for 1 m", "launch_time_s", "s"),
        ("spot-turn rate", "spot_turn_rate_rad_per_s", "rad/s"), ("shove margin", "shove_margin_n", "N"),
    ];

    /// <summary>Plain words.</summary>
    public static string Of(LimitInput input) => s_inputs[(int)input].Words;

    /// <summary>Plain words.</summary>
    public static string Of(LimitOutput output) => s_outputs[(int)output].Words;

    /// <summary>Unit of its value.</summary>
    public static string Unit(LimitOutput output) => s_outputs[(int)output].Unit;

    /// <summary>Key for scripts.</summary>
    public static string Key(LimitInput input) => s_inputs[(int)input].Key;

    /// <summary>Key for scripts, with the unit.</summary>
    public static string Key(LimitOutput output) => s_outputs[(int)output].Key;

    /// <summary>A state of heat and charge.</summary>
    public static string Of(LimitStateKind state) => state switch
    {
        LimitStateKind.ColdFull => "cold, full",
        LimitStateKind.WarmFull => "warm, full",
        LimitStateKind.ColdPart => "cold, 80 %",
        LimitStateKind.WarmPart => "warm, 80 %",
        _ => "as in the file",
    };

    /// <summary>A wiring that was tried; its key for scripts as well.</summary>
    public static string Of(Wiring wiring) => wiring switch { Wiring.Parallel => "parallel", Wiring.Series => "series", _ => "separate" };

    /// <summary>How a wheel lost its grip; its key for scripts as well.</summary>
    public static string Of(WheelLoss loss) => loss switch { WheelLoss.Lifted => "in the air", WheelLoss.Slippery => "slippery", _ => "all on the floor" };

    /// <summary>At which end of what was tried a ratio lies; empty for none.</summary>
    public static string Of(RatioEdge edge) => edge switch { RatioEdge.Lowest => "lowest tried", RatioEdge.Highest => "highest tried", _ => "" };

    /// <summary>Name of an axle; its key for scripts as well.</summary>
    public static string Of(AxleCurve axle) => axle.Count switch
    {
        1 => "axle",
        2 => axle.Number == 0 ? "front axle" : "rear axle",
        3 => axle.Number switch { 0 => "front axle", 1 => "middle axle", _ => "rear axle" },
        _ => $"axle {axle.Number + 1}",
    };
}
