namespace PushSim.Analysis.Season;

/// <summary>
/// The two constants of a fading series: those at which the weighted squares of what is left are least, over a grid that is refined; the mean of the tyre and the days' effects are taken out at each
/// point. A series fades if the squares fall by more than chance would have it (F test of two constants, 1 %).
/// </summary>
internal sealed class FadingFit
{
    private const double Level = 0.01;
    private const int LeastCounts = 4;
    private const int Grid = 12;
    private const int Refinements = 14;

    private FadingFit(double fouled, double scale, bool isInMetres, double longest) => (Fouled, Scale, IsInMetres, Longest) = (fouled, scale, isInMetres, longest);

    public double Fouled { get; }

    public double Scale { get; }

    public bool IsInMetres { get; }

    public double Longest { get; }

    /// <summary>The fit; null if the series is too short or does not fade.</summary>
    public static FadingFit? Of(IReadOnlyList<SeasonPull> pulls, double[] y, int[] blocks, double within, double between)
    {
        double[] n = [.. pulls.Select(p => p.Count ?? 0.0)];
        double longest = n.Length == 0 ? 0.0 : n.Max();
        if (pulls.Count(p => p.Count is not null) < LeastCounts || n.Distinct().Count() < LeastCounts)
        {
            return null;
        }

        double[] weights = new double[y.Length];
        int[][] all = [.. blocks.Select((b, i) => (b, i)).GroupBy(b => b.b, b => b.i).Select(g => g.ToArray())];
        double ratio = between / within;
        double flat = Squares(0.0, 1.0, isFlat: true);
        (double f, double s, double least) = (0.5, longest / 2.0, double.PositiveInfinity);
        (double fLow, double fHigh, double sLow, double sHigh) = (0.02, 0.98, Math.Log(longest / 30.0), Math.Log(3.0 * longest));
        for (int round = 0; round < Refinements; round++)
        {
            for (int i = 0; i <= Grid; i++)
            {
                for (int k = 0; k <= Grid; k++)
                {
                    (double fi, double sk) = (fLow + ((fHigh - fLow) * i / Grid), Math.Exp(sLow + ((sHigh - sLow) * k / Grid)));
                    double squares = Squares(fi, sk, isFlat: false);
                    (f, s, least) = squares < least ? (fi, sk, squares) : (f, s, least);
                }
            }

            (double fw, double sw) = (0.3 * (fHigh - fLow), 0.3 * (sHigh - sLow));
            (fLow, fHigh, sLow, sHigh) = (Math.Max(0.02, f - fw), Math.Min(0.98, f + fw), Math.Log(s) - sw, Math.Log(s) + sw);
        }

        double freedom = y.Length - 3.0;
        double ratioOfSquares = (flat - least) / 2.0 / (least / freedom);
        return freedom > 0.0 && MathNet.Numerics.Distributions.FisherSnedecor.CDF(2.0, freedom, Math.Max(0.0, ratioOfSquares)) > 1.0 - Level && f < 0.97
            ? new FadingFit(f, s, pulls.Any(p => p.IsInMetres), longest) : null;

        // r' W r with the mean taken out, W as in MixedFit
        double Squares(double fouled, double scale, bool isFlat)
        {
            (double xx, double xy, double yy) = (0.0, 0.0, 0.0);
            foreach (int[] block in all)
            {
                double k = ratio / (1.0 + (block.Length * ratio));
                double sum = 0.0;
                foreach (int i in block)
                {
                    weights[i] = y[i] - (isFlat ? 0.0 : Math.Log(Fading.Left(fouled, scale, n[i])));
                    sum += weights[i];
                    yy += weights[i] * weights[i];
                }

                xx += block.Length - (k * block.Length * block.Length);
                xy += sum * (1.0 - (k * block.Length));
                yy -= k * sum * sum;
            }

            return yy - (xy * xy / xx);
        }
    }

    /// <summary>Logarithm of what is left after a count [1].</summary>
    public double LogLeft(double count) => Math.Log(Fading.Left(Fouled, Scale, count));

    /// <summary>Slopes of that by the fouled value [1] and by the logarithm of the scale [1].</summary>
    public double[] Slopes(double count)
    {
        double left = Fading.Left(Fouled, Scale, count);
        double e = Math.Exp(-count / Scale);
        return [(1.0 - e) / left, (1.0 - Fouled) * e * (count / Scale) / left];
    }
}
