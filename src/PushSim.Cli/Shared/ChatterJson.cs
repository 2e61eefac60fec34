namespace PushSim.Cli.Shared;

/// <summary>Whether tyres chatter, for scripts; its frequency stands beside it as "chatter_hz".</summary>
internal static class ChatterJson
{
    public static void Write(Utf8JsonWriter writer, ChatterVerdict v)
    {
        writer.WriteString("chatter", ChatterWords.Key(v.Kind));
        writer.WriteString("chatter_unknown_because", v.Doubt == ChatterDoubt.None ? null : ChatterWords.Of(v.Doubt, v.NoModes));
        writer.WriteBoolean("chatter_needs_a_bump", v.IsLatent);
        writer.WriteString("chatter_fed_by", ChatterWords.Key(v.Feed));
        WriteChange(writer, "chatter_tipped_by", v.Tip);
        WriteChange(writer, "chatter_cure", v.Cure);
    }

    private static void WriteChange(Utf8JsonWriter writer, string key, ChatterChange? c)
    {
        if (c is null)
        {
            writer.WriteNull(key);
            return;
        }

        writer.WriteStartObject(key);
        writer.WriteString("tyre_key", ChatterWords.Key(c.Part));
        writer.WriteString("unit", ChatterWords.Unit(c.Part));
        CommandJson.WriteNumber(writer, "times", c.Factor);
        CommandJson.WriteNumber(writer, "from", c.From);
        CommandJson.WriteNumber(writer, "to", c.To);
        writer.WriteEndObject();
    }
}
