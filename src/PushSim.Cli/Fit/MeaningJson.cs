using PushSim.Words.Fits;
using PushSim.Words.Wear;

namespace PushSim.Cli.Fit;

/// <summary>What each tyre makes of the robot, in the JSON document of a fit.</summary>
internal static class MeaningJson
{
    public static void Write(Utf8JsonWriter w, MeaningResult r)
    {
        w.WriteStartObject("on_the_robot");
        w.WriteString("robot", r.Robot);
        w.WriteString("opponent", r.Opponent.Length > 0 ? r.Opponent : null);
        w.WriteString("contest", r.Opponent.Length > 0 ? r.Contest : null);
        w.WriteNumber("shoves", r.Opponent.Length > 0 ? r.Shoves : 0);
        w.WriteNumber("seed", r.Seed);
        w.WriteString("interval", "Wilson score, 95 %");
        w.WriteString("wear_limits", WearWords.Limits);
        CommandJson.WriteNumber(w, "computed_in_s", r.Seconds);
        CommandJson.WriteRows(w, "tyres", r.Tyres, t =>
        {
            foreach (MeaningColumns c in MeaningColumns.All.Where(c => c.IsInJson))
            {
                WriteValue(w, c.Key, c.Value(r, t));
            }

            ChatterJson.Write(w, t.Chatter);
            GripJson.Write(w, t.Life);
            w.WriteBoolean("material_known", t.Tyre.IsMaterialKnown);
            w.WriteNumber("failed_shoves", t.Shoves?.Failed ?? 0);
        });
        CommandJson.WriteRows(w, "left_out", r.LeftOut, t =>
        {
            w.WriteString("tyre", t.Tyre);
            w.WriteString("reason", t.Reason);
        });
        w.WriteString("limits", r.Tyres.Count > 0 ? MeaningWords.Limits([.. r.Tyres.Where(t => !t.IsStronger)], r.Robot) : null);
        w.WriteString("stronger_motor", r.Stronger is null || r.Tyres.Count == 0 ? null : MeaningWords.Gain(r));
        w.WriteEndObject();
    }

    private static void WriteValue(Utf8JsonWriter w, string key, object? value)
    {
        switch (value)
        {
            case string text:
                w.WriteString(key, text);
                break;
            case bool flag:
                w.WriteBoolean(key, flag);
                break;
            default:
                CommandJson.WriteNumber(w, key, value is null ? null : Convert.ToDouble(value, CultureInfo.InvariantCulture));
                break;
        }
    }
}
