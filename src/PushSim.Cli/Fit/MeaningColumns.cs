using PushSim.Analysis.Meaning;
using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>What is told of each tyre on the robot, one row a column of the CSV and a key of the JSON: a number, a text, yes or no; null where it is not known.</summary>
/// <param name="Key">Name in both.</param>
/// <param name="Value">Its value.</param>
/// <param name="IsInJson">Whether the JSON has it from here; else another part of the document tells it.</param>
internal sealed record MeaningColumns(string Key, Func<MeaningResult, TyreMeaning, object?> Value, bool IsInJson = true)
{
    /// <summary>All, in the order of the CSV.</summary>
    public static IReadOnlyList<MeaningColumns> All { get; } =
    [
        new("tyre", (_, t) => t.Tyre.Name),
        new("motor_torque_ratio", (r, t) => t.IsStronger ? r.Stronger : 1.0),
        new("static_friction", (_, t) => t.Tyre.Static),
        new("kinetic_friction", (_, t) => t.Tyre.Kinetic),
        new("friction_spread_ratio", (_, t) => t.Tyre.Spread),
        new("friction_is_lower_bound", (_, t) => t.Tyre.IsAtLeast),
        new("motor_force_n", (_, t) => t.MotorForce),
        new("tyre_force_n", (_, t) => t.TyreForce),
        new("tyre_force_high_n", (_, t) => t.TyreForceHigh),
        new("limited_by", (_, t) => BindingTable.PartKey(t.Binding)),
        new("first_metre_s", (_, t) => t.FirstMetre),
        new("spot_turn", (_, t) => t.Turn is TurnEase e ? MeaningWords.Of(e) : null),
        new("yaw_rate_rad_per_s", (_, t) => t.YawRate),
        new("chatter_hz", (_, t) => t.Chatter.Frequency),
        new("chatter", (_, t) => ChatterWords.Key(t.Chatter.Kind), IsInJson: false),
        new("grip_clean", (_, t) => t.Life?.Clean, IsInJson: false),
        new("grip_after_1_run", (_, t) => t.Life?.AfterOne, IsInJson: false),
        new("grip_after_6_runs", (_, t) => t.Life?.AfterSix, IsInJson: false),
        new("wipe_every_runs", (_, t) => t.Life?.WipeEvery, IsInJson: false),
        new("wear_known", (_, t) => t.WearPerMinute is not null),
        new("wear_m3_per_minute_of_turn", (_, t) => t.WearPerMinute),
        new("shoves", (_, t) => t.Shoves?.Matches, IsInJson: false),
        new("win_share", (_, t) => t.WinShare is null ? null : t.Shoves!.Share(t.Shoves.Wins)),
        new("win_share_low", (_, t) => t.WinShare?.Low),
        new("win_share_high", (_, t) => t.WinShare?.High),
        new("lose_share", (_, t) => t.WinShare is null ? null : t.Shoves!.Share(t.Shoves.Losses)),
        new("failed_shoves", (_, t) => t.Shoves?.Failed, IsInJson: false),
        new("cause", (_, t) => t.Stop is null ? null : RunWords.Cause(t.Stop)),
    ];
}
