using MathNet.Numerics.LinearAlgebra;

namespace PushSim.Analysis.Season;

/// <summary>
/// A straight model with one random effect per block and scatter within it, y = X b + u_block + e, by restricted maximum likelihood: minus twice its logarithm is
/// sum of ln|V| over blocks + ln|X' V^-1 X| + r' V^-1 r (Patterson and Thompson, Recovery of inter-block information when block sizes are unequal, Biometrika 58, 1971,
/// equations for the two-variance case; Searle, Casella and McCulloch, Variance Components, 1992, section 6.6; both from memory). V of a block of n is s^2 (I + q J), so its inverse is
/// (I - q / (1 + n q) J) / s^2 and ln|V| = n ln s^2 + ln(1 + n q). Of an estimate c' b the degrees of freedom are 2 v^2 / (g' A g), g the slopes of its variance v by the two variances
/// and A their covariance (Satterthwaite 1946; Giesbrecht and Burns, Two-stage analysis based on a mixed model, Biometrics 41, 1985; from memory).
/// Limits: one random effect; the scatter is normal and alike in all blocks.
/// </summary>
public sealed class MixedFit
{
    // Ratio of the variances is sought up to this; beyond it one block is one number [1].
    private const double MostRatio = 1e4;
    private const int Sections = 60;

    private readonly Matrix<double> _x;
    private readonly Vector<double> _y;
    private readonly int[][] _blocks;
    private readonly double _freedom;

    private MixedFit(Matrix<double> x, Vector<double> y, int[][] blocks)
    {
        (_x, _y, _blocks, _freedom) = (x, y, blocks, y.Count - x.ColumnCount);
        Ratio = Best();
        (Matrix<double> inverse, Vector<double> b, double square) = Solve(Ratio);
        Values = b;
        Within = square / _freedom;
        Covariance = inverse * Within;
    }

    /// <summary>Variance between blocks over that within [1].</summary>
    public double Ratio { get; }

    /// <summary>Variance within a block [unit of y squared].</summary>
    public double Within { get; }

    /// <summary>Variance between blocks [unit of y squared].</summary>
    public double Between => Ratio * Within;

    /// <summary>The fixed effects b, in the unit of y.</summary>
    public Vector<double> Values { get; }

    /// <summary>Their covariance.</summary>
    public Matrix<double> Covariance { get; }

    /// <summary>Fits it; null where there are no more values than fixed effects, or these cannot be told apart.</summary>
    /// <param name="x">Rows of the fixed effects' factors.</param>
    /// <param name="y">The values.</param>
    /// <param name="block">Block of each value.</param>
    public static MixedFit? Of(IReadOnlyList<double[]> x, IReadOnlyList<double> y, IReadOnlyList<int> block)
    {
        if (y.Count <= (x.Count > 0 ? x[0].Length : 0))
        {
            return null;
        }

        int[][] blocks = [.. block.Select((b, i) => (b, i)).GroupBy(p => p.b, p => p.i).Select(g => g.ToArray())];
        Matrix<double> m = Matrix<double>.Build.DenseOfRowArrays(x);
        return m.Rank() < m.ColumnCount ? null : new MixedFit(m, Vector<double>.Build.DenseOfEnumerable(y), blocks);
    }

    /// <summary>Variance of c' b [unit of y squared], and its degrees of freedom [1].</summary>
    /// <param name="c">Factors.</param>
    public (double Variance, double Freedom) Of(Vector<double> c)
    {
        double v = c * Covariance * c;
        double between = Between, within = Within;

        // at the edge, where no spread between blocks is seen, the scatter alone is known
        if (Ratio <= 0.0)
        {
            return (v, _freedom);
        }

        double h = 1e-3;
        double Variance(double w, double b) => w * (c * Solve(b / w).Inverse * c);
        (double dw, double db) = (h * within, h * between);
        double gw = (Variance(within + dw, between) - Variance(within - dw, between)) / (2.0 * dw);
        double gb = (Variance(within, between + db) - Variance(within, between - db)) / (2.0 * db);
        double D(double w, double b) => DevianceOf(w, b);
        double f0 = D(within, between);
        double hww = (D(within + dw, between) - (2.0 * f0) + D(within - dw, between)) / (dw * dw);
        double hbb = (D(within, between + db) - (2.0 * f0) + D(within, between - db)) / (db * db);
        double hwb = (D(within + dw, between + db) - D(within + dw, between - db) - D(within - dw, between + db) + D(within - dw, between - db)) / (4.0 * dw * db);

        // the covariance of the variances is the inverse of half the curvature
        double det = 0.25 * ((hww * hbb) - (hwb * hwb));
        if (!(det > 0.0) || !(hww > 0.0))
        {
            return (v, Math.Max(1.0, _blocks.Length - _x.ColumnCount));
        }

        double quad = ((gw * gw * 0.5 * hbb) - (2.0 * gw * gb * 0.5 * hwb) + (gb * gb * 0.5 * hww)) / det;
        double freedom = quad > 0.0 ? 2.0 * v * v / quad : _freedom;
        return (v, Math.Clamp(freedom, 1.0, _freedom));
    }

    // Golden section over the logarithm of the ratio, and the edge.
    private double Best()
    {
        if (_blocks.Length >= _y.Count)
        {
            return 0.0;
        }

        double low = Math.Log(1e-4), high = Math.Log(MostRatio);
        double golden = (Math.Sqrt(5.0) - 1.0) / 2.0;
        double a = high - (golden * (high - low)), b = low + (golden * (high - low));
        (double fa, double fb) = (DevianceOf(Math.Exp(a)), DevianceOf(Math.Exp(b)));
        for (int i = 0; i < Sections && high - low > 1e-4; i++)
        {
            if (fa < fb)
            {
                (high, b, fb) = (b, a, fa);
                a = high - (golden * (high - low));
                fa = DevianceOf(Math.Exp(a));
            }
            else
            {
                (low, a, fa) = (a, b, fb);
                b = low + (golden * (high - low));
                fb = DevianceOf(Math.Exp(b));
            }
        }

        double best = Math.Exp(0.5 * (low + high));
        return DevianceOf(0.0) <= DevianceOf(best) ? 0.0 : best;
    }

    // at the scatter that is best for the ratio
    private double DevianceOf(double ratio)
    {
        (Matrix<double> inverse, Vector<double> _, double square) = Solve(ratio);
        return (_freedom * Math.Log(square)) + _blocks.Sum(b => Math.Log(1.0 + (b.Length * ratio))) - Math.Log(inverse.Determinant());
    }

    private double DevianceOf(double within, double between)
    {
        (Matrix<double> inverse, Vector<double> _, double square) = Solve(between / within);
        return (_freedom * Math.Log(within)) + _blocks.Sum(b => Math.Log(1.0 + (b.Length * between / within))) - Math.Log(inverse.Determinant()) + (square / within);
    }

    // (X' W X)^-1, b and r' W r with W = s^2 V^-1
    private (Matrix<double> Inverse, Vector<double> Values, double Square) Solve(double ratio)
    {
        int p = _x.ColumnCount;
        Matrix<double> normal = Matrix<double>.Build.Dense(p, p);
        Vector<double> right = Vector<double>.Build.Dense(p);
        double yy = 0.0;
        double[] sum = new double[p];
        foreach (int[] block in _blocks)
        {
            double k = ratio / (1.0 + (block.Length * ratio));
            Array.Clear(sum);
            double sumY = 0.0;
            foreach (int i in block)
            {
                sumY += _y[i];
                yy += _y[i] * _y[i];
                for (int r = 0; r < p; r++)
                {
                    double xr = _x[i, r];
                    if (xr == 0.0)
                    {
                        continue;
                    }

                    sum[r] += xr;
                    right[r] += xr * _y[i];
                    for (int s = 0; s <= r; s++)
                    {
                        normal[r, s] += xr * _x[i, s];
                    }
                }
            }

            yy -= k * sumY * sumY;
            for (int r = 0; r < p; r++)
            {
                right[r] -= k * sum[r] * sumY;
                for (int s = 0; s <= r; s++)
                {
                    normal[r, s] -= k * sum[r] * sum[s];
                }
            }
        }

        for (int r = 0; r < p; r++)
        {
            for (int s = r + 1; s < p; s++)
            {
                normal[r, s] = normal[s, r];
            }
        }

        Matrix<double> inverse = normal.Inverse();
        Vector<double> b = inverse * right;
        return (inverse, b, Math.Max(yy - (b * right), double.Epsilon));
    }
}
