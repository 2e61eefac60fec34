using PushSim.Analysis.FitBySimulation;

namespace PushSim.Cli.Fit;

/// <summary>Measured and simulated pulls as CSV.</summary>
internal static class SimulationFitCsv
{
    public static void Write(Stream stream, IReadOnlyList<(string Tyre, SimulationFit? Fit)> fits) => CsvTable.Write(
        stream,
        ["tyre", "pull", "time_s", "measured_n", "simulated_n"],
        fits.SelectMany(f => (f.Fit?.Pulls ?? []).SelectMany((p, k) => p.Time.Select((t, i) => (string[])[
            SafeCell.Of(f.Tyre), (k + 1).ToString(CultureInfo.InvariantCulture), CsvTable.Number(t), CsvTable.Number(p.Measured[i]), CsvTable.Number(p.Simulated[i])]))));
}
