using PushSim.Analysis.Limits;
using PushSim.Powertrain;

namespace PushSim.Words.Limits;

/// <summary>Words and keys of the limits.</summary>
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
