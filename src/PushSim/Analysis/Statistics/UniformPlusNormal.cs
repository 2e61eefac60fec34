using MathNet.Numerics.Distributions;

namespace PushSim.Analysis.Statistics;

/// <summary>A value anywhere within +- a, each place as likely, with a normal error on top: for moments known only to a sample's interval.</summary>
public static class UniformPlusNormal
{
    private const int Halvings = 60;

    /// <summary>Half-width of the interval that holds it with a given probability.</summary>
    /// <param name="confidence">Probability [1].</param>
    /// <param name="a">Half-width of the uniform part [any unit].</param>
    /// <param name="sigma">Standard deviation of the normal part [the same unit].</param>
    public static double HalfWidth(double confidence, double a, double sigma)
    {
        if (sigma <= 0.0 || a <= 0.0)
        {
            return a <= 0.0 ? sigma * Normal.InvCDF(0.0, 1.0, 0.5 + (0.5 * confidence)) : confidence * a;
        }

        double low = 0.0;
        double high = a + (10.0 * sigma);
        for (int i = 0; i < Halvings; i++)
        {
            double middle = 0.5 * (low + high);
            (low, high) = Within(middle, a, sigma) < confidence ? (middle, high) : (low, middle);
        }

        return high;
    }

    // P(|u + e| < h) = (G(h + a) - G(h - a)) / a - 1 with G the integral of the normal distribution function
    private static double Within(double h, double a, double sigma) =>
        (sigma * (Integral((h + a) / sigma) - Integral((h - a) / sigma)) / a) - 1.0;

    private static double Integral(double z) => (z * Normal.CDF(0.0, 1.0, z)) + Normal.PDF(0.0, 1.0, z);
}
