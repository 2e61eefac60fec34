using MathNet.Numerics.LinearAlgebra;

namespace PushSim.Analysis.Statistics;

/// <summary>Least squares for a curve y = f(x, b) by damped Gauss-Newton steps (Levenberg 1944, Marquardt 1963, from memory): the damping acts on
/// columns scaled by their norm, the step is solved by QR of the stacked system, derivatives are central differences.</summary>
public sealed record CurveFit
{
    private const int MostSteps = 2000;

    // Central differences are best near the cube root of the rounding unit [1].
    private const double Difference = 6e-6;

    /// <summary>The parameters b, in the order of the model.</summary>
    public required IReadOnlyList<double> Parameters { get; init; }

    /// <summary>Their standard deviations.</summary>
    public required IReadOnlyList<double> Deviations { get; init; }

    /// <summary>Residual sum of squares [unit of y, squared].</summary>
    public required double ResidualSum { get; init; }

    /// <summary>Degrees of freedom [1].</summary>
    public required int Freedom { get; init; }

    /// <summary>Residual standard deviation [unit of y].</summary>
    public double ResidualDeviation => Math.Sqrt(ResidualSum / Freedom);

    /// <summary>Fits from a start; null if it does not come to rest.</summary>
    public static CurveFit? Fit(Func<double, double[], double> model, IReadOnlyList<double> x, IReadOnlyList<double> y, IReadOnlyList<double> start)
    {
        double[] b = [.. start];
        double[] r = Residuals(model, x, y, b);
        double sum = Squares(r);
        double damping = 1e-3;
        for (int step = 0; step < MostSteps; step++)
        {
            Matrix<double> j = Jacobian(model, x, b);
            double[] scale = [.. j.EnumerateColumns().Select(c => Math.Max(1e-300, c.L2Norm()))];
            double[] delta = Step(j, r, scale, damping);
            double[] trial = [.. b.Zip(delta, (p, d) => p + d)];
            double[] residuals = Residuals(model, x, y, trial);
            double next = Squares(residuals);
            bool isTiny = Enumerable.Range(0, b.Length).All(i => Math.Abs(delta[i]) <= 1e-13 * Math.Abs(b[i]));
            if (next < sum)
            {
                (b, r, sum) = (trial, residuals, next);
                damping = Math.Max(1e-15, 0.2 * damping);
            }
            else if (!isTiny && damping < 1e12)
            {
                damping *= 5.0;
                continue;
            }

            if (isTiny || damping >= 1e12)
            {
                return Finish(j, scale, b, sum);
            }
        }

        return null;
    }

    private static CurveFit Finish(Matrix<double> j, double[] scale, double[] b, double sum)
    {
        int freedom = j.RowCount - b.Length;
        Matrix<double> scaled = j.MapIndexed((_, k, v) => v / scale[k]);
        Matrix<double> covariance = scaled.QR().R.Inverse();
        double s = Math.Sqrt(sum / freedom);
        return new CurveFit
        {
            Parameters = b, ResidualSum = sum, Freedom = freedom, Deviations = [.. b.Select((_, i) => s * covariance.Row(i).L2Norm() / scale[i])],
        };
    }

    // (J^T J + damping D^2) delta = -J^T r, as least squares of the stacked matrix
    private static double[] Step(Matrix<double> j, double[] r, double[] scale, double damping)
    {
        int n = j.RowCount;
        int p = j.ColumnCount;
        Matrix<double> stacked = Matrix<double>.Build.Dense(n + p, p, (i, k) => i < n ? j[i, k] / scale[k] : i - n == k ? Math.Sqrt(damping) : 0.0);
        Vector<double> right = Vector<double>.Build.Dense(n + p, i => i < n ? r[i] : 0.0);
        Vector<double> solution = stacked.QR().Solve(right);
        return [.. solution.Select((v, k) => v / scale[k])];
    }

    private static double[] Residuals(Func<double, double[], double> model, IReadOnlyList<double> x, IReadOnlyList<double> y, double[] b) =>
        [.. x.Select((v, i) => y[i] - model(v, b))];

    private static double Squares(double[] r)
    {
        double sum = r.Sum(v => v * v);
        return double.IsFinite(sum) ? sum : double.PositiveInfinity;
    }

    private static Matrix<double> Jacobian(Func<double, double[], double> model, IReadOnlyList<double> x, double[] b) =>
        Matrix<double>.Build.Dense(x.Count, b.Length, (i, k) =>
        {
            double h = Difference * Math.Max(Math.Abs(b[k]), 1e-12);
            double[] up = [.. b];
            double[] down = [.. b];
            up[k] += h;
            down[k] -= h;
            return (model(x[i], up) - model(x[i], down)) / (up[k] - down[k]);
        });
}
