using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Check;

/// <summary>The mistakes of files as a JSON document.</summary>
internal static class CheckJson
{
    public static void Write(Utf8JsonWriter writer, string verdict, List<Problem> problems, List<(string File, DerivedValue Value)>? derived)
    {
        JsonReport.WriteHead(writer, "check", verdict, []);
        JsonReport.WriteRows(writer, "problems", problems, p =>
        {
            writer.WriteString("file", p.File);
            writer.WriteNumber("line", p.Line);
            writer.WriteNumber("column", p.Column);
            writer.WriteString("severity", p.Severity == Severity.Error ? "error" : "warning");
            writer.WriteString("message", p.Message);
            writer.WriteString("help", p.Help);
        });
        if (derived is not null)
        {
            JsonReport.WriteRows(writer, "derived", derived, x =>
            {
                (string file, DerivedValue value) = x;
                writer.WriteString("file", file);
                writer.WriteString("text", value.Text);
                writer.WriteString("error", value.Error);
            });
        }
    }
}
