namespace PushSim.Cli.Fit;

/// <summary>What each tyre makes of the robot, as CSV.</summary>
internal static class MeaningCsv
{
    public static void Write(Stream stream, MeaningResult r) =>
        CsvTable.Write(stream, [.. MeaningColumns.All.Select(c => c.Key)], r.Tyres.Select(t => (string[])[.. MeaningColumns.All.Select(c => Cell(c.Value(r, t)))]));

    private static string Cell(object? value) => value switch
    {
        null => "",
        string text => SafeCell.Of(text),
        bool flag => flag ? "yes" : "no",
        _ => CsvTable.Number(Convert.ToDouble(value, CultureInfo.InvariantCulture)),
    };
}
