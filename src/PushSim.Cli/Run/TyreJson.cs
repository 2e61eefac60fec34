using PushSim.Analysis.Wear;
using PushSim.Words.Wear;

namespace PushSim.Cli.Run;

/// <summary>The tyres' part of a run's JSON document: tyre_wear, tyre_grip, tyre_ranking; each only where it applies.</summary>
internal static class TyreJson
{
    public static void Write(Utf8JsonWriter writer, TyreAnswers answers)
    {
        if (answers.Wear is WearResult wear)
        {
            WriteWear(writer, wear);
        }

        if (answers.Grip is GripSeries grip)
        {
            writer.WriteStartObject("tyre_grip");
            writer.WriteString("limits", WearWords.GripLimits);
            WriteGrip(writer, grip);
            writer.WriteEndObject();
        }

        if (answers.Ranking.Count > 0)
        {
            WriteRanking(writer, answers.Ranking);
        }
    }

    private static void WriteWear(Utf8JsonWriter writer, WearResult report)
    {
        writer.WriteStartObject("tyre_wear");
        writer.WriteString("limits", WearWords.Limits);
        Number(writer, "match_s", report.MatchTime);
        Number(writer, "turn_s", report.TurnTime);
        Number(writer, "unevenness_ratio", report.Unevenness);
        CommandJson.WriteRows(writer, "wheels", report.Wheels, w =>
        {
            writer.WriteString("wheel", w.Wheel);
            writer.WriteString("tyre", w.Tyre);
            Number(writer, "run_wear_m3", w.Volume);
            Number(writer, "run_friction_work_j", w.FrictionWork);
            Span(writer, w, "turn", w.PerTurn);
            Span(writer, w, "minute", w.PerMinute);
            Span(writer, w, "match", w.PerMatch);
            Number(writer, "straight_metre_wear_m3", w.PerStraightMetre);
            Number(writer, "straight_metre_wear_most_m3", w.MostPerStraightMetre);
        });
        writer.WriteEndObject();
    }

    private static void Span(Utf8JsonWriter writer, WheelWear w, string span, double? volume)
    {
        Number(writer, span + "_wear_m3", volume);
        Number(writer, span + "_wear_kg", w.Mass(volume));
        Number(writer, span + "_wear_depth_m", w.Depth(volume));
    }

    private static void WriteGrip(Utf8JsonWriter writer, GripSeries grip)
    {
        Number(writer, "grip_loss_share", grip.GripLoss);
        Number(writer, "runs_until_loss", grip.RunsUntilLoss);
        CommandJson.WriteRows(writer, "runs", grip.Runs, r =>
        {
            writer.WriteNumber("run", r.Run);
            Number(writer, "grip_share", r.Grip);
            Number(writer, "friction", r.Friction);
            writer.WriteBoolean("is_cleaned", r.IsCleaned);
            CommandJson.WriteNumbers(writer, "wheel_grip_shares", r.WheelGrip);
        });
    }

    private static void WriteRanking(Utf8JsonWriter writer, IReadOnlyList<RankedTyre> ranking)
    {
        writer.WriteString("tyre_ranking_limits", WearWords.Limits);
        CommandJson.WriteRows(writer, "tyre_ranking", ranking, r =>
        {
            writer.WriteString("material", r.Name);
            writer.WriteString("left_out_because", RunWords.Cause(r.Stop));
            writer.WriteBoolean("closer_look_cut", r.IsCut);
            Number(writer, "match_wear_depth_m", r.DepthPerMatch);
            Number(writer, "match_wear_m3", r.VolumePerMatch);
            Number(writer, "match_wear_kg", r.MassPerMatch);
            Number(writer, "clean_friction", r.CleanFriction);
            Number(writer, "friction_after_runs", r.Grip?.Runs[^1].Friction);
            Number(writer, "runs_until_loss", r.Grip?.RunsUntilLoss);
            Number(writer, "yaw_rate_rad_per_s", r.Answers?.YawRate);
            GripJson.Write(writer, r.Life);
            Number(writer, "chatter_hz", r.Chatter.Frequency);
            ChatterJson.Write(writer, r.Chatter);
        });
    }

    private static void Number(Utf8JsonWriter writer, string key, double? value) => CommandJson.WriteNumber(writer, key, value);
}
