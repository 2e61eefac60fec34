using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>Friction over the number of the pull.</summary>
/// <param name="Tyre">Name of the tyre; empty for all tyres together, each less its mean, as shares of it.</param>
/// <param name="Test">The test; the slope is per pull, as a share of the mean friction [1].</param>
/// <param name="Adjusted">Probability after Holm's correction over all series looked at [1].</param>
public sealed record PullTrend(string Tyre, TrendTest Test, double Adjusted)
{
    /// <summary>Whether it rises or falls beyond what scatter explains.</summary>
    public bool IsSeen => Adjusted <= TyreComparison.Level;

    /// <summary>Place of the one step that a seen trend rather is, when a step explains more of the squares than a straight line: pulls before it [1]; null for a slope.</summary>
    public int? StepAfter { get; init; }
}
