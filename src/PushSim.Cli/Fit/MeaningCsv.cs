using PushSim.Words.Fits;

namespace PushSim.Cli.Fit;

/// <summary>What each tyre makes of the robot, as CSV.</summary>
internal static class MeaningCsv
{
    public static void Write(Stream stream, MeaningResult r) => CsvTable.Write(
        stream,
        [
            "tyre", "motor_torque_ratio", "static_friction", "kinetic_friction", "friction_spread_ratio", "friction_is_lower_bound", "motor_force_n", "tyre_force_n", "tyre_force_high_n", "limited_by", "first_metre_s", "spot_turn",
            "yaw_rate_rad_per_s", "chatter_hz", "chatter", "grip_clean", "grip_after_1_run", "grip_after_6_runs", "wipe_every_runs", "wear_known", "wear_m3_per_minute_of_turn", "shoves", "win_share", "win_share_low", "win_share_high", "lose_share", "failed_shoves", "cause",
        ],
        r.Tyres.Select(t =>
        {
            Bounds? share = t.WinShare;
            return (string[])
            [
                SafeCell.Of(t.Tyre.Name), CsvTable.Number(t.IsStronger ? r.Stronger : 1.0), CsvTable.Number(t.Tyre.Static), CsvTable.Number(t.Tyre.Kinetic), CsvTable.Number(t.Tyre.Spread),
                t.Tyre.IsAtLeast ? "yes" : "no", CsvTable.Number(t.MotorForce), CsvTable.Number(t.TyreForce), CsvTable.Number(t.TyreForceHigh), BindingTable.PartKey(t.Binding) ?? "", CsvTable.Number(t.FirstMetre), t.Turn is TurnEase e ? MeaningWords.Of(e) : "",
                CsvTable.Number(t.YawRate), CsvTable.Number(t.Chatter.Frequency), ChatterWords.Key(t.Chatter.Kind), CsvTable.Number(t.Life?.Clean), CsvTable.Number(t.Life?.AfterOne), CsvTable.Number(t.Life?.AfterSix), CsvTable.Number(t.Life?.WipeEvery), t.WearPerMinute is not null ? "yes" : "no", CsvTable.Number(t.WearPerMinute), CsvTable.Number(t.Shoves?.Matches),
                CsvTable.Number(share is null ? null : t.Shoves!.Share(t.Shoves.Wins)), CsvTable.Number(share?.Low), CsvTable.Number(share?.High), CsvTable.Number(share is null ? null : t.Shoves!.Share(t.Shoves.Losses)),
                CsvTable.Number(t.Shoves?.Failed), SafeCell.Of(RunWords.Cause(t.Stop)),
            ];
        }));
}
