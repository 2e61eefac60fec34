namespace PushSim.Cli.Run;

/// <summary>The time history as CSV: one row a sample.</summary>
internal static class HistoryCsv
{
    public static void Write(RunResult result, Stream stream, CancellationToken cancel)
    {
        Series[] own = [result.Time, .. result.Trace.All];
        IReadOnlyList<Series> others = result.Opponent?.Trace.All ?? [];
        CsvTable.Write(stream, [.. own.Select(s => s.Key), .. others.Select(s => "opponent_" + s.Key)], Enumerable.Range(0, result.Time.Length).Select(i =>
        {
            cancel.ThrowIfCancellationRequested();
            return (string[])[.. own.Concat(others).Select(s => CsvTable.Number(s[i]))];
        }));
    }

    public static void WriteReadings(RunResult result, Stream stream) => CsvTable.Write(
        stream,
        ["time_s", "force_n"],
        result.CellReadings.Select(r => (string[])[CsvTable.Number(r.Time), CsvTable.Number(r.Force)]));
}
