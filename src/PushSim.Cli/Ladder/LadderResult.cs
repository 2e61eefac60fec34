using PushSim.Analysis.Ladder;
using PushSim.Scenarios.Drawing;

namespace PushSim.Cli.Ladder;

/// <summary>Everything that `ladder` reports.</summary>
internal sealed record LadderResult
{
    public required IReadOnlyList<string> Robots { get; init; }

    public required LadderTable Table { get; init; }

    public required long Matches { get; init; }

    public required IReadOnlyList<(string Pair, long Match, string Cause)> Failed { get; init; }

    public required ulong Seed { get; init; }

    public required double MatchesPerSecond { get; init; }

    public required bool IsInterrupted { get; init; }

    public required string Verdict { get; init; }

    public IReadOnlyList<string> Warnings => LadderWords.Warnings(Table, Failed);

    /// <summary>What all matches share, in a sentence.</summary>
    public string Setting { get; init; } = "";

    public static LadderResult Of(DrawnLadder ladder, MatchWork work, ulong seed, string setting, bool isInterrupted)
    {
        IReadOnlyList<string> names = ladder.Names;
        var table = LadderTable.Of(names.Count, ladder.Pairs(work));
        return new LadderResult
        {
            Robots = names,
            Table = table,
            Matches = work.Finished,
            Failed = [.. table.Pairs.SelectMany((p, k) => work.Of(k).Where(o => o.HasFailed).Select(o => ($"{names[p.First]} against {names[p.Second]}", o.Number, MatchWords.Cause(o))))],
            Seed = seed,
            MatchesPerSecond = work.Rate,
            IsInterrupted = isInterrupted,
            Verdict = LadderWords.Verdict(names, table),
            Setting = setting,
        };
    }
}
