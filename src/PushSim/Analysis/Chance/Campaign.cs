namespace PushSim.Analysis.Chance;

/// <summary>Runs the matches of a range of numbers that are not finished yet, and stops when the interval is as narrow as asked. It looks only after every whole
/// <see cref="Look"/> matches in the order of their numbers, so that the end does not depend on threads; looking again and again makes the interval a
/// little less sure than its 95 % (see the tests).</summary>
public static class Campaign
{
    /// <summary>Matches between two looks at the interval, whole blocks of draws [1].</summary>
    public const int Look = 8 * LatinBlock.Size;

    // Matches that are handed to a runner at once: what ends out of turn, and so waits in memory when it is read again, lies within them [1].
    private const int Most = 1 << 16;

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
        var there = new NumberSet();
        foreach (MatchEnd outcome in finished.Where(o => o.Number >= range.From && o.Number < range.To && there.Add(o.Number)))
        {
            outcomes[outcome.Number] = outcome;
        }

        MatchEnd[] kept = [.. outcomes.Values];
        long end = Play(runner, source, PartNumbers.Whole, range, there, kept, halfWidth, threads, Keep, cancel);
        return [.. outcomes.Values.Where(o => o.Number < end)];

        void Keep(MatchEnd outcome)
        {
            outcomes[outcome.Number] = outcome;
            done(outcome);
        }
    }

    /// <summary>Runs what is missing and keeps no outcome, however many they are.</summary>
    /// <param name="runner">Runs the matches.</param>
    /// <param name="source">Settings by number.</param>
    /// <param name="part">The numbers.</param>
    /// <param name="range">First of their places, and the one after the last [1].</param>
    /// <param name="there">Places of the outcomes that are there; new ones are added.</param>
    /// <param name="kept">The outcomes that are there, in the order of their numbers; read only where <paramref name="halfWidth"/> is above 0.</param>
    /// <param name="halfWidth">Half-width of the win share's interval at which it stops; 0 runs all [1].</param>
    /// <param name="threads">Threads [1].</param>
    /// <param name="done">Takes each new outcome; one call at a time.</param>
    /// <param name="cancel">Stops.</param>
    /// <returns>The place after the last that counts [1].</returns>
    public static long Play(
        IMatchRunner runner, IMatchSource source, PartNumbers part, (long From, long To) range, NumberSet there, IEnumerable<MatchEnd> kept, double halfWidth, int threads, Action<MatchEnd> done, CancellationToken cancel)
    {
        var gate = new Lock();
        if (halfWidth <= 0.0)
        {
            Fill(range.From, range.To, done);
            return range.To;
        }

        var tally = new Tally();
        using IEnumerator<MatchEnd> old = kept.GetEnumerator();
        bool hasOld = old.MoveNext();
        for (long from = range.From; from < range.To; from += Look)
        {
            long to = Math.Min(range.To, from + Look);
            Fill(from, to, Both);
            if (cancel.IsCancellationRequested)
            {
                return range.To;
            }

            for (; hasOld && part.PlaceOf(old.Current.Number) < to; hasOld = old.MoveNext())
            {
                tally.Add(old.Current);
            }

            if (tally.Matches > 0 && tally.WinInterval.HalfWidth <= halfWidth)
            {
                return to;
            }
        }

        return range.To;

        void Both(MatchEnd outcome)
        {
            tally.Add(outcome);
            done(outcome);
        }

        void Fill(long from, long to, Action<MatchEnd> take)
        {
            for (long at = from; at < to && !cancel.IsCancellationRequested;)
            {
                long[] missing = there.Missing(at, to, Most);
                at = missing.Length < Most ? to : missing[^1] + 1;
                if (missing.Length > 0)
                {
                    runner.Run(source, [.. missing.Select(part.NumberAt)], Keep, threads, cancel);
                }
            }

            void Keep(MatchEnd outcome)
            {
                lock (gate)
                {
                    there.Add(part.PlaceOf(outcome.Number));
                    take(outcome);
                }
            }
        }
    }

    /// <summary>The numbers of one of several nearly equal parts of a whole.</summary>
    /// <param name="part">Which part, from 1 [1].</param>
    /// <param name="parts">Count of parts [1].</param>
    /// <param name="matches">Matches of the whole [1].</param>
    /// <returns>First number, and the one after the last.</returns>
    public static (long From, long To) Part(int part, int parts, long matches) => ((part - 1) * matches / parts, part * matches / parts);
}
