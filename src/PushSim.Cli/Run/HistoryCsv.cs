namespace PushSim.Cli.Run;

/// <summary>The time history as CSV: one row a sample, or a row each hundredth of a second.</summary>
internal static class HistoryCsv
{
    // Rows of a thinned history: enough for a curve, a tenth of the usual samples [1/s].
    private const double ThinRate = 100.0;

    /// <summary>Writes it.</summary>
    /// <param name="result">The run.</param>
    /// <param name="stream">Receives the file.</param>
    /// <param name="isWhole">Whether every sample has a row; else one each hundredth of a second, and the last.</param>
    /// <param name="cancel">Stops it.</param>
    public static void Write(RunResult result, Stream stream, bool isWhole, CancellationToken cancel)
    {
        Series[] own = [result.Time, .. result.Trace.All];
        IReadOnlyList<Series> others = result.Opponent?.Trace.All ?? [];
        CsvTable.Write(stream, [.. own.Select(s => s.Key), .. others.Select(s => "opponent_" + s.Key)], Rows(result, isWhole).Select(i =>
        {
            cancel.ThrowIfCancellationRequested();
            return (string[])[.. own.Concat(others).Select(s => CsvTable.Number(s[i]))];
        }));
    }

    public static void WriteReadings(RunResult result, Stream stream) => CsvTable.Write(
        stream,
        ["time_s", "force_n"],
        result.CellReadings.Select(r => (string[])[CsvTable.Number(r.Time), CsvTable.Number(r.Force)]));

    private static IEnumerable<int> Rows(RunResult result, bool isWhole)
    {
        int count = result.Time.Length;
        int every = isWhole ? 1 : Math.Max(1, (int)Math.Round(result.Scenario.Numerics.SampleRate / ThinRate));
        return Enumerable.Range(0, count).Where(i => i % every == 0 || i == count - 1);
    }
}
