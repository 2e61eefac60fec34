using System.Text.Json;
using PushSim.Cli.Shared;
using PushSim.Scenarios.Reading;
using PushSim.Scenarios.Sources;

namespace PushSim.Cli.Check;

/// <summary>The mistakes of files as a JSON document.</summary>
internal static class CheckJson
{
    public static void Write(Utf8JsonWriter writer, string verdict, List<Problem> problems, List<(string File, DerivedValue Value)>? derived)
    {
        JsonReport.WriteHead(writer, "check", verdict, []);
        writer.WriteStartArray("problems");
        foreach (Problem p in problems)
        {
            writer.WriteStartObject();
            writer.WriteString("file", p.File);
            writer.WriteNumber("line", p.Line);
            writer.WriteNumber("column", p.Column);
            writer.WriteString("severity", p.Severity == Severity.Error ? "error" : "warning");
            writer.WriteString("message", p.Message);
            writer.WriteString("help", p.Help);
            writer.WriteEndObject();
        }

        writer.WriteEndArray();
        if (derived is not null)
        {
            writer.WriteStartArray("derived");
            foreach ((string file, DerivedValue value) in derived)
            {
                writer.WriteStartObject();
                writer.WriteString("file", file);
                writer.WriteString("text", value.Text);
                writer.WriteString("error", value.Error);
                writer.WriteEndObject();
            }

            writer.WriteEndArray();
        }
    }
}
