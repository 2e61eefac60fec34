using System.Runtime.CompilerServices;
using PushSim.Numerics;
using PushSim.Powertrain;
using PushSim.Scenarios;
using PushSim.Scenarios.Scenes;
using PushSim.Scenarios.Sources;

namespace PushSim.Tests.Measured;

/// <summary>
/// The round cell of the shelf through the measured currents of a 3 Ah cell. Its numbers were fitted to the discharges at a tenth of C, 1C and 2C; 3C is judged. The temperature is the
/// model's own, from the first reading of the case on.
/// </summary>
internal static class CellBench
{
    private const double Capacity = 2.967;

    private static readonly Lazy<BatterySettings> s_cell = new(() => Shelf());

    /// <summary>Rms of the voltage between two shares of the charge taken [V], and the last temperature beside the case's [degree Celsius].</summary>
    public static (double Rms, double Temperature, double Case) Discharge(string rate, double from = 0.02, double to = 0.9)
    {
        MeasuredData data = MeasuredData.Read("cell-" + rate);
        double[] time = data["time_s"], voltage = data["voltage_V"], warm = data["case_C"];
        double[] current = [.. data["current_A"].Select(i => -i)];
        var cell = new BatteryEquations<R1>(s_cell.Value);
        double taken = 0.0, slow = 0.0, temperature = warm[0], sum = 0.0;
        int count = 0;
        for (int n = 1; n < time.Length; n++)
        {
            // sub-steps far below the slow branch's time
            int steps = 1 + (int)(time[n] - time[n - 1]);
            double h = (time[n] - time[n - 1]) / steps;
            for (int k = 0; k < steps; k++)
            {
                double i = current[n - 1] + ((k + 0.5) / steps * (current[n] - current[n - 1]));
                R1 factor = cell.ResistanceFactor(taken, temperature);
                double rise = cell.SlowRise(factor, i, slow).Value;
                temperature += h * cell.Warming(factor, i, slow, temperature, warm[0]).Value;
                slow += h * rise;
                taken += h * i;
            }

            double share = taken / (Capacity * 3600.0);
            if (share >= from && share <= to)
            {
                double model = cell.OpenCircuitVoltage(taken).Value - slow - (cell.ResistanceFactor(taken, temperature).Value * cell.Numbers.Resistance.Value * current[n]);
                sum += (model - voltage[n]) * (model - voltage[n]);
                count++;
            }
        }

        return (Math.Sqrt(sum / count), temperature, warm[^1]);
    }

    // One cell of the measured capacity, by a robot file.
    private static BatterySettings Shelf([CallerFilePath] string here = "")
    {
        string robots = Path.Combine(Path.GetDirectoryName(here)!, "..", "..", "..", "scenarios", "robots");
        string text = File.ReadAllText(Path.Combine(robots, "mole.toml"));
        int start = text.IndexOf("[battery]", StringComparison.Ordinal);
        int end = text.IndexOf("\n[", start, StringComparison.Ordinal);
        string own = text[..start] + FormattableString.Invariant($"[battery]\nshelf = \"lithium ion, round, high drain\"\ncells = 1\ncapacity = \"{Capacity} Ah\"\n") + (end < 0 ? "" : text[end..]);
        string folder = Directory.CreateTempSubdirectory().FullName;
        try
        {
            File.WriteAllText(Path.Combine(folder, "cell.toml"), own);
            string scenario = Path.Combine(folder, "scenario.toml");
            File.WriteAllText(scenario, "robot = \"cell.toml\"\nmanoeuvre.kind = \"hold\"\nmanoeuvre.end = \"1 s\"\n");
            ReadResult read = ScenarioReader.Read(scenario, new ReadOptions());
            return read.Scenario?.Robot.Battery ?? throw new InvalidOperationException(string.Join("; ", read.Problems.Select(p => p.Message)));
        }
        finally
        {
            Directory.Delete(folder, recursive: true);
        }
    }
}
