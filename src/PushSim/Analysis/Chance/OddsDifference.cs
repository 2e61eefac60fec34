namespace PushSim.Analysis.Chance;

/// <summary>Two scenarios on the same draws: each match of the one is compared with the match of the same number of the other, so that what they share cancels.</summary>
/// <param name="Matches">Numbers that both ran [1].</param>
/// <param name="OnlyFirst">Matches that only the first scenario's robot won [1].</param>
/// <param name="OnlySecond">Matches that only the second scenario's robot won [1].</param>
public sealed record OddsDifference(long Matches, long OnlyFirst, long OnlySecond)
{
    /// <summary>Win share of the first less that of the second [1].</summary>
    public double Difference => Matches == 0 ? 0.0 : (double)(OnlyFirst - OnlySecond) / Matches;

    /// <summary>Its 95 % score interval [1].</summary>
    public Bounds Bounds => BoundsAt(ShareInterval.Z);

    /// <summary>Its interval at another level [1].</summary>
    /// <param name="z">Normal quantile of the interval [1].</param>
    public Bounds BoundsAt(double z) => ShareInterval.Difference(Worth * OnlyFirst, Worth * OnlySecond, Worth * Matches, z);

    /// <summary>How many free draws one match is worth for the difference, see <see cref="BlockSums"/> [1].</summary>
    public double Worth { get; init; } = 1.0;

    /// <summary>Compares outcomes number by number; failed matches count for neither.</summary>
    /// <param name="first">Outcomes of the first scenario, by number.</param>
    /// <param name="second">Outcomes of the second, by number.</param>
    public static OddsDifference Of(IEnumerable<MatchEnd> first, IEnumerable<MatchEnd> second)
    {
        long n = 0;
        long a = 0;
        long b = 0;
        var blocks = new BlockSums();
        foreach ((MatchEnd own, MatchEnd other) in Pairs(first, second))
        {
            (bool isFirst, bool isSecond) = (own.Winner == 0 && other.Winner != 0, own.Winner != 0 && other.Winner == 0);
            n++;
            a += isFirst ? 1 : 0;
            b += isSecond ? 1 : 0;
            blocks.Add(own.Number, counts: true, isFirst, isSecond);
        }

        return new OddsDifference(n, a, b) { Worth = blocks.Worth(1.0, -1.0) };
    }

    /// <summary>Matches of the same number that ran in both.</summary>
    /// <param name="first">Outcomes of the first scenario, by number.</param>
    /// <param name="second">Outcomes of the second, by number.</param>
    public static IEnumerable<(MatchEnd First, MatchEnd Second)> Pairs(IEnumerable<MatchEnd> first, IEnumerable<MatchEnd> second)
    {
        using IEnumerator<MatchEnd> others = second.Where(o => !o.HasFailed).GetEnumerator();
        bool hasOther = others.MoveNext();
        foreach (MatchEnd own in first.Where(o => !o.HasFailed))
        {
            while (hasOther && others.Current.Number < own.Number)
            {
                hasOther = others.MoveNext();
            }

            if (hasOther && others.Current.Number == own.Number)
            {
                yield return (own, others.Current);
            }
        }
    }
}
