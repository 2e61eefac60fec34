using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Keys;

namespace PushSim.Cli.Explain;

/// <summary>Keys as a JSON document.</summary>
internal static class ExplainJson
{
    public static void Write(Utf8JsonWriter writer, string verdict, IReadOnlyList<KeyMatch> matches, IReadOnlyList<(string Section, string Advice)> others)
    {
        JsonReport.WriteHead(writer, "explain", verdict, []);
        writer.WriteStartArray("keys");
        foreach (KeyMatch match in matches)
        {
            KeyDefinition key = match.Key;
            writer.WriteStartObject();
            writer.WriteString("path", match.Path);
            writer.WriteString("file", match.Section.FileWord);
            writer.WriteString("table", match.Section.Key is null ? "" : match.Section.Name);
            writer.WriteString("key", key.Name);
            writer.WriteString("meaning", key.Meaning);
            writer.WriteString("takes", KeyText.Takes(key));
            writer.WriteString("unit_family", KeyText.UnitFamily(key));
            Texts(writer, "units", KeyText.UnitNames(key));
            Texts(writer, "choices", key.Choices);
            writer.WriteString("si_unit", KeyText.SiUnit(key));
            Bound(writer, "allowed_min", key.Min);
            Bound(writer, "allowed_max", key.Max);
            Bound(writer, "usual_min", key.UsualMin);
            Bound(writer, "usual_max", key.UsualMax);
            writer.WriteBoolean("required", key.IsRequired);
            writer.WriteString("default", key.Default);
            writer.WriteString("example", KeyText.Example(key, match.Section));
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        JsonReport.WriteRows(writer, "other_names", others, o =>
        {
            writer.WriteString("table", o.Section);
            writer.WriteString("advice", o.Advice);
        });
    }

    private static void Texts(Utf8JsonWriter writer, string name, IReadOnlyList<string> texts)
    {
        writer.WriteStartArray(name);
        foreach (string text in texts)
        {
            writer.WriteStringValue(text);
        }

        writer.WriteEndArray();
    }

    private static void Bound(Utf8JsonWriter writer, string name, double value)
    {
        if (double.IsFinite(value))
        {
            writer.WriteNumber(name, value);
        }
        else
        {
            writer.WriteNull(name);
        }
    }
}
