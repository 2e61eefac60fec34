using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Chance;

/// <summary>
/// Plausible pairs of robots, each fought several times: tells what is unknown once (whoever has the better tyres today keeps them) from what varies each time. The share over everything
/// comes from one match of each of many pairs, and only its spread from these, so that a share costs no more than before.
/// </summary>
/// <param name="Pairs">The pairs, by number; those of which a match failed are left out.</param>
/// <param name="Tries">Matches of each pair [1].</param>
public sealed record PairOdds(IReadOnlyList<PairBout> Pairs, int Tries)
{
    /// <summary>Matches of each pair that are usually fought, the first among them [1].</summary>
    public const int UsualTries = 8;

    // Two blocks of draws; a pair for so many matches, so that they cost at most half as much again [1].
    private const int MostPairs = 2 * LatinBlock.Size;
    private const int MatchesAPair = 14;

    /// <summary>Fewer pairs than this tell nothing of a spread [1].</summary>
    public const int LeastPairs = 8;

    /// <summary>Pairs that won every match [1].</summary>
    public int Always => Pairs.Count(p => p.Wins == p.Matches);

    /// <summary>Pairs that won none [1].</summary>
    public int Never => Pairs.Count(p => p.Wins == 0);

    /// <summary>Share of a win's variance that is unknown once and not luck of the match, 0..1; 0 where all pairs win or lose all: nothing is open then [1].</summary>
    public double UnknownShare
    {
        get
        {
            // variance between pairs by analysis of variance, over all variance; Fleiss, Statistical Methods for Rates and Proportions, ICC of a binary trait (from memory)
            double mean = Pairs.Average(p => (double)p.Wins / Tries);
            double within = Pairs.Average(p => (double)p.Wins * (Tries - p.Wins) / (Tries * (Tries - 1.0)));
            double all = mean * (1.0 - mean);
            return all <= 0.0 ? 0.0 : Math.Clamp(1.0 - (within / all), 0.0, 1.0);
        }
    }

    /// <summary>How many pairs are fought: none for few matches [1].</summary>
    /// <param name="drawn">Matches that were drawn [1].</param>
    /// <param name="most">Pairs at most, whatever they cost; 0: the usual number [1].</param>
    public static int Count(long drawn, int most = 0) => (int)(most > 0 ? Math.Min(most, drawn) : Math.Min(MostPairs, drawn / MatchesAPair)) is var pairs && pairs >= LeastPairs ? pairs : 0;

    /// <summary>Matches that are fought beside the drawn ones [1].</summary>
    /// <param name="drawn">Matches that were drawn [1].</param>
    /// <param name="most">Pairs at most; 0: the usual number [1].</param>
    public static long More(long drawn, int most = 0) => (long)Count(drawn, most) * (UsualTries - 1);

    /// <summary>Fights them.</summary>
    /// <param name="source">The matches.</param>
    /// <param name="drawn">The matches as they were drawn, by number; each is the first one of its pair.</param>
    /// <param name="count">How many were drawn [1].</param>
    /// <param name="threads">Threads [1].</param>
    /// <param name="done">Called after each match, one call at a time; null for nobody.</param>
    /// <param name="most">Pairs at most; 0: the usual number [1].</param>
    /// <param name="cancel">Stops.</param>
    /// <returns>Null if it was cancelled, or too few were drawn.</returns>
    public static PairOdds? Of(IDrawnMatches source, IEnumerable<MatchEnd> drawn, long count, int threads, Action? done = null, int most = 0, CancellationToken cancel = default) =>
        Of(source, drawn, count, new BatchMatchRunner(source.Middle), threads, done, most, cancel);

    /// <summary>Fights them by a runner of one's own.</summary>
    /// <param name="source">The matches.</param>
    /// <param name="drawn">The matches as they were drawn, by number.</param>
    /// <param name="count">How many were drawn [1].</param>
    /// <param name="runner">Runs them.</param>
    /// <param name="threads">Threads [1].</param>
    /// <param name="done">Called after each match; null for nobody.</param>
    /// <param name="most">Pairs at most; 0: the usual number [1].</param>
    /// <param name="cancel">Stops.</param>
    public static PairOdds? Of(IMatchSource source, IEnumerable<MatchEnd> drawn, long count, IMatchRunner runner, int threads, Action? done = null, int most = 0, CancellationToken cancel = default)
    {
        Dictionary<long, List<MatchEnd>> pairs = drawn.Take(Count(count, most)).Where(m => !m.HasFailed).ToDictionary(m => m.Number, m => new List<MatchEnd> { m });
        long[] numbers = [.. pairs.Keys.Order().SelectMany(n => Enumerable.Range(1, UsualTries - 1).Select(t => n + (t * DrawFactor.Again))).OrderBy(n => n)];
        var gate = new Lock();
        runner.Run(source, numbers, Add, threads, cancel);
        PairBout[] bouts = [.. pairs.OrderBy(p => p.Key).Where(p => p.Value.Count == UsualTries && !p.Value.Exists(m => m.HasFailed)).Select(p => Bout(p.Key, p.Value))];
        return cancel.IsCancellationRequested || bouts.Length < LeastPairs ? null : new PairOdds(bouts, UsualTries);

        void Add(MatchEnd end)
        {
            lock (gate)
            {
                pairs[end.Number & (DrawFactor.Again - 1)].Add(end);
                done?.Invoke();
            }
        }
    }

    /// <summary>Share of bouts of so many matches that the first robot wins by winning more than it loses: that of single matches over all that were drawn, and what the pairs add to it [1].</summary>
    /// <param name="matches">Matches of a bout, 1 to <see cref="Tries"/> [1].</param>
    /// <param name="tally">All matches that were drawn.</param>
    /// <returns>The share and its counting error, 95 %.</returns>
    public Interval BestOf(int matches, Tally tally)
    {
        // the pairs' own share of single matches is far less sure than that of all, and goes with that of their bouts: only the difference counts
        double[] more = [.. Pairs.Select(p => p.BestOf(matches) - p.BestOf(1))];
        double mean = more.Average();
        double single = tally.Share(tally.Wins);
        double scatter = more.Sum(m => (m - mean) * (m - mean)) / (more.Length - 1.0) / more.Length;
        double off = StudentT.Factor(0.95, more.Length - 1) * Math.Sqrt(scatter);
        double middle = Math.Clamp(single + mean, 0.0, 1.0);
        Bounds win = tally.WinInterval;
        return new Interval(middle, Math.Clamp(middle - double.Hypot(single - win.Low, off), 0.0, 1.0), Math.Clamp(middle + double.Hypot(win.High - single, off), 0.0, 1.0));
    }

    private static PairBout Bout(long number, List<MatchEnd> ends) => new(number, ends.Count(e => e.Winner == 0), ends.Count(e => e.Winner == 1), ends.Count(e => e.Winner < 0));
}
