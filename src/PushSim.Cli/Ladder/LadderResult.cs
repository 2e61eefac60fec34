using System.Globalization;
using PushSim.Analysis.Chance;
using PushSim.Analysis.Ladder;
using PushSim.Words.Matches;

namespace PushSim.Cli.Ladder;

/// <summary>Everything that `ladder` reports.</summary>
internal sealed record LadderResult
{
    public required IReadOnlyList<string> Robots { get; init; }

    public required IReadOnlyList<PairRecord> Pairs { get; init; }

    /// <summary>Win share of row over column in the order of the files [1]; null on the diagonal and where no match was finished.</summary>
    public required double?[][] WinShares { get; init; }

    /// <summary>Places of the robots, best first; null where too few matches link the robots.</summary>
    public required IReadOnlyList<(int Robot, double Score, double Low, double High)> Ranking { get; init; }

    public required IReadOnlyList<Cycle> Cycles { get; init; }

    public required long Matches { get; init; }

    public required IReadOnlyList<(string Pair, long Match, string Cause)> Failed { get; init; }

    public required ulong Seed { get; init; }

    public required double MatchesPerSecond { get; init; }

    public required bool IsInterrupted { get; init; }

    public required bool HasPrior { get; init; }

    public required string Verdict { get; init; }

    /// <summary>What all matches share, in a sentence.</summary>
    public string Setting { get; init; } = "";

    public static LadderResult Of(string[] names, PairRecord[] pairs, IReadOnlyList<IReadOnlyList<MatchEnd>> outcomes, ulong seed, double rate, bool isInterrupted)
    {
        int n = names.Length;
        double?[][] shares = [.. Enumerable.Range(0, n).Select(_ => new double?[n])];
        foreach (PairRecord p in pairs.Where(p => p.Matches > 0.0))
        {
            shares[p.First][p.Second] = p.Wins / p.Matches;
            shares[p.Second][p.First] = p.Losses / p.Matches;
        }

        // a pair without a match says nothing, and a robot without one has no place
        bool isComplete = Array.TrueForAll(pairs, p => p.Matches > 0.0);
        Ranking? fit = isComplete ? Analysis.Ladder.Ranking.Fit(n, pairs) : null;
        List<(int Robot, double Score, double Low, double High)> ranking = fit is null ? [] : [.. Enumerable.Range(0, n)
            .Select(i => (Robot: i, S: fit.Score(i))).OrderByDescending(r => r.S.Score).ThenBy(r => r.Robot).Select(r => (r.Robot, r.S.Score, r.S.Low, r.S.High))];
        IReadOnlyList<Cycle> cycles = Analysis.Ladder.Cycles.Find(n, pairs);
        return new LadderResult
        {
            Robots = names,
            Pairs = pairs,
            WinShares = shares,
            Ranking = ranking,
            Cycles = cycles,
            Matches = outcomes.Sum(o => o.Count),
            Failed = [.. outcomes.SelectMany((list, k) => list.Where(o => o.HasFailed).Select(o => (Name(names, pairs[k]), o.Number, MatchWords.Cause(o))))],
            Seed = seed,
            MatchesPerSecond = rate,
            IsInterrupted = isInterrupted,
            HasPrior = fit?.HasPrior ?? false,
            Verdict = Words(names, fit, ranking, cycles),
        };
    }

    private static string Name(string[] names, PairRecord p) => $"{names[p.First]} against {names[p.Second]}";

    private static string Words(string[] names, Ranking? fit, List<(int Robot, double Score, double Low, double High)> ranking, IReadOnlyList<Cycle> cycles)
    {
        if (fit is null)
        {
            return "Some pairs have no finished match, so there is no ranking.";
        }

        (int first, int second) = (ranking[0].Robot, ranking[1].Robot);
        double lead = fit.LogStrengths[first] - fit.LogStrengths[second];
        bool isClear = lead > ShareInterval.Z * fit.ErrorOfDifference(first, second);
        string sure = isClear ? "" : string.Create(CultureInfo.InvariantCulture, $", though its lead over {names[second]} may be chance");
        Cycle[] all = [.. cycles.Where(c => c.IsSure)];
        string circle = all.Length == 0 ? "" : $" But {names[all[0].First]} beats {names[all[0].Second]}, {names[all[0].Second]} beats {names[all[0].Third]} and {names[all[0].Third]} beats {names[all[0].First]}: no ranking shows that.";
        return $"{names[first]} leads the ladder{sure}; the order is {string.Join(", ", ranking.Select(r => names[r.Robot]))}.{circle}";
    }
}
