namespace PushSim.Plotting.Report;

/// <summary>The history that the replay of a page shows, for whoever shows it elsewhere.</summary>
public static class ReplayJson
{
    /// <summary>The JSON text: lengths in 0.01 mm, angles in 0.1 mrad, forces in 0.01 N, slip in mm/s, times in 10 µs, floor frame of the first robot.</summary>
    /// <param name="result">A run of at least two samples.</param>
    public static string Of(RunResult result) => ReplayData.Of(result);
}
