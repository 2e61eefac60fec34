namespace PushSim.Analysis.Chance;

/// <summary>Which drawn inputs matter by themselves, told from the matches alone.</summary>
public static class InputShares
{
    // Shares of the variance below this are not worth a line [1].
    private const double LeastShare = 0.01;

    /// <summary>Matches that are looked at, those of the lowest numbers: draws do not hang on each other, so these are a sample as good as any, and shares of 1 % stand out from its noise [1].</summary>
    public const int Most = 100_000;

    /// <summary>Inputs and their share of the variance of the ground gained, those above noise, largest first [1].</summary>
    /// <param name="source">What was drawn.</param>
    /// <param name="ends">The matches by number; failed ones are left out.</param>
    public static IReadOnlyList<(string Name, double Share)> Of(IDrawnMatches source, IEnumerable<MatchEnd> ends)
    {
        MatchEnd[] good = [.. ends.Where(o => !o.HasFailed).Take(Most)];
        double[] ground = [.. good.Select(o => o.GroundGained)];
        IReadOnlyList<string> causes = source.Causes;
        double[][] inputs = [.. causes.Select(_ => new double[good.Length])];
        for (int m = 0; m < good.Length; m++)
        {
            double[] values = source.CausesOf(good[m].Number);
            for (int i = 0; i < values.Length; i++)
            {
                inputs[i][m] = values[i];
            }
        }

        double noise = Math.Max(LeastShare, Sensitivity.NoiseLevel(good.Length, causes.Count));
        return [.. causes.Select((name, i) => (Name: name, Share: Sensitivity.FirstOrder(inputs[i], ground))).Where(s => s.Share > noise).OrderByDescending(s => s.Share)];
    }
}
