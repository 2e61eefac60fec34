using PushSim.Analysis.Fit;
using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Meaning;

/// <summary>What is known of a fitted tyre that is put on a robot.</summary>
/// <param name="Name">Its name.</param>
/// <param name="Static">Static friction [1].</param>
/// <param name="Kinetic">Kinetic friction [1].</param>
/// <param name="Spread">Standard deviation of the friction from pull to pull, as a share of its mean [1]; 0 if one pull only.</param>
/// <param name="IsAtLeast">Whether it is not known that the tyre set the pulls, so that both frictions are lower bounds.</param>
/// <param name="IsMaterialKnown">Whether it is known what it is made of; else its stiffness, damping and wear are guesses.</param>
public sealed record FittedTyre(string Name, double Static, double Kinetic, double Spread, bool IsAtLeast, bool IsMaterialKnown)
{
    /// <summary>Of a fit.</summary>
    /// <param name="fit">The fit.</param>
    /// <param name="isMaterialKnown">Whether it is known what the tyre is made of.</param>
    public static FittedTyre Of(TyreFit fit, bool isMaterialKnown)
    {
        double mean = fit.Frictions.Count > 1 ? Sample.Mean(fit.Frictions) : 0.0;
        double spread = mean > 0.0 ? Math.Sqrt(Sample.Variance(fit.Frictions)) / mean : 0.0;
        return new FittedTyre(fit.Name, fit.ForModel.Static, fit.ForModel.Kinetic, spread, fit.Cause.IsLowerBound, isMaterialKnown);
    }
}
