using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Explain;

/// <summary>Keys as a JSON document.</summary>
internal static class ExplainJson
{
    public static void Write(Utf8JsonWriter writer, string verdict, IReadOnlyList<KeyMatch> matches, IReadOnlyList<(string Section, string Advice)> others)
    {
        JsonReport.WriteHead(writer, "explain", verdict, []);
        JsonReport.WriteRows(writer, "keys", matches, match =>
        {
            KeyDefinition key = match.Key;
            writer.WriteString("path", match.Path);
            writer.WriteString("file", match.Section.FileWord);
            writer.WriteString("table", match.Section.Key is null ? "" : match.Section.Name);
            writer.WriteString("key", key.Name);
            writer.WriteString("meaning", key.Meaning);
            writer.WriteString("takes", KeyText.Takes(key));
            writer.WriteString("unit_family", KeyText.UnitFamily(key));
            JsonReport.WriteTexts(writer, "units", KeyText.UnitNames(key));
            JsonReport.WriteTexts(writer, "choices", key.Choices);
            writer.WriteString("si_unit", KeyText.SiUnit(key));
            JsonReport.WriteNumber(writer, "allowed_min", key.Min);
            JsonReport.WriteNumber(writer, "allowed_max", key.Max);
            JsonReport.WriteNumber(writer, "usual_min", key.UsualMin);
            JsonReport.WriteNumber(writer, "usual_max", key.UsualMax);
            writer.WriteBoolean("required", key.IsRequired);
            writer.WriteString("label", key.Label);
            writer.WriteString("default", key.Default);
            writer.WriteString("example", KeyText.Example(key, match.Section));
        });
        JsonReport.WriteRows(writer, "other_names", others, o =>
        {
            writer.WriteString("table", o.Section);
            writer.WriteString("advice", o.Advice);
        });
    }
}
