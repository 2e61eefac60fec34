using PushSim.Analysis.Compare;

namespace PushSim.Cli.Compare;

/// <summary>Log and run side by side as CSV: of each quantity the log's value and the run's, in the unit of its name.</summary>
internal static class CompareCsv
{
    public static void Write(CompareResult result, Stream stream) => CsvTable.Write(
        stream,
        ["time_s", .. result.Errors.SelectMany(e => new[] { Key(e) + "_log" + Tail(e), Key(e) + "_run" + Tail(e) })],
        Enumerable.Range(0, result.Log.Time.Length).Select(i => (string[])[
            CsvTable.Number(result.Log.Time[i]), .. result.Errors.SelectMany(e => new[] { CsvTable.Number(e.Channel.Values[i]), CsvTable.Number(e.Model[i]) })]));

    private static string Key(ChannelError e) => e.Channel.Name;

    private static string Tail(ChannelError e) => "_" + e.Channel.Unit.ToLowerInvariant().Replace("/", "_per_", StringComparison.Ordinal);
}
