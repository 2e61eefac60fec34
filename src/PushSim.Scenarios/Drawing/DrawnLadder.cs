using PushSim.Analysis.Chance;
using PushSim.Analysis.Ladder;

namespace PushSim.Scenarios.Drawing;

/// <summary>A league: its robots, the drawn scenario of each pair, and their matches.</summary>
public sealed class DrawnLadder
{
    private readonly List<(int First, int Second)> _places = [];
    private readonly List<IDrawnMatches> _sources = [];
    private readonly List<DrawableResult> _reads = [];

    /// <summary>Reads every pair of robots.</summary>
    /// <param name="files">Robot files, two or more.</param>
    /// <param name="scene">Scenario file with floor, shove and driving for all; null for a plain shove.</param>
    /// <param name="seed">The seed.</param>
    public DrawnLadder(IReadOnlyList<string> files, string? scene, ulong seed)
    {
        string[] names = new string[files.Count];
        for (int i = 0; i < files.Count; i++)
        {
            for (int j = i + 1; j < files.Count; j++)
            {
                DrawableResult read = DrawableScenario.OfPair(files[i], files[j], scene);
                _reads.Add(read);
                if (read.Scenario is not DrawableScenario pair)
                {
                    continue;
                }

                (names[i], names[j]) = (pair.Middle.Robot.Name, names[j] ?? pair.Middle.Opponent!.Robot.Name);
                _places.Add((i, j));
                _sources.Add(new FileMatchSource(pair, SeedOf(seed, $"{i}:{pair.Middle.Robot.Name}/{j}:{pair.Middle.Opponent!.Robot.Name}")));
            }
        }

        Names = [.. names.Select((n, i) => names.Count(o => o == n) > 1 ? $"{n} ({Path.GetFileNameWithoutExtension(files[i])} {i + 1})" : n)];
    }

    /// <summary>Names of the robots, each different.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>What was read, pair by pair; a pair without a scenario has errors.</summary>
    public IReadOnlyList<DrawableResult> Reads => _reads;

    /// <summary>The matches of all pairs, one contest each, since like matches share the processor's lanes.</summary>
    /// <param name="plan">Which matches.</param>
    /// <param name="words">Keys and words of what is kept.</param>
    /// <param name="store">Where finished matches are kept; null keeps none.</param>
    public MatchWork Work(MatchPlan plan, IMatchWords words, IMatchStore? store = null) => new(plan, Fingerprint.Of(_reads.Select(Fingerprint.Of)), _sources, words, store);

    /// <summary>Wins, losses and stalemates of each pair.</summary>
    public IReadOnlyList<PairRecord> Pairs(MatchWork work) => [.. _places.Select((p, k) =>
    {
        var tally = Tally.Of(work.Of(k));
        return new PairRecord(p.First, p.Second, tally.Wins, tally.Losses, tally.Stalemates);
    })];

    // A seed of each pair's own, so that pairs do not share their draws.
    private static ulong SeedOf(ulong seed, string pair) => seed ^ Philox.NumberOf(pair);
}
