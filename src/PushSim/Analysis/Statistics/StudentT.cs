using MathNet.Numerics.Distributions;

namespace PushSim.Analysis.Statistics;

/// <summary>Student's t distribution.</summary>
public static class StudentT
{
    // Beyond this the normal distribution is the same to ten digits [1].
    private const double Many = 1e9;

    /// <summary>Half-width of a two-sided interval in standard errors.</summary>
    /// <param name="confidence">For example 0.95 [1].</param>
    /// <param name="freedom">Degrees of freedom, above 0, also broken or infinite [1].</param>
    public static double Factor(double confidence, double freedom)
    {
        double share = 0.5 + (0.5 * confidence);
        return freedom > Many ? Normal.InvCDF(0.0, 1.0, share) : MathNet.Numerics.Distributions.StudentT.InvCDF(0.0, 1.0, freedom, share);
    }

    /// <summary>Two-sided probability of a t at least as far from zero.</summary>
    /// <param name="t">Difference in standard errors [1].</param>
    /// <param name="freedom">Degrees of freedom [1].</param>
    public static double TwoSided(double t, double freedom) =>
        2.0 * (freedom > Many ? Normal.CDF(0.0, 1.0, -Math.Abs(t)) : MathNet.Numerics.Distributions.StudentT.CDF(0.0, 1.0, freedom, -Math.Abs(t)));
}
