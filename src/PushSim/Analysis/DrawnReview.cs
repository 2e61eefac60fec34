using PushSim.Analysis.Chance;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis;

/// <summary>A shove a few times with drawn values, so that the verdict of one run does not stand alone where the odds are open: the first block of draws of the same contest and seed as `odds`.</summary>
public static class DrawnReview
{
    /// <summary>Matches: a block of draws [1].</summary>
    public const int Matches = LatinBlock.Size;

    /// <summary>Plays the matches.</summary>
    /// <param name="source">Gives the matches.</param>
    /// <param name="work">The work for them.</param>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static DrawnSet Of(IMatchSource source, WorkBudget work)
    {
        ScenarioSettings[] matches = [.. Enumerable.Range(0, Matches).Select(n => source.Match(n, out _)).OfType<ScenarioSettings>()];
        MatchOutcome[] ends = [.. MatchSet.Play(matches, work).Where(e => e.Status != RunStatus.Failed)];
        return new DrawnSet(ends.Count(e => e.Winner == 0), ends.Count(e => e.Winner == 1), ends.Count(e => e.Winner < 0));
    }
}
