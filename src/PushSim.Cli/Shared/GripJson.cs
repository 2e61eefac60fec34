using PushSim.Analysis.Wear;

namespace PushSim.Cli.Shared;

/// <summary>Grip over runs without wiping, for scripts; null where it is not known.</summary>
internal static class GripJson
{
    public static void Write(Utf8JsonWriter writer, GripLife? life)
    {
        writer.WriteBoolean("grip_over_runs_known", life is not null);
        JsonReport.WriteNumber(writer, "grip_clean", life?.Clean);
        JsonReport.WriteNumber(writer, "grip_after_1_run", life?.AfterOne);
        JsonReport.WriteNumber(writer, "grip_after_6_runs", life?.AfterSix);
        JsonReport.WriteNumber(writer, "wipe_every_runs", life?.WipeEvery);
        JsonReport.WriteNumber(writer, "wipe_at_grip_loss_share", life?.GripLoss);
        JsonReport.WriteNumber(writer, "floor_dust", life?.Dust);
    }
}
