using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>What else a log holds over its plateaus; null where it was not logged.</summary>
/// <param name="SurfaceSpeed">Mean surface speed of the driven wheels, no sign [m/s].</param>
/// <param name="TurnRate">Mean turning speed of the driven wheels, no sign [rad/s].</param>
/// <param name="Current">Mean battery current [A].</param>
/// <param name="Sag">Fall of the battery voltage against the slack part before [V].</param>
public sealed record PlateauEvidence(double? SurfaceSpeed = null, double? TurnRate = null, double? Current = null, double? Sag = null)
{
    /// <summary>Means over all plateaus of these logs.</summary>
    public static PlateauEvidence Of(IReadOnlyList<FoundTrace> traces) => new(
        MeanOf(traces, t => t.SurfaceSpeed),
        MeanOf(traces, t => t.TurnRate),
        MeanOf(traces, t => t.Current),
        SagOf(traces));

    private static double? MeanOf(IReadOnlyList<FoundTrace> traces, Func<ForceTrace, double[]?> series)
    {
        double sum = 0.0;
        int count = 0;
        foreach (FoundTrace trace in traces)
        {
            double[]? values = series(trace.Trace);
            foreach (FoundPull pull in values is null ? [] : trace.Pulls)
            {
                for (int i = pull.PlateauFrom; i < pull.PlateauTo; i++)
                {
                    sum += double.IsFinite(values![i]) ? Math.Abs(values[i]) : 0.0;
                    count += double.IsFinite(values[i]) ? 1 : 0;
                }
            }
        }

        return count > 0 ? sum / count : null;
    }

    private static double? SagOf(IReadOnlyList<FoundTrace> traces)
    {
        List<double> sags = [];
        foreach (FoundTrace trace in traces)
        {
            double[]? v = trace.Trace.Voltage;
            foreach (FoundPull pull in v is null ? [] : trace.Pulls)
            {
                double[] before = [.. v!.Take(pull.Start).Where(double.IsFinite)];
                double[] during = [.. v!.Take(pull.PlateauTo).Skip(pull.PlateauFrom).Where(double.IsFinite)];
                if (before.Length > 0 && during.Length > 0)
                {
                    sags.Add(before.Max() - during.Average());
                }
            }
        }

        return sags.Count > 0 ? sags.Average() : null;
    }
}
