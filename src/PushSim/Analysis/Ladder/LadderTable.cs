using PushSim.Analysis.Chance;

namespace PushSim.Analysis.Ladder;

/// <summary>Who beats whom, and who is best.</summary>
public sealed record LadderTable
{
    /// <summary>The pairs.</summary>
    public required IReadOnlyList<PairRecord> Pairs { get; init; }

    /// <summary>Win share of row over column by the places of the robots [1]; null on the diagonal and where no match was finished.</summary>
    public required double?[][] WinShares { get; init; }

    /// <summary>Places and scores of the robots with their 95 % intervals, best first [1]; empty where too few matches link the robots.</summary>
    public required IReadOnlyList<(int Robot, double Score, double Low, double High)> Ranking { get; init; }

    /// <summary>Cycles of three, sure ones first.</summary>
    public required IReadOnlyList<Cycle> Cycles { get; init; }

    /// <summary>Whether half a win each way was added to every pair to make the scores finite.</summary>
    public bool HasPrior { get; init; }

    /// <summary>Whether the first robot's lead over the second is more than chance explains (95 % interval).</summary>
    public bool IsLeadSure { get; init; }

    /// <summary>Out of the matches of all pairs.</summary>
    /// <param name="robots">Count of robots, at least 2 [1].</param>
    /// <param name="pairs">Matches of each pair.</param>
    public static LadderTable Of(int robots, IReadOnlyList<PairRecord> pairs)
    {
        double?[][] shares = [.. Enumerable.Range(0, robots).Select(_ => new double?[robots])];
        foreach (PairRecord p in pairs.Where(p => p.Matches > 0.0))
        {
            shares[p.First][p.Second] = p.Wins / p.Matches;
            shares[p.Second][p.First] = p.Losses / p.Matches;
        }

        var table = new LadderTable { Pairs = pairs, WinShares = shares, Ranking = [], Cycles = Ladder.Cycles.Find(robots, pairs) };

        // a pair without a match says nothing, and a robot without one has no place
        return pairs.All(p => p.Matches > 0.0) ? table.Ranked(Ladder.Ranking.Fit(robots, pairs)) : table;
    }

    private LadderTable Ranked(Ranking fit)
    {
        (int Robot, double Score, double Low, double High)[] ranking = [.. fit.LogStrengths
            .Select((_, i) => (Robot: i, S: fit.Score(i))).OrderByDescending(r => r.S.Score).ThenBy(r => r.Robot).Select(r => (r.Robot, r.S.Score, r.S.Low, r.S.High))];
        (int first, int second) = (ranking[0].Robot, ranking[1].Robot);
        double lead = fit.LogStrengths[first] - fit.LogStrengths[second];
        return this with { Ranking = ranking, HasPrior = fit.HasPrior, IsLeadSure = lead > ShareInterval.Z * fit.ErrorOfDifference(first, second) };
    }
}
