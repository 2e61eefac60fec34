namespace PushSim.Analysis.Sweep;

/// <summary>The best point of a sweep and how flat the curve is about it.</summary>
/// <param name="Index">The best point [1].</param>
/// <param name="Value">The asked quantity there [its unit].</param>
/// <param name="Low">Least value of the input from which the quantity stays within 5 % of the best [unit of the input].</param>
/// <param name="High">Largest value of the input up to which it does [unit of the input].</param>
/// <param name="IsAtEnd">True if the best point is the first or last one: a wider range may hold a better one.</param>
public sealed record Optimum(int Index, double Value, double Low, double High, bool IsAtEnd)
{
    /// <summary>How far off the best still counts as good [1].</summary>
    public const double Good = 0.05;

    /// <summary>The best of a curve; null if no point has a value. Between points the curve is taken as straight.</summary>
    /// <param name="x">The input, rising or falling.</param>
    /// <param name="y">The quantity; null where there is none.</param>
    /// <param name="isHighest">True if more is better.</param>
    public static Optimum? OfCurve(IReadOnlyList<double> x, IReadOnlyList<double?> y, bool isHighest)
    {
        if (Best(y, isHighest) is not int best)
        {
            return null;
        }

        double value = y[best]!.Value;
        double limit = value - ((isHighest ? 1.0 : -1.0) * Good * Math.Abs(value));
        double one = Reach(x, y, best, -1, limit, isHighest);
        double other = Reach(x, y, best, 1, limit, isHighest);
        return new Optimum(best, value, Math.Min(one, other), Math.Max(one, other), best == 0 || best == x.Count - 1);
    }

    /// <summary>Place of the best value; null if there is none.</summary>
    /// <param name="y">The values.</param>
    /// <param name="isHighest">True if more is better.</param>
    public static int? Best(IReadOnlyList<double?> y, bool isHighest)
    {
        int? best = null;
        for (int i = 0; i < y.Count; i++)
        {
            if (y[i] is double v && (best is null || (isHighest ? v > y[best.Value] : v < y[best.Value])))
            {
                best = i;
            }
        }

        return best;
    }

    /// <summary>Whether a value is within 5 % of the best.</summary>
    public static bool IsGood(double value, double best) => Math.Abs(value - best) <= Good * Math.Abs(best);

    private static double Reach(IReadOnlyList<double> x, IReadOnlyList<double?> y, int from, int step, double limit, bool isHighest)
    {
        int i = from;
        while (i + step >= 0 && i + step < x.Count && y[i + step] is double next)
        {
            bool isGood = isHighest ? next >= limit : next <= limit;
            if (!isGood)
            {
                double here = y[i]!.Value;
                return x[i] + ((x[i + step] - x[i]) * (limit - here) / (next - here));
            }

            i += step;
        }

        return x[i];
    }
}
