using PushSim.Analysis.Chance;

namespace PushSim.Analysis.Ladder;

/// <summary>Who beats whom, and who is best.</summary>
public sealed record LadderTable
{
    // Ladders of equal robots in which some are called apart, at most [1].
    private const double Level = 0.05;

    /// <summary>The pairs.</summary>
    public required IReadOnlyList<PairRecord> Pairs { get; init; }

    /// <summary>Win share of row over column by the places of the robots [1]; null on the diagonal and where no match was finished.</summary>
    public required double?[][] WinShares { get; init; }

    /// <summary>Places and scores of the robots with their 95 % intervals, best first [1]; empty where too few matches link the robots.</summary>
    public required IReadOnlyList<(int Robot, double Score, double Low, double High)> Ranking { get; init; }

    /// <summary>Group of each place of the ranking, from 1: robots of one group are not told apart, each of a later one is behind every one of those before, all pairs at once at 95 % [1].</summary>
    public IReadOnlyList<int> Groups { get; private init; } = [];

    /// <summary>For each place of the ranking the chance that its robot truly stands there, as far as the matches tell [1].</summary>
    public IReadOnlyList<double> RankChances { get; private init; } = [];

    /// <summary>Cycles of three, sure ones first.</summary>
    public required IReadOnlyList<Cycle> Cycles { get; init; }

    /// <summary>Whether a share of a pair's matches was added each way to make the scores finite.</summary>
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
        double[][] chances = fit.RankChances();
        return this with
        {
            Groups = GroupsOf(fit, [.. ranking.Select(r => r.Robot)]),
            RankChances = [.. ranking.Select((r, place) => chances[r.Robot][place])],
            Ranking = ranking, HasPrior = fit.HasPrior, IsLeadSure = lead > ShareInterval.Z * fit.ErrorOfDifference(first, second),
        };
    }

    private static List<int> GroupsOf(Ranking fit, int[] order)
    {
        double z = NormalQuantile.Of(1.0 - (0.5 * Level / (0.5 * order.Length * (order.Length - 1))));
        List<int> groups = [1];
        for (int k = 1; k < order.Length; k++)
        {
            // a new group where everybody from here on is behind everybody before
            bool isTold = order[..k].All(a => order[k..].All(b => fit.LogStrengths[a] - fit.LogStrengths[b] > z * fit.ErrorOfDifference(a, b)));
            groups.Add(groups[^1] + (isTold ? 1 : 0));
        }

        return groups;
    }
}
