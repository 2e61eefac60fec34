using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Plays many matches fast: several side by side in the lanes of the processor's vectors, on several threads. A match's
/// outcome hangs on its scenario alone: it is the same to the bit in every lane, width, order and number of threads, and the
/// same as that of <see cref="Simulator.Run(Simulation.ScenarioSettings, CancellationToken)"/>, so that any match can be replayed with its history.
/// <code>
///   var batch = new MatchBatch();
///   long wins = 0;
///   batch.Run(0, 10_000, number => Draw(number), (in MatchOutcome o) => wins += o.Winner == 0 ? 1 : 0);
/// </code>
/// Matches of one structure (the same wheels, drives, controllers, outlines, optional terms; other numbers) share the lanes;
/// one of another structure is played by the scalar integrator, with the same outcome, only slower. The workers and what they
/// have allocated are kept for the next call, so call <see cref="Run"/> in blocks and decide between them whether to go on.
/// One call at a time.</summary>
public sealed class MatchBatch
{
    private readonly Lock _lock = new();
    private readonly IMatchWorker[] _workers;

    /// <summary>Makes a batch.</summary>
    /// <param name="threads">Number of threads [1]; 0 takes one per processor.</param>
    /// <param name="lanes">8, 4 or 1 matches side by side per thread, 16, 8 or 1 in single precision [1]; 0 takes what the processor does best, <see cref="BestLanes"/>.</param>
    /// <param name="precision">Number type of the matches; one of another type is played alone, with the outcome that it has anywhere.</param>
    /// <exception cref="ArgumentOutOfRangeException">Another number of lanes, or a negative number of threads.</exception>
    public MatchBatch(int threads = 0, int lanes = 0, Precision precision = Precision.Double)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(threads);
        Lanes = lanes == 0 ? BestLanes(precision) : lanes;
        _workers = new IMatchWorker[threads == 0 ? Environment.ProcessorCount : threads];
        for (int i = 0; i < _workers.Length; i++)
        {
            _workers[i] = (precision, Lanes) switch
            {
                (Precision.Double, 8) => new MatchWorker<R8>(),
                (Precision.Double, 4) => new MatchWorker<R4>(),
                (Precision.Double, 1) => new MatchWorker<R1>(),
                (Precision.Single, 16) => new MatchWorker<F16>(),
                (Precision.Single, 8) => new MatchWorker<F8>(),
                (Precision.Single, 1) => new MatchWorker<F1>(),
                _ => throw new ArgumentOutOfRangeException(nameof(lanes), lanes, "lanes must be 8, 4 or 1; 16, 8 or 1 in single precision"),
            };
        }
    }

    /// <summary>Takes a finished match; called under a lock, one at a time, in no particular order.</summary>
    /// <param name="outcome">What became of it.</param>
    public delegate void Finished(in MatchOutcome outcome);

    /// <summary>Lanes that this build works on at once on this processor: 8, 4, or 1 where it has no vectors of doubles; in single precision 16, 8 or 1 [1]. A build that is compiled ahead has those of
    /// 256 bits, the JIT compiles those of 512 where the processor has them.</summary>
    /// <param name="precision">Number type of the matches.</param>
    public static int BestLanes(Precision precision) => precision == Precision.Single
        ? HasWide(F16.IsAccelerated) ? F16.Lanes : F8.IsAccelerated ? F8.Lanes : 1
        : HasWide(R8.IsAccelerated) ? R8.Lanes : R4.IsAccelerated ? R4.Lanes : 1;

    /// <summary>Matches side by side per thread [1].</summary>
    public int Lanes { get; }

    /// <summary>Number of threads [1].</summary>
    public int Threads => _workers.Length;

    /// <summary>Plays the matches with numbers from first to before end.</summary>
    /// <param name="first">First number [1].</param>
    /// <param name="end">Number behind the last [1].</param>
    /// <param name="match">Checked settings of a match with an opponent, by its number; called from several threads at once, so it must hang on the number alone.</param>
    /// <param name="finished">Takes each outcome.</param>
    /// <param name="cancel">Stops at the next step; matches not finished are dropped, those finished were handed over.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    /// <exception cref="AggregateException">A delegate threw, or a scenario has no opponent.</exception>
    public void Run(long first, long end, Func<long, ScenarioSettings> match, Finished finished, CancellationToken cancel = default) => RunWithin(first, end, match, null, finished, cancel);

    /// <summary>The same, each match within a limit of work [1]; null: none but its own.</summary>
    internal void RunWithin(long first, long end, Func<long, ScenarioSettings> match, Func<long, long>? most, Finished finished, CancellationToken cancel)
    {
        ArgumentNullException.ThrowIfNull(match);
        ArgumentNullException.ThrowIfNull(finished);
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        var queue = new Queue(first, end, match, most, finished, _lock);
        var threads = new Thread[Math.Max(0, _workers.Length - 1)];
        List<Exception> faults = [];
        for (int i = 0; i < threads.Length; i++)
        {
            IMatchWorker worker = _workers[i + 1];
            threads[i] = new Thread(() => Work(worker, queue, stop, faults)) { IsBackground = true, Name = "match worker" };
            threads[i].Start();
        }

        Work(_workers[0], queue, stop, faults);
        foreach (Thread thread in threads)
        {
            thread.Join();
        }

        if (faults.Count > 0)
        {
            throw new AggregateException(faults);
        }

        cancel.ThrowIfCancellationRequested();
    }

    /// <summary>Plays one match with the scalar integrator: the same outcome as in a batch.</summary>
    /// <param name="number">Its number, for the outcome [1].</param>
    /// <param name="scenario">Checked settings with an opponent.</param>
    /// <exception cref="ArgumentException">There is no opponent.</exception>
    public static MatchOutcome RunAlone(long number, ScenarioSettings scenario) => RunAlone(number, scenario, WorkBudget.Endless());

    /// <summary>The same as a part of more work.</summary>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static MatchOutcome RunAlone(long number, ScenarioSettings scenario, WorkBudget work)
    {
        var prepared = new PreparedMatch();
        prepared.Prepare(number, scenario);
        return prepared.RunAlone(work);
    }

    private static bool HasWide(bool isAccelerated) => !Kernel.IsCompiledAhead && isAccelerated;

    private static void Work(IMatchWorker worker, Queue queue, CancellationTokenSource stop, List<Exception> faults)
    {
        try
        {
            worker.Run(queue, stop.Token);
        }
        catch (Exception e)
        {
            lock (faults)
            {
                faults.Add(e);
            }

            stop.Cancel();
        }
    }

    private sealed class Queue(long first, long end, Func<long, ScenarioSettings> match, Func<long, long>? most, Finished finished, Lock gate) : IMatchQueue
    {
        private long _next = first - 1;

        public bool TryTake(PreparedMatch prepared)
        {
            long number = Interlocked.Increment(ref _next);
            if (number >= end)
            {
                return false;
            }

            prepared.Prepare(number, match(number), most?.Invoke(number) ?? long.MaxValue);
            return true;
        }

        public void Done(in MatchOutcome outcome)
        {
            lock (gate)
            {
                finished(outcome);
            }
        }
    }
}
