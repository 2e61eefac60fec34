namespace PushSim.Analysis.Fit;

/// <summary>What a display's or converter's steps do to a mean. With noise much above the step they average out; below it they do not. A
/// rounded normal variable of spread sigma is off by sum_k (-1)^k q/(pi k) exp(-2 (pi k sigma/q)^2) sin(...), of variance
/// <code>
/// sum_k q^2/(2 pi^2 k^2) exp(-4 (pi k sigma/q)^2)        (q^2/12 without noise)
/// </code>
/// over all places of the true value between two steps (computed here from the Fourier series of the rounding error).</summary>
internal static class Quantisation
{
    private const int Terms = 6;

    // Differences smaller than this share of the largest are rounding of the file's digits [1].
    private const double Rounding = 1e-9;

    // Readings that are looked at: enough to meet neighbouring steps.
    private const int Most = 20_000;

    /// <summary>Smallest step between unequal neighbours [N]; 0 if none.</summary>
    public static double StepOf(ReadOnlySpan<double> force)
    {
        double least = double.PositiveInfinity;
        double largest = 0.0;
        int n = Math.Min(force.Length, Most);
        for (int i = 0; i < n; i++)
        {
            largest = Math.Max(largest, Math.Abs(force[i]));
        }

        for (int i = 1; i < n; i++)
        {
            double d = Math.Abs(force[i] - force[i - 1]);
            least = d > Rounding * largest && d < least ? d : least;
        }

        return double.IsFinite(least) ? least : 0.0;
    }

    /// <summary>Variance of the mean's error that stays however many readings are taken [N^2].</summary>
    /// <param name="step">Step q [N].</param>
    /// <param name="spread">Spread of the readings as read [N].</param>
    public static double VarianceOfMean(double step, double spread)
    {
        double sigma2 = Math.Max(0.0, (spread * spread) - (step * step / 12.0));
        double sum = 0.0;
        for (int k = 1; k <= Terms && step > 0.0; k++)
        {
            double a = Math.PI * k / step;
            sum += Math.Exp(-4.0 * a * a * sigma2) / (2.0 * a * a);
        }

        return sum;
    }
}
