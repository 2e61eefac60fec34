namespace PushSim.Cli.Advise;

/// <summary>Advice as a JSON document.</summary>
internal static class AdviseJson
{
    public static string Of(AdviceResult r, AdviceOrder order) => CommandJson.Write(writer =>
    {
        CommandJson.WriteHead(writer, "advise", AdviseText.Verdict(r, order), r.Notes);
        CommandJson.WriteNumber(writer, "win_share", r.WinShare.Value);
        CommandJson.WriteNumber(writer, "win_share_low", r.WinShare.Low);
        CommandJson.WriteNumber(writer, "win_share_high", r.WinShare.High);
        writer.WriteNumber("matches", r.Matches);
        CommandJson.WriteRows(writer, "changes", order.Of(r), c =>
        {
            writer.WriteString("change", c.Change.Name);
            writer.WriteString("kind", c.Change.Kind);
            CommandJson.WriteNumber(writer, "win_points", 100.0 * c.Gain.Value);
            CommandJson.WriteNumber(writer, "win_points_low", 100.0 * c.Gain.Low);
            CommandJson.WriteNumber(writer, "win_points_high", 100.0 * c.Gain.High);
            CommandJson.WriteNumber(writer, "grams", c.Change.Grams);
            CommandJson.WriteNumber(writer, "price", c.Change.Price);
            writer.WriteNumber("matches", c.Matches);
        });
        writer.WriteString("order", order.Name);
        writer.WriteNumber("pairs_tried", r.PairsTried);
        CommandJson.WriteRows(writer, "pairs", r.Pairs, p =>
        {
            writer.WriteString("first", p.First.Name);
            writer.WriteString("second", p.Second.Name);
            CommandJson.WriteNumber(writer, "win_points", 100.0 * p.Together.Value);
            CommandJson.WriteNumber(writer, "win_points_low", 100.0 * p.Together.Low);
            CommandJson.WriteNumber(writer, "win_points_high", 100.0 * p.Together.High);
            CommandJson.WriteNumber(writer, "beyond_first_points", 100.0 * p.BeyondFirst.Value);
            CommandJson.WriteNumber(writer, "beyond_first_points_low", 100.0 * p.BeyondFirst.Low);
            CommandJson.WriteNumber(writer, "beyond_first_points_high", 100.0 * p.BeyondFirst.High);
            CommandJson.WriteNumber(writer, "beyond_sum_points", 100.0 * p.Beyond.Value);
            CommandJson.WriteNumber(writer, "beyond_sum_points_low", 100.0 * p.Beyond.Low);
            CommandJson.WriteNumber(writer, "beyond_sum_points_high", 100.0 * p.Beyond.High);
        });
        CommandJson.WriteRows(writer, "measurements", r.Measurements, m =>
        {
            writer.WriteString("what", m.What);
            CommandJson.WriteNumber(writer, "narrows_points", 100.0 * m.Narrows.Value);
            CommandJson.WriteNumber(writer, "narrows_points_low", 100.0 * m.Narrows.Low);
            CommandJson.WriteNumber(writer, "narrows_points_high", 100.0 * m.Narrows.High);
            CommandJson.WriteNumber(writer, "minutes", m.Minutes);
        });
    });
}
