using PushSim.Analysis.Turning;
using PushSim.Words.Turns;

namespace PushSim.Cli.Run;

/// <summary>A stability map as CSV: one row a point.</summary>
internal static class TurnMapCsv
{
    public static void Write(Stream stream, TurnMap m) => CsvTable.Write(
        stream,
        [SafeCell.Of(m.X.Title), SafeCell.Of(m.Y.Title), "growth_1_per_s", "moves", "frequency_hz", "ring_margin", "simulated_grows", "chatter"],
        Enumerable.Range(0, m.Map.Y.Length).SelectMany(j => Enumerable.Range(0, m.Map.X.Length).Select(i => Cells(m, i, j))));

    private static string[] Cells(TurnMap m, int i, int j)
    {
        StabilityPoint? p = m.Map.Points[i, j];
        bool isFound = p is not null && double.IsFinite(p.Growth);
        return
        [
            CsvTable.Number(m.Map.X[i]),
            CsvTable.Number(m.Map.Y[j]),
            CsvTable.Number(p?.Growth),
            isFound ? TurnWords.Of(p!.Part) : "",
            CsvTable.Number(isFound ? p!.Frequency : null),
            CsvTable.Number(p?.RingMargin),
            p?.Simulated is bool grows ? (grows ? "1" : "0") : "",
            p is null ? "" : ChatterWords.Key(p.Chatter),
        ];
    }
}
