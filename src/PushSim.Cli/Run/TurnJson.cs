using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>A turn's report as the object "turning" of the run's JSON document.</summary>
internal static class TurnJson
{
    public static void Write(Utf8JsonWriter writer, TurnReport r, IReadOnlyList<string> explanation)
    {
        writer.WriteStartObject("turning");
        writer.WriteString("ease", Word(r.Ease));
        JsonReport.WriteNumber(writer, "settled_from_s", r.SettledFrom);
        JsonReport.WriteNumber(writer, "yaw_rate_without_slip_rad_per_s", r.YawRateWithoutSlip);
        JsonReport.WriteNumber(writer, "rotation_centre_x_m", r.RotationCentre?.X);
        JsonReport.WriteNumber(writer, "rotation_centre_y_m", r.RotationCentre?.Y);
        JsonReport.WriteNumber(writer, "battery_current_a", r.Current);
        JsonReport.WriteNumber(writer, "battery_power_w", r.Power);
        JsonReport.WriteNumber(writer, "limiting_share", r.LimitingShare);
        JsonReport.WriteNumber(writer, "least_current_limit_a", r.LeastCurrentLimit);
        JsonReport.WriteNumber(writer, "least_current_share", r.LeastCurrentShare);
        JsonReport.WriteNumber(writer, "least_motor_share", r.LeastMotorShare);
        JsonReport.WriteRows(writer, "wheels", r.Wheels, x => WriteWheel(writer, x));
        JsonReport.WriteRows(writer, "helps", r.Helps, x => WriteHelp(writer, x));
        JsonReport.WriteRows(writer, "modes", r.Modes, x => WriteMode(writer, x));
        JsonReport.WriteNumber(writer, "growth_without_falling_friction_1_per_s", r.Feed?.WithoutFall);
        JsonReport.WriteNumber(writer, "growth_with_steady_loads_1_per_s", r.Feed?.WithSteadyLoad);
        JsonReport.WriteNumber(writer, "growth_with_neither_1_per_s", r.Feed?.WithNeither);
        writer.WriteString("no_modes_because", r.NoModes == NoModesCause.None ? null : ChatterWords.Of(r.NoModes));
        JsonReport.WriteNumber(writer, "simulated_growth_1_per_s", r.SimulatedGrowth);
        JsonReport.WriteRows(writer, "ring", r.Rings, x => WriteRing(writer, x));
        JsonReport.WriteRows(writer, "slip_speeds", r.SlipSpeeds, x => WriteSlipSpeed(writer, x));
        JsonReport.WriteNumber(writer, "chatter_onset_damping_ratio", r.Range?.Onset);
        JsonReport.WriteNumber(writer, "chatter_stop_damping_ratio", r.Range?.Stop);
        JsonReport.WriteTexts(writer, "explanation", explanation);
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
        JsonReport.WriteNumber(writer, "load_n", w.Load);
        JsonReport.WriteNumber(writer, "least_load_n", w.LeastLoad);
        JsonReport.WriteNumber(writer, "air_share", w.AirShare);
        writer.WriteNumber("lift_offs", w.LiftOffs);
        JsonReport.WriteNumber(writer, "drive_force_n", w.DriveForce);
        JsonReport.WriteNumber(writer, "scrub_force_n", w.ScrubForce);
        JsonReport.WriteNumber(writer, "scrub_moment_n_m", w.ScrubMoment);
        JsonReport.WriteNumber(writer, "drive_moment_n_m", w.DriveMoment);
        JsonReport.WriteNumber(writer, "slip_speed_m_per_s", w.SlipSpeed);
        JsonReport.WriteNumber(writer, "chatter_swing_n", w.Swing);
        JsonReport.WriteNumber(writer, "chatter_hz", w.Frequency);
        JsonReport.WriteNumber(writer, "wear_mm3", 1e9 * w.Wear);
    }

    private static void WriteHelp(Utf8JsonWriter writer, TurnHelp h)
    {
        writer.WriteString("change", TurnWords.Of(h.What));
        writer.WriteString("unit", TurnWords.Unit(h.What));
        JsonReport.WriteNumber(writer, "from", h.From);
        JsonReport.WriteNumber(writer, "to", h.To);
        writer.WriteBoolean("turns", h.Turns);
        JsonReport.WriteNumber(writer, "yaw_rate_rad_per_s", h.YawRate);
        JsonReport.WriteNumber(writer, "scrub_moment_n_m", h.ScrubMoment);
        JsonReport.WriteNumber(writer, "battery_current_a", h.Current);
    }

    private static void WriteMode(Utf8JsonWriter writer, TurnMode m)
    {
        writer.WriteString("moves", TurnWords.Of(m.Part));
        JsonReport.WriteNumber(writer, "frequency_hz", m.Frequency);
        JsonReport.WriteNumber(writer, "growth_1_per_s", m.Growth);
        writer.WriteStartObject("shares");
        foreach ((TurnPart part, double share) in m.Shares)
        {
            JsonReport.WriteNumber(writer, TurnWords.Of(part).Replace(' ', '_'), share);
        }

        writer.WriteEndObject();
    }

    private static void WriteRing(Utf8JsonWriter writer, RingCheck c)
    {
        writer.WriteString("wheel", c.Wheel);
        JsonReport.WriteNumber(writer, "margin", c.Margin);
        writer.WriteBoolean("buzzes", c.Buzzes);
        JsonReport.WriteNumber(writer, "slip_speed_m_per_s", c.SlipSpeed);
        JsonReport.WriteNumber(writer, "load_n", c.Load);
        JsonReport.WriteNumber(writer, "friction_slope_s_per_m", c.FrictionSlope);
        JsonReport.WriteNumber(writer, "frequency_hz", c.Frequency);
    }

    private static void WriteSlipSpeed(Utf8JsonWriter writer, SlipSpeedPoint p)
    {
        JsonReport.WriteNumber(writer, "slip_speed_m_per_s", p.SlipSpeed);
        JsonReport.WriteNumber(writer, "ring_margin", p.RingMargin);
        JsonReport.WriteNumber(writer, "growth_1_per_s", p.Growth);
    }
}
