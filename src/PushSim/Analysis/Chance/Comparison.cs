namespace PushSim.Analysis.Chance;

/// <summary>Two scenarios on the same draws: each match of the one is compared with the match of the same number of the other, so that what they share cancels.</summary>
/// <param name="Matches">Numbers that both ran [1].</param>
/// <param name="OnlyFirst">Matches that only the first scenario's robot won [1].</param>
/// <param name="OnlySecond">Matches that only the second scenario's robot won [1].</param>
public sealed record Comparison(long Matches, long OnlyFirst, long OnlySecond)
{
    /// <summary>Win share of the first less that of the second [1].</summary>
    public double Difference => Matches == 0 ? 0.0 : (double)(OnlyFirst - OnlySecond) / Matches;

    /// <summary>Its 95 % score interval [1].</summary>
    public Bounds Bounds => ShareInterval.Difference(OnlyFirst, OnlySecond, Matches);

    /// <summary>Compares outcomes number by number; failed matches count for neither.</summary>
    /// <param name="first">Outcomes of the first scenario.</param>
    /// <param name="second">Outcomes of the second.</param>
    public static Comparison Of(IEnumerable<MatchEnd> first, IEnumerable<MatchEnd> second)
    {
        Dictionary<long, MatchEnd> others = second.Where(o => !o.HasFailed).ToDictionary(o => o.Number);
        long n = 0;
        long a = 0;
        long b = 0;
        foreach (MatchEnd own in first)
        {
            if (own.HasFailed || !others.TryGetValue(own.Number, out MatchEnd other))
            {
                continue;
            }

            n++;
            a += own.Winner == 0 && other.Winner != 0 ? 1 : 0;
            b += own.Winner != 0 && other.Winner == 0 ? 1 : 0;
        }

        return new Comparison(n, a, b);
    }
}
