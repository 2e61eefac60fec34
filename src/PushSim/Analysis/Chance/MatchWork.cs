namespace PushSim.Analysis.Chance;

/// <summary>The drawn matches of one contest or of several: run, kept as they end, gone on with, split into parts and joined. A part holds its share of every contest's
/// matches, so that each part takes about as long as any other.</summary>
/// <param name="plan">Which matches.</param>
/// <param name="fingerprint">Of all that is read and drawn; kept matches with another one are not taken.</param>
/// <param name="contests">The contests.</param>
/// <param name="words">Keys and words of what is kept.</param>
/// <param name="store">Where finished matches are kept; null keeps none.</param>
public sealed class MatchWork(MatchPlan plan, string fingerprint, IReadOnlyList<IDrawnMatches> contests, IMatchWords words, IMatchStore? store = null)
{
    private readonly List<MatchEnd>[] _outcomes = [.. contests.Select(_ => new List<MatchEnd>())];
    private double _before;
    private double _seconds;
    private long _timed;

    /// <summary>Matches that are there [1].</summary>
    public long Finished => _outcomes.Sum(o => (long)o.Count);

    /// <summary>Matches of this part, or of the whole without parts, of all contests together [1].</summary>
    public long All => (Range.To - Range.From) * contests.Count;

    /// <summary>Matches in a second of one process [1/s]; 0 if none was timed.</summary>
    public double Rate => _seconds > 0.0 ? _timed / _seconds : 0.0;

    /// <summary>Head of what is kept.</summary>
    public FinishedHead Kept => Head(Part.K, Part.N);

    private (int K, int N) Part => plan.Part ?? (1, 1);

    private (long From, long To) Range => Campaign.Part(Part.K, Part.N, plan.Matches);

    /// <summary>Finished matches of a contest, by number.</summary>
    /// <param name="contest">Number of the contest, from 0 [1].</param>
    public IReadOnlyList<MatchEnd> Of(int contest) => _outcomes[contest];

    /// <summary>Takes over what an earlier run kept.</summary>
    /// <returns>False if what is kept is of something else, which the next run replaces.</returns>
    public bool Resume()
    {
        using TextReader? reader = store?.Open(Kept.Name);
        IReadOnlyList<(int Contest, MatchEnd End)>? kept = FinishedMatches.Read(reader, Kept, words, out _before);
        Take(kept ?? [], Range);
        return reader is null || kept is not null;
    }

    /// <summary>Runs what is missing.</summary>
    /// <param name="within">Half-width of the first contest's win share at which it stops, the others after as many; 0 runs all [1].</param>
    /// <param name="rounds">Rounds over all contests, so that an interrupt leaves some matches of each [1].</param>
    /// <param name="done">Called after each match, one call at a time; null for nobody.</param>
    /// <param name="clock">Time since any start [s]; null times nothing.</param>
    /// <param name="cancel">Stops; what is finished is kept.</param>
    public void Run(double within = 0.0, int rounds = 1, Action? done = null, Func<double>? clock = null, CancellationToken cancel = default)
    {
        (long from, long to) = Range;
        using FinishedMatches? journal = store is null ? null : FinishedMatches.Begin(store, Kept, words, _outcomes, _before);
        IMatchRunner[] runners = [.. contests.Select(c => new BatchMatchRunner(c.Middle))];
        double start = clock?.Invoke() ?? 0.0;
        for (int round = 1; round <= rounds; round++)
        {
            long end = from + Campaign.Part(round, rounds, to - from).To;
            for (int c = 0; c < contests.Count && !cancel.IsCancellationRequested; c++)
            {
                int contest = c;
                IReadOnlyList<MatchEnd> ends = Campaign.Run(runners[c], contests[c], (from, end), _outcomes[c], c == 0 ? within : 0.0, plan.Threads, o => Add(contest, o), cancel);
                end = c == 0 && within > 0.0 ? from + ends.Count : end;
                _outcomes[c] = [.. ends, .. _outcomes[c].Where(o => o.Number >= end && within <= 0.0)];
            }
        }

        double seconds = (clock?.Invoke() ?? 0.0) - start;
        journal?.AddSeconds(seconds);
        _seconds += seconds;

        void Add(int contest, MatchEnd outcome)
        {
            journal?.Add(contest, outcome);
            _timed++;
            done?.Invoke();
        }
    }

    /// <summary>Joins the finished parts of the store.</summary>
    public MergeState Merge()
    {
        int[] splits = [.. store!.Names.Select(FinishedHead.PartsOf).Where(c => c > 0).Distinct()];
        List<PartState> missing = [];
        for (int k = 1; splits.Length == 1 && k <= splits[0]; k++)
        {
            FinishedHead head = Head(k, splits[0]);
            (long From, long To) range = Campaign.Part(k, splits[0], plan.Matches);
            using TextReader? reader = store.Open(head.Name);
            IReadOnlyList<(int Contest, MatchEnd End)> found = FinishedMatches.Read(reader, head, words, out double seconds) ?? [];
            _seconds += seconds;
            long before = Finished;
            Take(found, range);
            var state = new PartState(k, splits[0], Finished - before, (range.To - range.From) * contests.Count);
            if (state.Finished < state.All)
            {
                missing.Add(state);
            }
        }

        _timed = Finished;
        return new MergeState(splits, missing);
    }

    /// <summary>Removes what there was to go on from, once the result is written; parts of a split stay.</summary>
    public void Forget()
    {
        if (plan is { Merge: false, Part: null })
        {
            store?.Remove(Kept.Name);
        }
    }

    private void Take(IReadOnlyList<(int Contest, MatchEnd End)> found, (long From, long To) range)
    {
        foreach (IGrouping<int, (int Contest, MatchEnd End)> rows in found.Where(r => r.Contest < contests.Count && r.End.Number >= range.From && r.End.Number < range.To).GroupBy(r => r.Contest))
        {
            _outcomes[rows.Key].AddRange(rows.Select(r => r.End).DistinctBy(o => o.Number).OrderBy(o => o.Number));
        }
    }

    private FinishedHead Head(int k, int n) => new(plan.Command, fingerprint, plan.Seed, plan.Matches, k, n);
}
