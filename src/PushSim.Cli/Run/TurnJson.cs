using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>A turn's result as the object "turning" of the run's JSON document.</summary>
internal static class TurnJson
{
    public static void Write(Utf8JsonWriter writer, TurnResult r, IReadOnlyList<string> explanation)
    {
        writer.WriteStartObject("turning");
        writer.WriteString("ease", Word(r.Ease));
        CommandJson.WriteNumber(writer, "settled_from_s", r.SettledFrom);
        CommandJson.WriteNumber(writer, "yaw_rate_without_slip_rad_per_s", r.YawRateWithoutSlip);
        CommandJson.WriteNumber(writer, "rotation_centre_x_m", r.RotationCentre?.X);
        CommandJson.WriteNumber(writer, "rotation_centre_y_m", r.RotationCentre?.Y);
        CommandJson.WriteNumber(writer, "battery_current_a", r.Current);
        CommandJson.WriteNumber(writer, "battery_power_w", r.Power);
        CommandJson.WriteNumber(writer, "limiting_share", r.LimitingShare);
        CommandJson.WriteNumber(writer, "least_current_limit_a", r.LeastCurrentLimit);
        CommandJson.WriteNumber(writer, "least_current_share", r.LeastCurrentShare);
        CommandJson.WriteNumber(writer, "least_motor_share", r.LeastMotorShare);
        CommandJson.WriteRows(writer, "wheels", r.Wheels, x => WriteWheel(writer, x));
        CommandJson.WriteRows(writer, "helps", r.Helps, x => WriteHelp(writer, x));
        CommandJson.WriteRows(writer, "modes", r.Modes, x => WriteMode(writer, x));
        CommandJson.WriteNumber(writer, "growth_without_falling_friction_1_per_s", r.Feed?.WithoutFall);
        CommandJson.WriteNumber(writer, "growth_with_steady_loads_1_per_s", r.Feed?.WithSteadyLoad);
        CommandJson.WriteNumber(writer, "growth_with_neither_1_per_s", r.Feed?.WithNeither);
        writer.WriteString("no_modes_because", r.NoModes == NoModesCause.None ? null : ChatterWords.Of(r.NoModes));
        CommandJson.WriteNumber(writer, "simulated_growth_1_per_s", r.SimulatedGrowth);
        CommandJson.WriteRows(writer, "ring", r.Rings, x => WriteRing(writer, x));
        CommandJson.WriteRows(writer, "slip_speeds", r.SlipSpeeds, x => WriteSlipSpeed(writer, x));
        CommandJson.WriteNumber(writer, "chatter_onset_damping_ratio", r.Range?.Onset);
        CommandJson.WriteNumber(writer, "chatter_stop_damping_ratio", r.Range?.Stop);
        CommandJson.WriteTexts(writer, "explanation", explanation);
        writer.WriteEndObject();
    }

    private static string Word(TurnEase ease) => ease switch
    {
        TurnEase.Freely => "freely",
        TurnEase.Unknown => "not_looked_at",
        TurnEase.AtTheLimit => "at_the_limit",
        _ => "cannot_turn",
    };

    private static void WriteWheel(Utf8JsonWriter writer, WheelTurn w)
    {
        writer.WriteString("wheel", w.Wheel);
        CommandJson.WriteNumber(writer, "load_n", w.Load);
        CommandJson.WriteNumber(writer, "least_load_n", w.LeastLoad);
        CommandJson.WriteNumber(writer, "air_share", w.AirShare);
        writer.WriteNumber("lift_offs", w.LiftOffs);
        CommandJson.WriteNumber(writer, "drive_force_n", w.DriveForce);
        CommandJson.WriteNumber(writer, "scrub_force_n", w.ScrubForce);
        CommandJson.WriteNumber(writer, "scrub_moment_n_m", w.ScrubMoment);
        CommandJson.WriteNumber(writer, "drive_moment_n_m", w.DriveMoment);
        CommandJson.WriteNumber(writer, "slip_speed_m_per_s", w.SlipSpeed);
        CommandJson.WriteNumber(writer, "chatter_swing_n", w.Swing);
        CommandJson.WriteNumber(writer, "chatter_hz", w.Frequency);
        CommandJson.WriteNumber(writer, "wear_mm3", 1e9 * w.Wear);
    }

    private static void WriteHelp(Utf8JsonWriter writer, TurnHelp h)
    {
        writer.WriteString("change", TurnWords.Of(h.What));
        writer.WriteString("unit", TurnWords.Unit(h.What));
        CommandJson.WriteNumber(writer, "from", h.From);
        CommandJson.WriteNumber(writer, "to", h.To);
        writer.WriteBoolean("turns", h.Turns);
        CommandJson.WriteNumber(writer, "yaw_rate_rad_per_s", h.YawRate);
        CommandJson.WriteNumber(writer, "scrub_moment_n_m", h.ScrubMoment);
        CommandJson.WriteNumber(writer, "battery_current_a", h.Current);
    }

    private static void WriteMode(Utf8JsonWriter writer, TurnMode m)
    {
        writer.WriteString("moves", TurnWords.Of(m.Part));
        CommandJson.WriteNumber(writer, "frequency_hz", m.Frequency);
        CommandJson.WriteNumber(writer, "growth_1_per_s", m.Growth);
        writer.WriteStartObject("shares");
        foreach ((TurnPart part, double share) in m.Shares)
        {
            CommandJson.WriteNumber(writer, TurnWords.Of(part).Replace(' ', '_'), share);
        }

        writer.WriteEndObject();
    }

    private static void WriteRing(Utf8JsonWriter writer, RingCheck c)
    {
        writer.WriteString("wheel", c.Wheel);
        CommandJson.WriteNumber(writer, "margin", c.Margin);
        writer.WriteBoolean("buzzes", c.Buzzes);
        CommandJson.WriteNumber(writer, "slip_speed_m_per_s", c.SlipSpeed);
        CommandJson.WriteNumber(writer, "load_n", c.Load);
        CommandJson.WriteNumber(writer, "friction_slope_s_per_m", c.FrictionSlope);
        CommandJson.WriteNumber(writer, "frequency_hz", c.Frequency);
    }

    private static void WriteSlipSpeed(Utf8JsonWriter writer, SlipSpeedPoint p)
    {
        CommandJson.WriteNumber(writer, "slip_speed_m_per_s", p.SlipSpeed);
        CommandJson.WriteNumber(writer, "ring_margin", p.RingMargin);
        CommandJson.WriteNumber(writer, "growth_1_per_s", p.Growth);
    }
}
