namespace PushSim.Cli.Advise;

/// <summary>Changes as CSV, in the order that was asked for.</summary>
internal static class AdviseCsv
{
    public static void Write(Stream stream, AdviceResult result, AdviceOrder order) => CsvTable.Write(
        stream,
        ["change", "kind", "win_points", "win_points_low", "win_points_high", "grams", "price", "matches"],
        order.Of(result).Select(c => (string[])[SafeCell.Of(c.Change.Name), c.Change.Kind, CsvTable.Number(100.0 * c.Gain.Value), CsvTable.Number(100.0 * c.Gain.Low), CsvTable.Number(100.0 * c.Gain.High), Known(c.Change.Grams), Known(c.Change.Price), CsvTable.Number(c.Matches)]));

    private static string Known(double? value) => value is double v ? CsvTable.Number(v) : "";
}
