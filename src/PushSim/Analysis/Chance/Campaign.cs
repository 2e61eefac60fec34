namespace PushSim.Analysis.Chance;

/// <summary>Runs the matches of a range of numbers that are not finished yet, and stops when the interval is as narrow as asked. It looks only after every whole
/// <see cref="Look"/> matches in the order of their numbers, so that the end does not depend on threads; looking again and again makes the interval a
/// little less sure than its 95 % (see the tests).</summary>
public static class Campaign
{
    /// <summary>Matches between two looks at the interval [1].</summary>
    public const int Look = 200;

    /// <summary>Runs what is missing.</summary>
    /// <param name="runner">Runs the matches.</param>
    /// <param name="source">Settings by number.</param>
    /// <param name="range">First number, and the one after the last.</param>
    /// <param name="finished">Outcomes that are there already.</param>
    /// <param name="halfWidth">Half-width of the win share's interval at which it stops; 0 runs all [1].</param>
    /// <param name="threads">Threads [1].</param>
    /// <param name="done">Takes each new outcome; one call at a time.</param>
    /// <param name="cancel">Stops; what is finished is returned.</param>
    /// <returns>All outcomes by number.</returns>
    public static IReadOnlyList<MatchEnd> Run(
        IMatchRunner runner, IMatchSource source, (long From, long To) range, IEnumerable<MatchEnd> finished, double halfWidth, int threads, Action<MatchEnd> done, CancellationToken cancel)
    {
        var outcomes = new SortedDictionary<long, MatchEnd>();
        foreach (MatchEnd outcome in finished.Where(o => o.Number >= range.From && o.Number < range.To))
        {
            outcomes[outcome.Number] = outcome;
        }

        var tally = new Tally();
        long length = halfWidth > 0.0 ? Look : range.To - range.From;
        for (long from = range.From; from < range.To && !cancel.IsCancellationRequested; from += length)
        {
            long to = Math.Min(range.To, from + length);
            long[] missing = [.. Numbers(from, to).Where(n => !outcomes.ContainsKey(n))];
            runner.Run(source, missing, Keep, threads, cancel);
            if (cancel.IsCancellationRequested || halfWidth <= 0.0)
            {
                continue;
            }

            foreach (long number in Numbers(from, to))
            {
                tally.Add(outcomes[number]);
            }

            if (tally.Matches > 0 && tally.WinInterval.HalfWidth <= halfWidth)
            {
                return [.. outcomes.Values.Where(o => o.Number < to)];
            }
        }

        return [.. outcomes.Values];

        void Keep(MatchEnd outcome)
        {
            lock (outcomes)
            {
                outcomes[outcome.Number] = outcome;
                done(outcome);
            }
        }
    }

    private static IEnumerable<long> Numbers(long from, long to)
    {
        for (long n = from; n < to; n++)
        {
            yield return n;
        }
    }

    /// <summary>The numbers of one of several nearly equal parts of a whole.</summary>
    /// <param name="part">Which part, from 1 [1].</param>
    /// <param name="parts">Count of parts [1].</param>
    /// <param name="matches">Matches of the whole [1].</param>
    /// <returns>First number, and the one after the last.</returns>
    public static (long From, long To) Part(int part, int parts, long matches) => ((part - 1) * matches / parts, part * matches / parts);
}
