namespace PushSim.Cli.Compare;

/// <summary>A comparison as a JSON document.</summary>
internal static class CompareJson
{
    public static string Of(CompareResult result) => JsonReport.Write(writer =>
    {
        JsonReport.WriteHead(writer, "compare", result.Verdict, result.Warnings);
        writer.WriteString("scenario", result.Run.Scenario.Name);
        writer.WriteString("status", result.Run.Status.ToString().ToLowerInvariant());
        writer.WriteString("replay", result.IsByWheels ? "wheels" : "commands");
        JsonReport.WriteNumber(writer, "judged_from_s", result.From);
        JsonReport.WriteNumber(writer, "judged_to_s", result.Log.Time[^1]);
        writer.WriteNumber("runs", result.Runs);
        JsonReport.WriteRows(writer, "channels", result.Errors, e =>
        {
            writer.WriteString("name", e.Channel.Name);
            writer.WriteString("unit", e.Channel.Unit);
            JsonReport.WriteNumber(writer, "rms", e.Rms);
            JsonReport.WriteNumber(writer, "worst", e.Worst);

            // whether its first part served to find values
            writer.WriteBoolean("identified", result.Identified.Count > 0);
            writer.WriteString("column", e.Channel.Column);
            JsonReport.WriteNumber(writer, "worst_at_s", e.WorstAt);
            JsonReport.WriteNumber(writer, "range", e.Spread);
        });
        JsonReport.WriteRows(writer, "values", result.Identified, v =>
        {
            writer.WriteString("key", v.Key);
            writer.WriteString("unit", v.Unit);
            JsonReport.WriteNumber(writer, "before", v.Before);
            JsonReport.WriteNumber(writer, "value", v.After);
            writer.WriteBoolean("at_bound", v.IsAtBound);
        });
        JsonReport.WriteTexts(writer, "notes", result.Notes);
    });
}
