using System.Runtime.ExceptionServices;
using System.Security.Cryptography;
using System.Text;
using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>The drawn matches of one contest or of several: run, kept as they end, gone on with, split into parts and joined. A part holds its share of every contest's
/// matches, so that each part takes about as long as any other. With a store the matches stay there and are counted as they pass, so that memory does not grow with them.</summary>
/// <param name="plan">Which matches.</param>
/// <param name="prints">What tells each contest from any other: its files, what is drawn, seed and label. Asked only where matches are kept.</param>
/// <param name="contests">The contests.</param>
/// <param name="words">Keys and words of what is kept.</param>
/// <param name="store">Where finished matches are kept; null keeps them in memory.</param>
/// <param name="runner">Runs the matches of a contest; null: in the lanes of the processor.</param>
public sealed class KeptMatches(MatchPlan plan, Func<IReadOnlyList<string>> prints, IReadOnlyList<IDrawnMatches> contests, IMatchWords words, IMatchStore? store = null, Func<IDrawnMatches, IMatchRunner>? runner = null)
{
    // Rows that are read once and then kept in memory [1].
    private const long MostInMemory = 400_000;
    private const string Unfinished = ".new";

    private readonly List<MatchEnd>[] _memory = [.. contests.Select(_ => new List<MatchEnd>())];
    private readonly Lazy<IReadOnlyList<string>> _prints = new(prints);
    private readonly Dictionary<PartNumbers, NumberSet[]> _done = [];
    private Tally[] _tallies = [.. contests.Select(_ => new Tally())];
    private List<MatchEnd>[]? _read;
    private JournalScan? _scan;
    private bool _isResumed;
    private long _end = plan.Matches;
    private uint[]? _keys;
    private (long Played, double Seconds) _speed;

    /// <summary>Matches that are there [1].</summary>
    public long Finished => _done.Sum(d => d.Value.Sum(s => s.CountBelow(d.Key.Count(_end))));

    /// <summary>Matches of this part, or of the whole without parts, of all contests together [1].</summary>
    public long All => Part.Count(plan.Matches) * contests.Count;

    /// <summary>Matches in a second of one process [1/s]; 0 if none was timed.</summary>
    public double Rate => _speed.Seconds > 0.0 ? _speed.Played / _speed.Seconds : 0.0;

    /// <summary>Name under which the matches are kept.</summary>
    public string Name => JournalHead.NameOf(Part);

    /// <summary>Which numbers are played.</summary>
    public PartNumbers Part => plan.Part is (int k, int n) ? new(k, n) : PartNumbers.Whole;

    // doubles if any contest asks for them
    private Precision Precision => contests.All(c => c.Precision == Precision.Single) ? Precision.Single : Precision.Double;

    private uint[] Keys => _keys ??= [.. _prints.Value.Select(p => Key(p, plan.Seed))];

    /// <summary>Counts of a contest.</summary>
    /// <param name="contest">Number of the contest, from 0 [1].</param>
    public Tally TallyOf(int contest) => _tallies[contest];

    /// <summary>Finished matches of a contest, by number. They are read from the store each time they are gone through, where they are many.</summary>
    /// <param name="contest">Number of the contest, from 0 [1].</param>
    public IEnumerable<MatchEnd> Of(int contest)
    {
        if (store is null)
        {
            return _memory[contest].Where(o => o.Number < _end);
        }

        if (_done.Sum(d => d.Value.Sum(s => s.Count)) > MostInMemory)
        {
            return Joined(contest, _end);
        }

        _read ??= [.. contests.Select((_, c) => Joined(c, long.MaxValue / 2).ToList())];
        return _read[contest].Where(o => o.Number < _end);
    }

    /// <summary>Takes over what an earlier run kept. What is of something else, or damaged, is set aside under another name; good matches of a damaged journal are taken.</summary>
    /// <exception cref="IOException">The store cannot be read or written.</exception>
    public ResumeState Resume()
    {
        _isResumed = true;
        if (store is null)
        {
            return ResumeState.Plain;
        }

        // a start that was killed between two names
        if (store.Names.Contains(Name + Unfinished))
        {
            if (store.Names.Contains(Name))
            {
                store.Remove(Name + Unfinished);
            }
            else
            {
                store.Rename(Name + Unfinished, Name);
            }
        }

        if (!store.Names.Contains(Name))
        {
            Begin(null);
            return ResumeState.Plain;
        }

        JournalScan scan = Scan(Part);
        if (scan.Misfit == JournalMisfit.None && scan.Refused == 0)
        {
            Begin(scan);
            return ResumeState.Plain;
        }

        string aside = Aside();
        if (scan.Misfit != JournalMisfit.None)
        {
            store.Rename(Name, aside);
            Begin(null);
            return new ResumeState(aside, scan.Misfit, [], 0);
        }

        using (Stream from = OwnJournal())
        {
            using Stream to = store.Append(Name + Unfinished, 0);
            scan.WriteGood(from, to);
        }

        store.Rename(Name, aside);
        store.Rename(Name + Unfinished, Name);

        // counted anew: a match with two results has none
        _tallies = [.. contests.Select(_ => new Tally())];
        Begin(Scan(Part));
        return new ResumeState(aside, JournalMisfit.None, scan.Problems, scan.Refused);
    }

    /// <summary>Runs what is missing.</summary>
    /// <param name="within">Half-width of the first contest's win share at which it stops, the others after as many; 0 runs all [1].</param>
    /// <param name="rounds">Rounds over all contests, so that an interrupt leaves some matches of each [1].</param>
    /// <param name="done">Called after each match, one call at a time; null for nobody.</param>
    /// <param name="clock">Time since any start [s]; null times nothing.</param>
    /// <param name="cancel">Stops; what is finished is kept.</param>
    /// <exception cref="IOException">The store cannot be read or written.</exception>
    public void Run(double within = 0.0, int rounds = 1, Action? done = null, Func<double>? clock = null, CancellationToken cancel = default)
    {
        if (!_isResumed)
        {
            Resume();
        }

        if (!_done.ContainsKey(Part))
        {
            Begin(null);
        }

        _read = null;
        NumberSet[] there = _done[Part];
        using JournalWriter? journal = store is null ? null : OpenJournal();
        double start = clock?.Invoke() ?? 0.0;
        long played = 0;
        long all = Part.Count(plan.Matches);
        try
        {
            Play();
        }
        catch (AggregateException e) when (e.InnerExceptions.OfType<IOException>().FirstOrDefault() is IOException cause)
        {
            // a full disk is the user's and no fault of ours
            ExceptionDispatchInfo.Throw(cause);
        }

        double seconds = (clock?.Invoke() ?? 0.0) - start;
        _speed = played > 0 ? (played, seconds) : _speed;
        bool isEnd = Array.TrueForAll(there, s => s.CountBelow(all) == all);
        if (played > 0 || _scan?.Closing is not JournalClosing last || last.IsEnd != isEnd || last.Matches != plan.Matches)
        {
            journal?.Close(isEnd, plan.Matches, played, seconds);
        }

        if (store is null)
        {
            Array.ForEach(_memory, m => m.Sort((a, b) => a.Number.CompareTo(b.Number)));
        }

        if (_end < plan.Matches)
        {
            _tallies = [.. contests.Select((_, c) => Tally.Of(Of(c)))];
        }

        void Play()
        {
            IMatchRunner[] runners = [.. contests.Select(c => runner?.Invoke(c) ?? new BatchMatchRunner(c.Middle))];
            for (int round = 1; round <= rounds; round++)
            {
                long to = Campaign.Part(round, rounds, all).To;
                for (int c = 0; c < contests.Count && !cancel.IsCancellationRequested; c++)
                {
                    int contest = c;
                    bool looks = c == 0 && within > 0.0;
                    long end = Campaign.Play(runners[c], contests[c], Part, (0, to), there[c], looks ? Kept() : [], looks ? within : 0.0, plan.Threads, o => Add(contest, o), cancel);
                    (to, _end) = looks && end < to ? (end, end) : (to, _end);
                }
            }
        }

        // what was there before, while new ones are added
        IEnumerable<MatchEnd> Kept() => store is null ? [.. _memory[0].OrderBy(o => o.Number)]
            : JournalReader.InOrder(OwnJournal, 0, Keys, Part, there[0].Copy(), plan.Matches, words);

        void Add(int contest, MatchEnd outcome)
        {
            journal?.Add(contest, outcome);
            Take(contest, outcome);
            played++;
            done?.Invoke();
        }
    }

    // it was there a moment ago
    private Stream OwnJournal() => Journal(Name);

    private Stream Journal(string name) => store!.Open(name) ?? throw new IOException($"{name} is no file any more");

    /// <summary>Joins the finished parts of the store.</summary>
    public MergeState Merge()
    {
        int[] splits = [.. store!.Names.Select(JournalHead.PartsOf).Where(c => c > 0).Distinct().Order()];
        _done.Clear();
        List<PartState> states = [];
        for (int k = 1; splits.Length == 1 && k <= splits[0]; k++)
        {
            states.Add(StateOf(new PartNumbers(k, splits[0])));
        }

        return new MergeState(splits, states);
    }

    private PartState StateOf(PartNumbers part)
    {
        string name = JournalHead.NameOf(part);
        long all = part.Count(plan.Matches) * contests.Count;
        if (!store!.Names.Contains(name))
        {
            return new PartState(part.Part, part.Parts, 0, all, all == 0 ? PartCondition.Whole : PartCondition.Missing);
        }

        JournalScan scan = Scan(part);
        if (scan.Misfit != JournalMisfit.None)
        {
            return new PartState(part.Part, part.Parts, 0, all, PartCondition.Foreign, scan.Misfit);
        }

        _done[part] = scan.Done;
        _speed = (_speed.Played + scan.Speed.Played, _speed.Seconds + scan.Speed.Seconds);
        long finished = scan.Done.Sum(s => s.CountBelow(part.Count(plan.Matches)));
        PartCondition condition = scan.Refused > 0 ? PartCondition.Damaged : finished == all ? PartCondition.Whole : store.IsHeld(name) ? PartCondition.Running : PartCondition.Unfinished;
        return new PartState(part.Part, part.Parts, finished, all, condition, Problem: scan.Refused > 0 ? scan.Problems[0] : null);
    }

    private JournalScan Scan(PartNumbers part) => JournalScan.Of(() => Journal(JournalHead.NameOf(part)), Head(part), Keys, words, Take);

    private void Begin(JournalScan? scan)
    {
        _scan = scan is { Length: > 0 } ? scan : null;
        _speed = _scan?.Speed ?? (0, 0.0);
        _done.Clear();
        _done[Part] = _scan?.Done ?? [.. contests.Select(_ => new NumberSet())];
    }

    private JournalWriter OpenJournal()
    {
        var writer = new JournalWriter(store!.Append(Name, _scan?.Length ?? 0), words, Keys, _scan);
        if (_scan is null)
        {
            writer.Begin(Head(Part));
        }

        return writer;
    }

    private void Take(int contest, MatchEnd outcome)
    {
        if (outcome.Number < plan.Matches)
        {
            _tallies[contest].Add(outcome);
        }

        if (store is null)
        {
            _memory[contest].Add(outcome);
        }
    }

    // The parts in turn: their numbers lie like the teeth of a comb
    private IEnumerable<MatchEnd> Joined(int contest, long end)
    {
        List<IEnumerator<MatchEnd>> parts = [.. _done.OrderBy(d => d.Key.Part).Select(d => JournalReader.InOrder(() => Journal(JournalHead.NameOf(d.Key)), contest, Keys, d.Key, d.Value[contest], end, words).GetEnumerator())];
        try
        {
            var next = new PriorityQueue<IEnumerator<MatchEnd>, long>(parts.Where(p => p.MoveNext()).Select(p => (p, p.Current.Number)));
            while (next.TryDequeue(out IEnumerator<MatchEnd>? first, out _))
            {
                yield return first.Current;
                if (first.MoveNext())
                {
                    next.Enqueue(first, first.Current.Number);
                }
            }
        }
        finally
        {
            parts.ForEach(p => p.Dispose());
        }
    }

    private string Aside()
    {
        var names = store!.Names.ToHashSet(StringComparer.Ordinal);
        string stem = Name[..^".csv".Length];
        return Enumerable.Range(1, int.MaxValue).Select(i => string.Create(CultureInfo.InvariantCulture, $"{stem}-aside-{i}.csv")).First(n => !names.Contains(n));
    }

    private JournalHead Head(PartNumbers part) => new(plan.Command, Convert.ToHexStringLower(SHA256.HashData(Encoding.UTF8.GetBytes(string.Join('\n', _prints.Value))))[..16], EngineSelfTest.Hash(Precision), Precision, plan.Seed, part);

    /// <summary>Key of the rows of a contest.</summary>
    internal static uint Key(string print, ulong seed) => BitConverter.ToUInt32(SHA256.HashData(Encoding.UTF8.GetBytes(string.Create(CultureInfo.InvariantCulture, $"{seed}|{print}"))));
}
