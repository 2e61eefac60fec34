using MathNet.Numerics.Distributions;

namespace PushSim.Analysis.Chance;

/// <summary>Variance-based sensitivity: which inputs make the outcome vary. Sobol, 1993; Saltelli et al., Comput. Phys. Commun. 181:259, 2010.</summary>
public static class Sensitivity
{
    // Matches in a bin for a steady mean, and bins that resolve a bend [1].
    private const int LeastInBin = 25;
    private const int MostBins = 32;

    // Samples in which an input without effect is told of [1].
    private const double Luck = 0.01;

    /// <summary>First-order index of one input out of a plain random sample, at no further run: variance of the output's mean over bins of equally many matches in the order of the
    /// input, less what noise alone puts there, over the output's variance. Never below 0 [1].</summary>
    public static double FirstOrder(ReadOnlySpan<double> x, ReadOnlySpan<double> y) => FirstOrder(x, y, []);

    /// <summary>The same, and how far each match moves the index: its influence on E[E[y|x]^2] / V[y], 2 m(x) y - m(x)^2 - S y^2 over V with y about its mean and m the mean of its bin
    /// (Da Veiga and Gamboa, J. Nonparametr. Stat. 25:573, 2013, from memory). Their mean square over the number of matches is the index' variance, see <see cref="Scatter"/>.</summary>
    /// <param name="x">The input.</param>
    /// <param name="y">The output, as many.</param>
    /// <param name="moves">Gets the influence of each match, in the order of x [1]; zeros where nothing is told; empty: not asked.</param>
    public static double FirstOrder(ReadOnlySpan<double> x, ReadOnlySpan<double> y, Span<double> moves)
    {
        moves.Clear();
        int n = y.Length;
        int bins = Math.Min(MostBins, n / LeastInBin);
        (double mean, double variance) = Moments(y);
        if (bins < 2 || variance <= 0.0)
        {
            return 0.0;
        }

        double[] keys = x.ToArray();
        int[] order = [.. Enumerable.Range(0, n)];
        Array.Sort(keys, order);
        double[] values = new double[n];
        for (int i = 0; i < n; i++)
        {
            values[i] = y[order[i]];
        }

        double between = 0.0;
        double within = 0.0;
        for (int b = 0; b < bins; b++)
        {
            ReadOnlySpan<double> part = values.AsSpan((b * n / bins)..((b + 1) * n / bins));
            (double own, double spread) = Moments(part);
            between += part.Length * (own - mean) * (own - mean);
            within += (part.Length - 1) * spread;
        }

        // expected of `between` if the input had no effect: (bins - 1) times the variance within
        double noise = (bins - 1) * within / (n - bins);
        double share = Math.Clamp((between - noise) / (between + within), 0.0, 1.0);
        for (int b = 0; b < bins && moves.Length > 0; b++)
        {
            Range part = (b * n / bins)..((b + 1) * n / bins);
            double own = Moments(values.AsSpan(part)).Mean - mean;
            foreach (int match in order.AsSpan(part))
            {
                double off = y[match] - mean;
                moves[match] = ((2.0 * own * off) - (own * own) - (share * off * off)) / variance;
            }
        }

        return share;
    }

    /// <summary>Half of the 95 % interval of an index, or of a sum of some, out of how far each match moves it [1].</summary>
    /// <param name="moves">Influence of each match; of a sum the sum of the influences [1].</param>
    public static double Scatter(ReadOnlySpan<double> moves) => moves.Length == 0 ? 0.0 : ShareInterval.Z * Math.Sqrt(Moments(moves).Variance / moves.Length);

    /// <summary>Level that <see cref="FirstOrder(ReadOnlySpan{double}, ReadOnlySpan{double})"/> of any of several inputs without effect passes in about one of a hundred samples of this size: the F test of the bins' means, with
    /// the level shared among the inputs (Bonferroni). Nobody is told of an input that only had luck [1].</summary>
    /// <param name="n">Matches in the sample [1].</param>
    /// <param name="inputs">Inputs that are looked at [1].</param>
    public static double NoiseLevel(int n, int inputs)
    {
        int bins = Math.Min(MostBins, n / LeastInBin);
        if (bins < 2)
        {
            return 1.0;
        }

        double f = FisherSnedecor.InvCDF(bins - 1, n - bins, 1.0 - (Luck / Math.Max(1, inputs)));
        return (f - 1.0) * (bins - 1) / ((f * (bins - 1)) + n - bins);
    }

    /// <summary>Total index of one input, the share of the variance that it has a hand in, alone or together with others, from pairs of outputs that differ in this input alone:
    /// T = mean (f_A - f_AB)^2 / 2V. Jansen, Comput. Phys. Commun. 117:35, 1999; 95 % interval of the ratio by the delta method (Casella and Berger, Statistical
    /// Inference, 2002, section 5.5.4, from memory). Value and ends from 0 to 1; 0 to 1 where two pairs or less, or no variance, say nothing [1].</summary>
    /// <param name="a">Outputs.</param>
    /// <param name="ab">Outputs with the input drawn anew, all others the same; as many.</param>
    public static (double Share, Bounds Bounds) Total(ReadOnlySpan<double> a, ReadOnlySpan<double> ab)
    {
        int n = a.Length;
        double[] all = [.. a, .. ab];
        (double mean, double variance) = Moments(all);
        if (n < 3 || variance <= 0.0)
        {
            return (0.0, new Bounds(0.0, 1.0));
        }

        double share = 0.0;
        for (int i = 0; i < n; i++)
        {
            share += 0.5 * (a[i] - ab[i]) * (a[i] - ab[i]) / n / variance;
        }

        double squares = 0.0;
        for (int i = 0; i < n; i++)
        {
            double own = 0.5 * (((a[i] - mean) * (a[i] - mean)) + ((ab[i] - mean) * (ab[i] - mean)));
            double off = (0.5 * (a[i] - ab[i]) * (a[i] - ab[i])) - (share * own);
            squares += off * off;
        }

        double half = ShareInterval.Z * Math.Sqrt(squares / (n - 1) / n) / variance;
        return (Math.Min(1.0, share), new Bounds(Math.Clamp(share - half, 0.0, 1.0), Math.Min(1.0, share + half)));
    }

    private static (double Mean, double Variance) Moments(ReadOnlySpan<double> y)
    {
        double mean = 0.0;
        double squares = 0.0;
        for (int i = 0; i < y.Length; i++)
        {
            double off = y[i] - mean;
            mean += off / (i + 1);
            squares += off * (y[i] - mean);
        }

        return (mean, y.Length > 1 ? squares / (y.Length - 1) : 0.0);
    }
}
