using MathNet.Numerics;

namespace PushSim.Analysis.Statistics;

/// <summary>The normal distribution of mean 0 and standard deviation 1.</summary>
internal static class StandardNormal
{
    /// <summary>Share of the distribution below a value, Phi(z) [1].</summary>
    /// <param name="z">The value in standard deviations [1].</param>
    public static double Below(double z) => 0.5 * SpecialFunctions.Erfc(-z / Math.Sqrt(2.0));
}
