using PushSim.Analysis.Turning;

namespace PushSim.Cli.Run;

/// <summary>A stability map as the object "map" of the run's JSON document.</summary>
internal static class TurnMapJson
{
    public static void Write(Utf8JsonWriter writer, TurnMap m)
    {
        writer.WriteStartObject("map");
        WriteAxis("x", m.X, m.Map.X);
        WriteAxis("y", m.Y, m.Map.Y);
        writer.WriteNumber("points_left_out", m.Map.LeftOut);
        writer.WriteNumber("simulated_points", m.Map.Agreement.All);
        writer.WriteNumber("simulated_points_that_agree", m.Map.Agreement.Agree);
        WriteRows("growth_1_per_s", p => p.Growth);
        WriteRows("ring_margin", p => p.RingMargin);
        writer.WriteStartArray("chatter");
        for (int j = 0; j < m.Map.Y.Length; j++)
        {
            CommandJson.WriteTexts(writer, null, Enumerable.Range(0, m.Map.X.Length).Select(i => m.Map.Points[i, j] is { } p ? ChatterWords.Key(p.Chatter) : null));
        }

        writer.WriteEndArray();
        writer.WriteEndObject();

        void WriteAxis(string name, MapAxis axis, double[] values)
        {
            writer.WriteString(name + "_key", axis.Key);
            writer.WriteString(name + "_unit", axis.Unit);
            CommandJson.WriteNumbers(writer, name, values);
        }

        void WriteRows(string name, Func<StabilityPoint, double> of) => CommandJson.WriteNumbers(
            writer, name, Enumerable.Range(0, m.Map.Y.Length).Select(j => Enumerable.Range(0, m.Map.X.Length).Select(i => m.Map.Points[i, j] is { } p ? of(p) : double.NaN)));
    }
}
