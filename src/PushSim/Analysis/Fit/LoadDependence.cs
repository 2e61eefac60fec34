using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>Friction that changes with load, fitted to pulls at several loads: F = mu0 N (N/N0)^-p, by least squares of the relative misfit.</summary>
/// <param name="Friction">mu0 with its 95 % interval [1].</param>
/// <param name="Exponent">p with its 95 % interval [1].</param>
/// <param name="ReferenceLoad">N0 [N].</param>
public sealed record LoadDependence(Interval Friction, Interval Exponent, double ReferenceLoad)
{
    // Loads that differ less say nothing of an exponent [1].
    private const double LeastRatio = 1.4;

    private const int FewestPulls = 4;

    /// <summary>Fits it; null if loads or pulls are too few.</summary>
    /// <param name="loads">Load of each pull [N].</param>
    /// <param name="forces">Force of each pull [N].</param>
    /// <param name="reference">N0 [N].</param>
    public static LoadDependence? Fit(IReadOnlyList<double> loads, IReadOnlyList<double> forces, double reference)
    {
        if (loads.Count < FewestPulls || loads.Max() < LeastRatio * loads.Min())
        {
            return null;
        }

        double[] friction = [.. forces.Zip(loads, (f, n) => f / n)];
        double start = friction.Average();

        // logarithms: each reading is as good as its size
        CurveFit? fit = CurveFit.Fit((n, b) => Math.Log(b[0]) - (b[1] * Math.Log(n / reference)), loads, [.. friction.Select(m => Math.Log(m))], [start, 0.05]);
        if (fit is null)
        {
            return null;
        }

        double t = StudentT.Factor(0.95, fit.Freedom);
        return new LoadDependence(Around(0), Around(1), reference);

        Interval Around(int k) => new(fit.Parameters[k], fit.Parameters[k] - (t * fit.Deviations[k]), fit.Parameters[k] + (t * fit.Deviations[k]));
    }
}
