using System.Globalization;
using CsvHelper;
using PushSim.Analysis.Turning;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>What a turn adds to the history: centre of rotation and contact points over time, and the spectra.</summary>
internal static class TurnCsv
{
    public static void WritePaths(RunResult result, TurnReport r, Stream stream)
    {
        using var text = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvWriter(text, CultureInfo.InvariantCulture);
        string[] head = ["time_s", "rotation_centre_ahead_m", "rotation_centre_left_m", .. r.ContactPaths.SelectMany(p => new[] { $"contact_{Slug.Of(p.Wheel)}_x_m", $"contact_{Slug.Of(p.Wheel)}_y_m" })];
        foreach (string name in head)
        {
            csv.WriteField(name);
        }

        csv.NextRecord();
        for (int i = 0; i < result.Time.Length; i++)
        {
            Number(csv, result.Time[i]);
            Number(csv, r.RotationCentreOverTime.X[i]);
            Number(csv, r.RotationCentreOverTime.Y[i]);
            foreach ((string _, double[] x, double[] y) in r.ContactPaths)
            {
                Number(csv, x[i]);
                Number(csv, y[i]);
            }

            csv.NextRecord();
        }
    }

    public static void WriteSpectra(TurnReport r, Stream stream)
    {
        using var text = new StreamWriter(stream, new System.Text.UTF8Encoding(false), leaveOpen: true);
        using var csv = new CsvWriter(text, CultureInfo.InvariantCulture);
        csv.WriteField("frequency_hz");
        foreach (ForceSpectrum s in r.Spectra)
        {
            csv.WriteField($"wheel_{Slug.Of(s.Wheel)}_force_amplitude_n");
        }

        csv.NextRecord();
        for (int k = 0; k < r.Frequencies.Length; k++)
        {
            Number(csv, r.Frequencies[k]);
            foreach (ForceSpectrum s in r.Spectra)
            {
                Number(csv, s.Amplitudes[k]);
            }

            csv.NextRecord();
        }
    }

    // a robot that hardly turns has no centre of rotation: an empty cell
    private static void Number(CsvWriter csv, double value) =>
        csv.WriteField(double.IsFinite(value) ? value.ToString("G8", CultureInfo.InvariantCulture) : "");
}
