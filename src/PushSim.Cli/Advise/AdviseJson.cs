namespace PushSim.Cli.Advise;

/// <summary>Advice as a JSON document.</summary>
internal static class AdviseJson
{
    public static string Of(AdviceResult r, AdviceOrder order) => JsonReport.Write(writer =>
    {
        JsonReport.WriteHead(writer, "advise", AdviseText.Verdict(r, order), r.Notes);
        JsonReport.WriteNumber(writer, "win_share", r.WinShare.Value);
        JsonReport.WriteNumber(writer, "win_share_low", r.WinShare.Low);
        JsonReport.WriteNumber(writer, "win_share_high", r.WinShare.High);
        writer.WriteNumber("matches", r.Matches);
        JsonReport.WriteRows(writer, "changes", order.Of(r), c =>
        {
            writer.WriteString("change", c.Change.Name);
            writer.WriteString("kind", c.Change.Kind);
            JsonReport.WriteNumber(writer, "win_points", 100.0 * c.Gain.Value);
            JsonReport.WriteNumber(writer, "win_points_low", 100.0 * c.Gain.Low);
            JsonReport.WriteNumber(writer, "win_points_high", 100.0 * c.Gain.High);
            JsonReport.WriteNumber(writer, "grams", c.Change.Grams);
            JsonReport.WriteNumber(writer, "price", c.Change.Price);
            writer.WriteNumber("matches", c.Matches);
        });
        writer.WriteString("order", order.Name);
        writer.WriteNumber("pairs_tried", r.PairsTried);
        JsonReport.WriteRows(writer, "pairs", r.Pairs, p =>
        {
            writer.WriteString("first", p.First.Name);
            writer.WriteString("second", p.Second.Name);
            JsonReport.WriteNumber(writer, "win_points", 100.0 * p.Together.Value);
            JsonReport.WriteNumber(writer, "win_points_low", 100.0 * p.Together.Low);
            JsonReport.WriteNumber(writer, "win_points_high", 100.0 * p.Together.High);
            JsonReport.WriteNumber(writer, "beyond_first_points", 100.0 * p.BeyondFirst.Value);
            JsonReport.WriteNumber(writer, "beyond_first_points_low", 100.0 * p.BeyondFirst.Low);
            JsonReport.WriteNumber(writer, "beyond_first_points_high", 100.0 * p.BeyondFirst.High);
            JsonReport.WriteNumber(writer, "beyond_sum_points", 100.0 * p.Beyond.Value);
            JsonReport.WriteNumber(writer, "beyond_sum_points_low", 100.0 * p.Beyond.Low);
            JsonReport.WriteNumber(writer, "beyond_sum_points_high", 100.0 * p.Beyond.High);
        });
        JsonReport.WriteRows(writer, "measurements", r.Measurements, m =>
        {
            writer.WriteString("what", m.What);
            JsonReport.WriteNumber(writer, "narrows_points", 100.0 * m.Narrows.Value);
            JsonReport.WriteNumber(writer, "narrows_points_low", 100.0 * m.Narrows.Low);
            JsonReport.WriteNumber(writer, "narrows_points_high", 100.0 * m.Narrows.High);
            JsonReport.WriteNumber(writer, "minutes", m.Minutes);
        });
    });
}
