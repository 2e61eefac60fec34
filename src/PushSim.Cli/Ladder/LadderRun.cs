using PushSim.Analysis.Chance;
using PushSim.Analysis.Ladder;
using PushSim.Cli.Matches;
using PushSim.Cli.Shared;
using PushSim.Numerics;
using PushSim.Scenarios.Drawing;
using PushSim.Scenarios.Scenes;

namespace PushSim.Cli.Ladder;

/// <summary>A league: its robots, the drawn scenario of each pair, and their matches.</summary>
internal sealed class LadderRun(string[] files, string? scene, MatchPlan plan)
{
    private readonly List<(int First, int Second)> _places = [];
    private readonly List<FileMatchSource> _sources = [];
    private readonly List<DrawableResult> _reads = [];
    private string[] _names = [];

    /// <summary>What was read, pair by pair.</summary>
    public IReadOnlyList<ReadResult> Reads => [.. _reads.Select(r => r.Read)];

    public bool Open(TextWriter error, out int code)
    {
        code = ExitCode.Done;
        var told = new HashSet<string>(StringComparer.Ordinal);
        string[] names = new string[files.Length];
        for (int i = 0; i < files.Length; i++)
        {
            for (int j = i + 1; j < files.Length; j++)
            {
                DrawableResult read = DrawableScenario.OfPair(files[i], files[j], scene);
                ProblemWriter.Write(error, read.Read.Problems.Where(p => told.Add(p.ToString())));
                if (read.Scenario is not DrawableScenario pair)
                {
                    code = read.Read.CannotRead ? ExitCode.CannotReadOrWrite : ExitCode.WrongInput;
                    continue;
                }

                (names[i], names[j]) = (pair.Middle.Robot.Name, names[j] ?? pair.Middle.Opponent!.Robot.Name);
                _reads.Add(read);
                _places.Add((i, j));
                _sources.Add(new FileMatchSource(pair, SeedOf(plan.Seed, $"{i}:{pair.Middle.Robot.Name}/{j}:{pair.Middle.Opponent!.Robot.Name}")));
            }
        }

        _names = [.. names.Select((n, i) => names.Count(o => o == n) > 1 ? $"{n} ({Path.GetFileNameWithoutExtension(files[i])} {i + 1})" : n)];
        return code == ExitCode.Done;
    }

    /// <summary>The matches of all pairs, one contest each, since like matches share the processor's lanes.</summary>
    public MatchWork Work(TextWriter error, CancellationToken cancel) => new(plan, Fingerprint.Of(_reads.Select(Fingerprint.Of)), _sources, error, cancel);

    public LadderResult Result(MatchWork work, bool isInterrupted)
    {
        PairRecord[] pairs = [.. _places.Select((p, k) =>
        {
            var tally = Tally.Of(work.Of(k));
            return new PairRecord(p.First, p.Second, tally.Wins, tally.Losses, tally.Stalemates);
        })];
        return LadderResult.Of(_names, pairs, [.. _places.Select((_, k) => work.Of(k))], plan.Seed, work.Rate, isInterrupted) with
        {
            Setting = MatchSetting.Of(_reads[0].Scenario!, scene),
        };
    }

    // A seed of each pair's own, so that pairs do not share their draws.
    private static ulong SeedOf(ulong seed, string pair) => seed ^ Philox.NumberOf(pair);
}
