using PushSim.Analysis.Ladder;
using PushSim.Cli.Matches;
using PushSim.Scenarios.Drawing;

namespace PushSim.Cli.Ladder;

/// <summary>Everything that `ladder` reports.</summary>
/// <param name="Robots">Their names.</param>
/// <param name="Table">Who beats whom.</param>
/// <param name="Matches">Finished matches of all pairs [1].</param>
/// <param name="Failed">The first matches of each pair that failed: whose, which, and why.</param>
/// <param name="FailedMatches">How many failed [1].</param>
/// <param name="Seed">Of the draws.</param>
/// <param name="MatchesPerSecond">How fast they were [1/s].</param>
/// <param name="Setting">What all matches share, in a sentence.</param>
/// <param name="IsInterrupted">Whether some matches are missing.</param>
internal sealed record LadderResult(
    IReadOnlyList<string> Robots, LadderTable Table, long Matches, IReadOnlyList<(string Pair, long Match, string Cause)> Failed, long FailedMatches, ulong Seed, double MatchesPerSecond, string Setting, bool IsInterrupted)
{
    public string Verdict => LadderWords.Verdict(Robots, Table);

    public IReadOnlyList<string> Warnings => LadderWords.Warnings(Table, Failed);

    public static LadderResult Of(DrawnLadder ladder, KeptMatches work, ulong seed, string? scene, bool isInterrupted)
    {
        IReadOnlyList<string> names = ladder.Names;
        var table = LadderTable.Of(names.Count, ladder.Pairs(work));
        IEnumerable<(string, long, string)> failed = table.Pairs.SelectMany((p, k) => work.TallyOf(k).FirstFailed.Select(o => ($"{names[p.First]} against {names[p.Second]}", o.Number, MatchWords.Cause(o))));
        DrawableScenario match = ladder.Reads[0].Scenario!;
        var drawn = match.Values.Where(v => v.Owner.Length == 0).DistinctBy(v => v.Key).ToDictionary(v => v.Key, v => (v.Middle, v.Tolerance, v.Spread), StringComparer.Ordinal);
        return new LadderResult(names, table, work.Finished, [.. failed], table.Pairs.Select((_, k) => work.TallyOf(k).Failed).Sum(), seed, work.Rate, $"{MatchSettingWords.Of(match.Middle, drawn, Path.GetFileName(scene))} {UsualTolerances.Of(ladder.Reads.SelectMany(r => r.Scenario!.Values))}".TrimEnd(), isInterrupted);
    }
}
