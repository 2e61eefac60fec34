namespace PushSim.Analysis.Statistics;

/// <summary>Holm's step-down correction for several comparisons at once (Scand. J. Statist. 6:65-70, 1979).</summary>
public static class Holm
{
    /// <summary>Adjusted probabilities in the order given, monotone and at most 1; reject where one is at or below the chosen level.</summary>
    /// <param name="p">Probability of each comparison alone [1].</param>
    public static double[] Adjust(IReadOnlyList<double> p)
    {
        int[] order = [.. Enumerable.Range(0, p.Count).OrderBy(i => p[i])];
        double[] adjusted = new double[p.Count];
        double floor = 0.0;
        for (int k = 0; k < order.Length; k++)
        {
            floor = Math.Max(floor, Math.Min(1.0, (p.Count - k) * p[order[k]]));
            adjusted[order[k]] = floor;
        }

        return adjusted;
    }
}
