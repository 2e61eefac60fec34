using System.Text;
using System.Text.Encodings.Web;
using System.Text.Json;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>JSON documents for scripts: snake_case keys with the SI unit as last part.</summary>
internal static class JsonReport
{
    private const int SchemaVersion = 1;

    public static string Write(Action<Utf8JsonWriter> body)
    {
        using var stream = new MemoryStream();
        var options = new JsonWriterOptions { Indented = true, Encoder = JavaScriptEncoder.UnsafeRelaxedJsonEscaping };
        using (var writer = new Utf8JsonWriter(stream, options))
        {
            writer.WriteStartObject();
            body(writer);
            writer.WriteEndObject();
        }

        return Encoding.UTF8.GetString(stream.ToArray());
    }

    public static void WriteHead(Utf8JsonWriter writer, string command, string verdict, IReadOnlyList<string> warnings)
    {
        writer.WriteNumber("schema_version", SchemaVersion);
        writer.WriteString("command", command);
        writer.WriteString("verdict", verdict);
        writer.WriteStartArray("warnings");
        foreach (string warning in warnings)
        {
            writer.WriteStringValue(warning);
        }

        writer.WriteEndArray();
    }

    public static string OfRun(RunResult result, double milliseconds) => Write(writer =>
    {
        WriteHead(writer, "run", result.Verdict, result.Warnings);
        RunAnswers a = result.Answers;
        writer.WriteString("scenario", result.Scenario.Name);
        writer.WriteString("status", result.Status.ToString().ToLowerInvariant());
        writer.WriteNull("winner");
        writer.WriteNull("margin_m");
        writer.WriteNull("too_close_to_call");
        Number("pull_breakaway_n", a.PullBreakaway);
        Number("pull_plateau_n", a.PullPlateau);
        writer.WriteString("limited_by", a.LimitedBy);
        Number("top_speed_m_per_s", a.TopSpeed);
        Number("time_to_90_percent_speed_s", a.TimeTo90PercentSpeed);
        Number("stop_distance_m", a.StopDistance);
        Number("yaw_rate_rad_per_s", a.YawRate);
        Number("effective_track_ratio", a.EffectiveTrackRatio);
        Number("scrub_moment_n_m", a.ScrubMoment);
        Number("chatter_hz", a.Chatter);
        Number("wear_mm3", a.Wear * 1e9);
        Number("travel_m", a.Travel);
        Number("peak_battery_current_a", a.PeakBatteryCurrent);
        Number("lowest_battery_voltage_v", a.LowestBatteryVoltage);
        Number("peak_winding_temperature_degc", a.PeakWindingTemperature);
        Number("charge_used_a_s", a.ChargeUsed);
        Number("energy_residual_ratio", result.EnergyResidualRatio);
        writer.WriteNumber("rhs_evaluations", result.RhsEvaluations);
        Number("simulation_ms", milliseconds);
        writer.WriteStartObject("energy");
        foreach (LedgerEntry entry in result.Ledger)
        {
            Number(entry.Key, entry.Joule);
        }

        writer.WriteEndObject();

        void Number(string key, double? value)
        {
            if (value is { } number && double.IsFinite(number))
            {
                writer.WriteNumber(key, number);
            }
            else
            {
                writer.WriteNull(key);
            }
        }
    });
}
