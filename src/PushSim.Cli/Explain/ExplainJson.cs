using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Explain;

/// <summary>Keys as a JSON document.</summary>
internal static class ExplainJson
{
    public static void Write(Utf8JsonWriter writer, string verdict, IReadOnlyList<KeyMatch> matches, IReadOnlyList<(string Section, string Advice)> others)
    {
        CommandJson.WriteHead(writer, "explain", verdict, []);
        CommandJson.WriteRows(writer, "keys", matches, match =>
        {
            KeyDefinition key = match.Key;
            writer.WriteString("path", match.Path);
            writer.WriteString("file", match.Section.FileWord);
            writer.WriteString("table", match.Section.Key is null ? "" : match.Section.Name);
            writer.WriteString("key", key.Name);
            writer.WriteString("meaning", key.Meaning);
            writer.WriteString("takes", KeyText.Takes(key));
            writer.WriteString("unit_family", KeyText.UnitFamily(key));
            CommandJson.WriteTexts(writer, "units", KeyText.UnitNames(key));
            CommandJson.WriteTexts(writer, "choices", key.Choices);
            writer.WriteString("si_unit", KeyText.SiUnit(key));
            CommandJson.WriteNumber(writer, "allowed_min", key.Min);
            CommandJson.WriteNumber(writer, "allowed_max", key.Max);
            CommandJson.WriteNumber(writer, "usual_min", key.UsualMin);
            CommandJson.WriteNumber(writer, "usual_max", key.UsualMax);
            writer.WriteBoolean("required", key.IsRequired);
            writer.WriteString("label", key.Label);
            writer.WriteString("default", key.Default);
            writer.WriteString("example", KeyText.Example(key, match.Section));
        });
        CommandJson.WriteRows(writer, "other_names", others, o =>
        {
            writer.WriteString("table", o.Section);
            writer.WriteString("advice", o.Advice);
        });
    }
}
