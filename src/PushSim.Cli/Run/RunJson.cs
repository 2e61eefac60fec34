using PushSim.Analysis.Fit;
using PushSim.Binding;
using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>A run as a JSON document.</summary>
internal static class RunJson
{
    public static string Of(RunResult result, double milliseconds, TyreAnswers? tyres = null, TurnMap? map = null) => JsonReport.Write(writer =>
    {
        JsonReport.WriteHead(writer, "run", RunWords.Verdict(result), RunWords.Warnings(result));
        RunAnswers a = result.Answers;
        writer.WriteString("scenario", result.Scenario.Name);
        writer.WriteString("status", result.Status.ToString().ToLowerInvariant());
        WriteShove(writer, result);
        Number("pull_breakaway_n", a.PullBreakaway);
        Number("pull_plateau_n", a.PullPlateau);
        writer.WriteString("limited_by", BindingTable.PartKey(a.LimitedBy));
        if (MeasuredOverlay.Of(result) is { } measured)
        {
            Number("measured_pull_breakaway_n", measured.Breakaway);
            Number("measured_pull_plateau_n", measured.Plateau);
        }

        Number("top_speed_m_per_s", a.TopSpeed);
        Number("time_to_90_percent_speed_s", a.TimeTo90PercentSpeed);
        Number("time_to_1_m_s", a.TimeToOneMetre);
        Number("stop_distance_m", a.StopDistance);
        Number("yaw_rate_rad_per_s", a.YawRate);
        Number("effective_track_ratio", a.EffectiveTrackRatio);
        Number("scrub_moment_n_m", a.ScrubMoment);
        Number("chatter_hz", a.Chatter);
        Number("wear_mm3", a.Wear * 1e9);
        Number("push_peak_n", a.PushPeak);
        Number("push_plateau_n", a.PushPlateau);
        Number("travel_m", a.Travel);
        Number("peak_battery_current_a", a.PeakBatteryCurrent);
        Number("lowest_battery_voltage_v", a.LowestBatteryVoltage);
        Number("peak_winding_temperature_degc", a.PeakWindingTemperature);
        Number("charge_used_a_s", a.ChargeUsed);
        Number("energy_residual_ratio", result.EnergyResidualRatio);
        writer.WriteNumber("rhs_evaluations", result.RhsEvaluations);
        Number("simulation_ms", milliseconds);
        WriteLimits(writer, "limits", result.Limits);
        if (result.Opponent is OpponentRun opponent)
        {
            WriteOpponent(writer, opponent);
        }

        if (tyres is not null)
        {
            TyreJson.Write(writer, tyres);
        }

        if (result.Turning is not null)
        {
            TurnJson.Write(writer, result.Turning, TurnWords.Explain(result.Turning, result));
        }

        map?.WriteJson(writer);

        writer.WriteStartObject("energy");
        foreach (LedgerEntry entry in result.Ledger)
        {
            Number(entry.Key, entry.Joule);
        }

        writer.WriteEndObject();

        void Number(string key, double? value) => JsonReport.WriteNumber(writer, key, value);
    });

    private static void WriteShove(Utf8JsonWriter writer, RunResult result)
    {
        ShoveOutcome? shove = result.Shove;
        writer.WriteString("winner", shove is null ? null : shove.Winner switch
        {
            0 => result.Scenario.Robot.Name,
            1 => result.Scenario.Opponent!.Robot.Name,
            _ => "stalemate",
        });
        JsonReport.WriteNumber(writer, "margin_m", shove is null ? null : Math.Abs(shove.GroundGained));
        if (shove?.TooCloseToCall is bool close)
        {
            writer.WriteBoolean("too_close_to_call", close);
            writer.WriteString("too_close_reason", RunWords.TooClose(result));
        }
        else
        {
            writer.WriteNull("too_close_to_call");
        }

        if (shove is not null)
        {
            writer.WriteString("ending", shove.Ending.ToString().ToLowerInvariant());
            JsonReport.WriteNumber(writer, "ended_at_s", shove.EndTime);
            JsonReport.WriteNumber(writer, "first_contact_s", shove.FirstContact);
            JsonReport.WriteNumber(writer, "gives_ground_at_s", shove.GivesGroundAt);
            JsonReport.WriteNumber(writer, "ground_gained_m", shove.GroundGained);
            JsonReport.WriteNumber(writer, "ground_speed_m_per_s", shove.GroundSpeed);
            JsonReport.WriteNumber(writer, "turned_aside_rad", shove.TurnedAside.First);
        }
    }

    private static void WriteLimits(Utf8JsonWriter writer, string key, IReadOnlyList<BindingSpan> limits)
    {
        writer.WriteStartArray(key);
        foreach (BindingSpan span in limits)
        {
            writer.WriteStartObject();
            JsonReport.WriteNumber(writer, "from_s", span.From);
            JsonReport.WriteNumber(writer, "to_s", span.To);
            writer.WriteString("limit", BindingTable.Key(span.Kinds[0]));
            writer.WriteStartArray("limits");
            foreach (BindingKind kind in span.Kinds)
            {
                writer.WriteStringValue(BindingTable.Key(kind));
            }

            writer.WriteEndArray();
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
    }

    private static void WriteOpponent(Utf8JsonWriter writer, OpponentRun opponent)
    {
        RunAnswers a = opponent.Answers;
        writer.WriteStartObject("opponent");
        writer.WriteString("name", opponent.Robot.Name);
        writer.WriteString("limited_by", BindingTable.PartKey(a.LimitedBy));
        JsonReport.WriteNumber(writer, "chatter_hz", a.Chatter);
        JsonReport.WriteNumber(writer, "wear_mm3", a.Wear * 1e9);
        JsonReport.WriteNumber(writer, "peak_battery_current_a", a.PeakBatteryCurrent);
        JsonReport.WriteNumber(writer, "lowest_battery_voltage_v", a.LowestBatteryVoltage);
        JsonReport.WriteNumber(writer, "peak_winding_temperature_degc", a.PeakWindingTemperature);
        JsonReport.WriteNumber(writer, "charge_used_a_s", a.ChargeUsed);
        WriteLimits(writer, "limits", opponent.Limits);
        writer.WriteEndObject();
    }
}
