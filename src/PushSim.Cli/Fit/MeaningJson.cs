using PushSim.Words.Fits;
using PushSim.Words.Wear;

namespace PushSim.Cli.Fit;

/// <summary>What each tyre makes of the robot, in the JSON document of a fit.</summary>
internal static class MeaningJson
{
    public static void Write(Utf8JsonWriter w, MeaningResult r)
    {
        w.WriteStartObject("on_the_robot");
        w.WriteString("robot", r.Robot);
        w.WriteString("opponent", r.Opponent.Length > 0 ? r.Opponent : null);
        w.WriteString("contest", r.Opponent.Length > 0 ? r.Contest : null);
        w.WriteNumber("shoves", r.Opponent.Length > 0 ? r.Shoves : 0);
        w.WriteNumber("seed", r.Seed);
        w.WriteString("interval", "Wilson score, 95 %");
        w.WriteString("wear_limits", WearWords.Limits);
        JsonReport.WriteNumber(w, "computed_in_s", r.Seconds);
        JsonReport.WriteRows(w, "tyres", r.Tyres, t =>
        {
            Bounds? share = t.WinShare;
            w.WriteString("tyre", t.Tyre.Name);
            JsonReport.WriteNumber(w, "motor_torque_ratio", t.IsStronger ? r.Stronger : 1.0);
            JsonReport.WriteNumber(w, "static_friction", t.Tyre.Static);
            JsonReport.WriteNumber(w, "kinetic_friction", t.Tyre.Kinetic);
            JsonReport.WriteNumber(w, "friction_spread_ratio", t.Tyre.Spread);
            w.WriteBoolean("friction_is_lower_bound", t.Tyre.IsAtLeast);
            JsonReport.WriteNumber(w, "motor_force_n", t.MotorForce);
            JsonReport.WriteNumber(w, "tyre_force_n", t.TyreForce);
            JsonReport.WriteNumber(w, "tyre_force_high_n", t.TyreForceHigh);
            w.WriteString("limited_by", BindingTable.PartKey(t.Binding));
            JsonReport.WriteNumber(w, "first_metre_s", t.FirstMetre);
            w.WriteString("spot_turn", t.Turn is TurnEase e ? MeaningWords.Of(e) : null);
            JsonReport.WriteNumber(w, "yaw_rate_rad_per_s", t.YawRate);
            JsonReport.WriteNumber(w, "chatter_hz", t.Chatter.Frequency);
            ChatterJson.Write(w, t.Chatter);
            GripJson.Write(w, t.Life);
            w.WriteBoolean("material_known", t.Tyre.IsMaterialKnown);
            w.WriteBoolean("wear_known", t.WearPerMinute is not null);
            JsonReport.WriteNumber(w, "wear_m3_per_minute_of_turn", t.WearPerMinute);
            JsonReport.WriteNumber(w, "win_share", share is null ? null : t.Shoves!.Share(t.Shoves.Wins));
            JsonReport.WriteNumber(w, "win_share_low", share?.Low);
            JsonReport.WriteNumber(w, "win_share_high", share?.High);
            JsonReport.WriteNumber(w, "lose_share", share is null ? null : t.Shoves!.Share(t.Shoves.Losses));
            w.WriteNumber("failed_shoves", t.Shoves?.Failed ?? 0);
            w.WriteString("cause", t.Stop is null ? null : RunWords.Cause(t.Stop));
        });
        JsonReport.WriteRows(w, "left_out", r.LeftOut, t =>
        {
            w.WriteString("tyre", t.Tyre);
            w.WriteString("reason", t.Reason);
        });
        w.WriteString("limits", r.Tyres.Count > 0 ? MeaningWords.Limits([.. r.Tyres.Where(t => !t.IsStronger)], r.Robot) : null);
        w.WriteString("stronger_motor", r.Stronger is null || r.Tyres.Count == 0 ? null : MeaningWords.Gain(r));
        w.WriteEndObject();
    }
}
