using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Chance;

/// <summary>What one drawn input does by itself.</summary>
/// <param name="Name">The input.</param>
/// <param name="Share">Its share of the variance of the ground gained, with the 95 % interval [1].</param>
public readonly record struct InputShare(string Name, Interval Share)
{
    /// <summary>Its share of the variance of who wins (1 for a win, else 0), with the 95 % interval [1].</summary>
    public Interval OfWinning { get; init; }
}
