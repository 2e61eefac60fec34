namespace PushSim.Cli.Shared;

/// <summary>The best throttle of a push in a JSON document.</summary>
internal static class ThrottleJson
{
    /// <summary>Writes it as an object; null for none.</summary>
    public static void Write(Utf8JsonWriter writer, string key, BestThrottle? best)
    {
        if (best is null)
        {
            writer.WriteNull(key);
            return;
        }

        writer.WriteStartObject(key);
        CommandJson.WriteNumber(writer, "throttle_ratio", best.Throttle);
        CommandJson.WriteNumber(writer, "throttle_low_ratio", best.ThrottleLow);
        CommandJson.WriteNumber(writer, "throttle_high_ratio", best.ThrottleHigh);
        CommandJson.WriteNumber(writer, "push_n", best.Push);
        CommandJson.WriteNumber(writer, "commanded_throttle_ratio", best.Asked);
        CommandJson.WriteNumber(writer, "commanded_push_n", best.AskedPush);
        CommandJson.WriteNumber(writer, "worth_ratio", best.Worth);
        CommandJson.WriteNumber(writer, "worth_low_ratio", best.WorthLow);
        CommandJson.WriteNumber(writer, "worth_high_ratio", best.WorthHigh);
        writer.WriteEndObject();
    }
}
