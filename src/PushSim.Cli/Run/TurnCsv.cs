namespace PushSim.Cli.Run;

/// <summary>What a turn adds to the history: centre of rotation and contact points over time, and the spectra.</summary>
internal static class TurnCsv
{
    // a robot that hardly turns has no centre of rotation: an empty cell
    public static void WritePaths(RunResult result, TurnResult r, Stream stream) => CsvTable.Write(
        stream,
        ["time_s", "rotation_centre_ahead_m", "rotation_centre_left_m", .. r.ContactPaths.SelectMany(p => new[] { $"contact_{Slug.Of(p.Wheel)}_x_m", $"contact_{Slug.Of(p.Wheel)}_y_m" })],
        Enumerable.Range(0, result.Time.Length).Select(i => (string[])[
            CsvTable.Number(result.Time[i]),
            CsvTable.Number(r.RotationCentreOverTime.X[i]),
            CsvTable.Number(r.RotationCentreOverTime.Y[i]),
            .. r.ContactPaths.SelectMany(p => new[] { CsvTable.Number(p.X[i]), CsvTable.Number(p.Y[i]) })]));

    public static void WriteSpectra(TurnResult r, Stream stream) => CsvTable.Write(
        stream,
        ["frequency_hz", .. r.Spectra.Select(s => $"wheel_{Slug.Of(s.Wheel)}_force_amplitude_n")],
        Enumerable.Range(0, r.Frequencies.Length).Select(k => (string[])[CsvTable.Number(r.Frequencies[k]), .. r.Spectra.Select(s => CsvTable.Number(s.Amplitudes[k]))]));
}
