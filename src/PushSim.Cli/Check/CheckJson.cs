using PushSim.Analysis.Limits;
using PushSim.Scenarios.Reading;

namespace PushSim.Cli.Check;

/// <summary>The mistakes of files as a JSON document.</summary>
internal static class CheckJson
{
    public static void Write(
        Utf8JsonWriter writer, string verdict, List<string> doubts, List<Problem> problems, List<(string File, Plausibility Robot)> robots, List<(string File, DerivedValue Value)>? derived)
    {
        CommandJson.WriteHead(writer, "check", verdict, doubts);
        CommandJson.WriteRows(writer, "problems", problems, p =>
        {
            writer.WriteString("file", p.File);
            writer.WriteNumber("line", p.Line);
            writer.WriteNumber("column", p.Column);
            writer.WriteString("severity", p.Severity == Severity.Error ? "error" : "warning");
            writer.WriteString("message", p.Message);
            writer.WriteString("help", p.Help);
        });
        CommandJson.WriteRows(writer, "plausibility", robots, x =>
        {
            (string file, Plausibility p) = x;
            writer.WriteString("file", file);
            writer.WriteString("robot", p.Robot);
            CommandJson.WriteNumber(writer, "throttle", p.Throttle);
            CommandJson.WriteNumber(writer, "top_speed_m_per_s", p.TopSpeed);
            CommandJson.WriteNumber(writer, "pull_force_n", p.Pull);
            CommandJson.WriteNumber(writer, "motor_force_n", p.MotorForce);
            CommandJson.WriteNumber(writer, "tyre_force_n", p.TyreForce);
            CommandJson.WriteNumber(writer, "weight_n", p.Weight);
            CommandJson.WriteNumber(writer, "first_metre_s", p.FirstMetre);
            CommandJson.WriteNumber(writer, "current_a", p.Current);
        });
        if (derived is not null)
        {
            CommandJson.WriteRows(writer, "derived", derived, x =>
            {
                (string file, DerivedValue value) = x;
                writer.WriteString("file", file);
                writer.WriteString("text", value.Text);
                writer.WriteString("error", value.Error);
            });
        }
    }
}
