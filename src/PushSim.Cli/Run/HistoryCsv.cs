using PushSim.Cli.Shared;
using PushSim.Runs;

namespace PushSim.Cli.Run;

/// <summary>The time history as CSV: one row a sample.</summary>
internal static class HistoryCsv
{
    public static void Write(RunResult result, Stream stream, CancellationToken cancel)
    {
        (string Key, double[] Values)[] columns =
        [
            .. result.Channels.Select(c => (c.Key, c.Values)),
            .. result.Opponent?.Channels.Select(c => ("opponent_" + c.Key, c.Values)) ?? [],
        ];
        CsvTable.Write(stream, ["time_s", .. columns.Select(c => c.Key)], Enumerable.Range(0, result.Time.Length).Select(i =>
        {
            cancel.ThrowIfCancellationRequested();
            return (string[])[CsvTable.Number(result.Time[i]), .. columns.Select(c => CsvTable.Number(c.Values[i]))];
        }));
    }

    public static void WriteReadings(RunResult result, Stream stream) => CsvTable.Write(
        stream,
        ["time_s", "force_n"],
        result.CellReadings.Select(r => (string[])[CsvTable.Number(r.Time), CsvTable.Number(r.Force)]));
}
