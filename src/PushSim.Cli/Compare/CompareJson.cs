namespace PushSim.Cli.Compare;

/// <summary>A comparison as a JSON document.</summary>
internal static class CompareJson
{
    public static string Of(CompareResult result) => CommandJson.Write(writer =>
    {
        CommandJson.WriteHead(writer, "compare", result.Verdict, result.Warnings);
        writer.WriteString("scenario", result.Run.Scenario.Name);
        writer.WriteString("status", result.Run.Status.ToString().ToLowerInvariant());
        writer.WriteString("replay", result.IsByWheels ? "wheels" : "commands");
        CommandJson.WriteNumber(writer, "judged_from_s", result.From);
        CommandJson.WriteNumber(writer, "judged_to_s", result.Log.Time[^1]);
        writer.WriteNumber("runs", result.Runs);
        CommandJson.WriteRows(writer, "channels", result.Errors, e =>
        {
            writer.WriteString("name", e.Channel.Name);
            writer.WriteString("unit", e.Channel.Unit);
            CommandJson.WriteNumber(writer, "rms", e.Rms);
            CommandJson.WriteNumber(writer, "worst", e.Worst);

            // whether its first part served to find values
            writer.WriteBoolean("identified", result.Identified.Count > 0);
            writer.WriteString("column", e.Channel.Column);
            CommandJson.WriteNumber(writer, "worst_at_s", e.WorstAt);
            CommandJson.WriteNumber(writer, "range", e.Spread);
        });
        CommandJson.WriteRows(writer, "values", result.Identified, v =>
        {
            writer.WriteString("key", v.Key);
            writer.WriteString("unit", v.Unit);
            CommandJson.WriteNumber(writer, "before", v.Before);
            CommandJson.WriteNumber(writer, "value", v.After);
            writer.WriteBoolean("at_bound", v.IsAtBound);
        });
        CommandJson.WriteTexts(writer, "notes", result.Notes);
    });
}
