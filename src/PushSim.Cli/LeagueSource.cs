using PushSim.Analysis.Chance;
using PushSim.Analysis.Ladder;
using PushSim.Cli.Chance;
using PushSim.Simulation;

namespace PushSim.Cli;

/// <summary>The matches of every pair of a league in one row, pair after pair and round after round, so that an interrupted league has nearly as many of each.</summary>
internal sealed class LeagueSource(IReadOnlyList<FileMatchSource> pairs) : IMatchSource
{
    public ScenarioSettings? Match(long number, out string cause) => pairs[(int)(number % pairs.Count)].Match(number / pairs.Count, out cause);

    /// <summary>A seed of each pair's own, so that pairs do not share their draws.</summary>
    public static ulong SeedOf(ulong seed, string pair) => seed ^ Philox.NumberOf(pair);

    /// <summary>The record of one pair.</summary>
    public PairRecord Record(int pair, int first, int second, IEnumerable<MatchOutcome> outcomes)
    {
        var tally = Tally.Of(outcomes.Where(o => o.Number % pairs.Count == pair));
        return new PairRecord(first, second, tally.Wins, tally.Losses, tally.Stalemates);
    }
}
