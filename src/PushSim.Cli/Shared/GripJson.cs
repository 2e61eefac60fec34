using PushSim.Analysis.Wear;

namespace PushSim.Cli.Shared;

/// <summary>Grip over runs without wiping, for scripts; null where it is not known.</summary>
internal static class GripJson
{
    public static void Write(Utf8JsonWriter writer, GripLife? life)
    {
        writer.WriteBoolean("grip_over_runs_known", life is not null);
        CommandJson.WriteNumber(writer, "grip_clean", life?.Clean);
        CommandJson.WriteNumber(writer, "grip_after_1_run", life?.AfterOne);
        CommandJson.WriteNumber(writer, "grip_after_6_runs", life?.AfterSix);
        CommandJson.WriteNumber(writer, "wipe_every_runs", life?.WipeEvery);
        CommandJson.WriteNumber(writer, "wipe_at_grip_loss_share", life?.GripLoss);
        CommandJson.WriteNumber(writer, "floor_dust", life?.Dust);
    }
}
