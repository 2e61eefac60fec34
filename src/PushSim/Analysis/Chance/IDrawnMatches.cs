using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>Matches whose values are drawn by their number: what is drawn, and the scenario that all of them stray from.</summary>
public interface IDrawnMatches : IMatchSource
{
    /// <summary>What is drawn.</summary>
    IReadOnlyList<DrawnQuantity> Quantities { get; }

    /// <summary>The scenario without draws, as accurate as the matches.</summary>
    ScenarioSettings Middle { get; }

    /// <summary>Number type of the matches' equations.</summary>
    Precision Precision => Middle.Numerics.Precision;

    /// <summary>The draws of a match, in the order of <see cref="Quantities"/> [unit of each].</summary>
    /// <param name="number">Number of the match, from 0.</param>
    double[] Values(long number);

    /// <summary>Names of the causes of error that stand by themselves; where each quantity does, its own.</summary>
    IReadOnlyList<string> Causes => [.. Quantities.Select(q => q.Name)];

    /// <summary>How the causes lie in a match, in any measure that rises with them [unit of each].</summary>
    /// <param name="number">Number of the match, from 0.</param>
    double[] CausesOf(long number) => Values(number);
}
