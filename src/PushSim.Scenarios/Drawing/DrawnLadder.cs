using PushSim.Analysis.Chance;
using PushSim.Analysis.Ladder;
using PushSim.Scenarios.Reading;

namespace PushSim.Scenarios.Drawing;

/// <summary>A league: its robots, the drawn scenario of each pair, and their matches.</summary>
public sealed class DrawnLadder
{
    private readonly List<(int First, int Second, DrawableScenario Pair)> _pairs = [];
    private readonly List<FileMatchSource> _sources;
    private readonly List<DrawableResult> _reads = [];

    /// <summary>Reads every pair of robots.</summary>
    /// <param name="files">Robot files, two or more.</param>
    /// <param name="scene">Scenario file with floor, shove and driving for all; null for a plain shove.</param>
    /// <param name="seed">The seed.</param>
    /// <param name="options">Limits of reading, and what is set anew in every robot; null: the defaults.</param>
    public DrawnLadder(IReadOnlyList<string> files, string? scene, ulong seed, ReadOptions? options = null)
    {
        string[] names = new string[files.Count];
        options = options is null ? null : options with { Set = [.. options.Set.SelectMany(s => SetValues.OwnerOf(s.Path) == "robot" ? new[] { s, ("opponent." + s.Path, s.Value) } : [s])] };
        for (int i = 0; i < files.Count; i++)
        {
            for (int j = i + 1; j < files.Count; j++)
            {
                DrawableResult read = DrawableScenario.OfPair(files[i], files[j], scene, options);
                _reads.Add(read);
                if (read.Scenario is not DrawableScenario pair)
                {
                    continue;
                }

                (names[i], names[j]) = (pair.Middle.Robot.Name, names[j] ?? pair.Middle.Opponent!.Robot.Name);
                _pairs.Add((i, j, pair));
            }
        }

        Names = [.. names.Select((n, i) => names.Count(o => o == n) > 1 ? $"{n} ({Path.GetFileNameWithoutExtension(files[i])} {i + 1})" : n)];

        // each pair has a label and so draws of its own
        _sources = [.. _pairs.Select(p => new FileMatchSource(p.Pair, new ContestKey(seed, ContestKey.Of(Names[p.First], Names[p.Second]))))];
    }

    /// <summary>Names of the robots, each different.</summary>
    public IReadOnlyList<string> Names { get; }

    /// <summary>What was read, pair by pair; a pair without a scenario has errors.</summary>
    public IReadOnlyList<DrawableResult> Reads => _reads;

    /// <summary>The matches of all pairs, one contest each, since like matches share the processor's lanes.</summary>
    /// <param name="plan">Which matches.</param>
    /// <param name="words">Keys and words of what is kept.</param>
    /// <param name="store">Where finished matches are kept; null keeps none.</param>
    public KeptMatches Work(MatchPlan plan, IMatchWords words, IMatchStore? store = null) => new(plan, () => [.. _reads.Zip(_sources, Fingerprint.Of)], _sources, words, store);

    /// <summary>Wins, losses and stalemates of each pair.</summary>
    public IReadOnlyList<PairRecord> Pairs(KeptMatches work) => [.. _pairs.Select((p, k) =>
    {
        Tally tally = work.TallyOf(k);
        return new PairRecord(p.First, p.Second, tally.Wins, tally.Losses, tally.Stalemates) { Worth = tally.LeadWorth, WinInterval = tally.WinInterval };
    })];
}
