using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>Gives the settings of a match by its number; safe from several threads.</summary>
public interface IMatchSource
{
    /// <summary>The settings of a match; null if its draws contradict each other.</summary>
    /// <param name="number">Number of the match, from 0.</param>
    /// <param name="cause">Why there are none; empty if there are.</param>
    ScenarioSettings? Match(long number, out string cause);
}
