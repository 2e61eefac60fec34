using System.Globalization;
using CsvHelper;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>The time history as CSV: one row a sample, header names with units, invariant numbers.</summary>
internal static class HistoryCsv
{
    public static void Write(RunResult result, Stream stream, CancellationToken cancel)
    {
        using var text = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvWriter(text, CultureInfo.InvariantCulture);
        (string Key, double[] Values)[] columns =
        [
            .. result.Channels.Select(c => (c.Key, c.Values)),
            .. result.Opponent?.Channels.Select(c => ("opponent_" + c.Key, c.Values)) ?? [],
        ];
        csv.WriteField("time_s");
        foreach ((string key, double[] _) in columns)
        {
            csv.WriteField(key);
        }

        csv.NextRecord();
        for (int i = 0; i < result.Time.Length; i++)
        {
            cancel.ThrowIfCancellationRequested();
            Number(csv, result.Time[i]);
            foreach ((string _, double[] values) in columns)
            {
                Number(csv, values[i]);
            }

            csv.NextRecord();
        }
    }

    public static void WriteReadings(RunResult result, Stream stream)
    {
        using var text = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvWriter(text, CultureInfo.InvariantCulture);
        csv.WriteField("time_s");
        csv.WriteField("force_n");
        csv.NextRecord();
        foreach ((double time, double force) in result.CellReadings)
        {
            Number(csv, time);
            Number(csv, force);
            csv.NextRecord();
        }
    }

    // eight digits: more than the model knows, few enough to keep the file small
    private static void Number(CsvWriter csv, double value) => csv.WriteField(value.ToString("G8", CultureInfo.InvariantCulture));
}
