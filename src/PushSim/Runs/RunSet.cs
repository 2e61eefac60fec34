using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Recorded runs that do not hang on each other, each with the bits that <see cref="Simulator.Run(ScenarioSettings, CancellationToken)"/> gives it: in lanes where that pays, else one after the
/// other, on several threads.</summary>
internal static class RunSet
{
    // Runs from which on lanes pay under the JIT, which compiles them first [1].
    private const int ManyForJit = 100;

    /// <summary>The results in their order.</summary>
    /// <param name="scenarios">Checked settings.</param>
    /// <param name="work">The work for all of them.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    /// <exception cref="OutOfWorkException">Together they needed more than is left.</exception>
    public static RunResult[] Of(IReadOnlyList<ScenarioSettings> scenarios, WorkBudget work)
    {
        var results = new RunResult[scenarios.Count];
        Run(scenarios.Count, i => scenarios[i], (i, r) => results[i] = r, Environment.ProcessorCount, work, Pays(scenarios.Count));
        return results;
    }

    /// <summary>Hands each result over as it comes, from several threads.</summary>
    /// <param name="count">Runs [1].</param>
    /// <param name="at">The scenario of a run by its number; called from several threads, more than once for some.</param>
    /// <param name="done">Takes a result.</param>
    /// <param name="threads">Threads [1].</param>
    /// <param name="work">The work for all of them.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled; what is finished was handed over.</exception>
    /// <exception cref="OutOfWorkException">Together they needed more than is left.</exception>
    public static void Run(int count, Func<int, ScenarioSettings> at, Action<int, RunResult> done, int threads, WorkBudget work) => Run(count, at, done, threads, work, Pays(count));

    /// <summary>The same in lanes or alone, as the caller wants it.</summary>
    internal static void Run(int count, Func<int, ScenarioSettings> at, Action<int, RunResult> done, int threads, WorkBudget work, bool inLanes)
    {
        int lanes = inLanes ? MatchBatch.BestLanes(Precision.Double) : 1;
        long most = work.Left;
        int next = -1;
        long spent = 0;
        int workers = Math.Clamp((count + lanes - 1) / lanes, 1, Math.Max(1, threads));
        bool isCut = false;
        Parallel.For(0, workers, new ParallelOptions { MaxDegreeOfParallelism = workers, CancellationToken = work.Cancel }, _ =>
        {
            var worker = new Worker(() => Interlocked.Increment(ref next) is var i && i < count ? i : -1, at, Done, most, work.Cancel);
            switch (lanes)
            {
                case 8:
                    worker.Lanes<R8>();
                    break;
                case 4:
                    worker.Lanes<R4>();
                    break;
                default:
                    worker.Alone();
                    break;
            }

            Volatile.Write(ref isCut, Volatile.Read(ref isCut) || worker.IsCut);
        });
        work.Cancel.ThrowIfCancellationRequested();
        if (isCut || spent > most)
        {
            throw new OutOfWorkException();
        }

        void Done(int i, RunResult result)
        {
            work.Add(result.RhsEvaluations);
            Interlocked.Add(ref spent, result.RhsEvaluations);
            done(i, result);
        }
    }

    private static bool Pays(int count) => count >= (Kernel.IsCompiledAhead ? 2 : ManyForJit);

    // One thread's runs. Those of another structure than the lanes that it fills come once these are empty.
    private sealed class Worker(Func<int> number, Func<int, ScenarioSettings> at, Action<int, RunResult> done, long most, CancellationToken cancel)
    {
        private readonly Dictionary<FollowedRun, (int Number, RecordedRun Run)> _running = [];
        private Queue<int> _now = [];
        private Queue<int> _later = [];

        // whether a run would have gone on, but for its limit
        public bool IsCut { get; private set; }

        public void Alone()
        {
            while (Next(out int i))
            {
                cancel.ThrowIfCancellationRequested();
                Alone(i, at(i));
            }
        }

        public void Lanes<T>()
            where T : struct, ILanes<T>, IReal<T>
        {
            while (Take(_ => true) is FollowedRun first)
            {
                var lanes = new FollowedLanes<T>(first);
                FollowedRun? waiting = first;
                lanes.Run(() => Interlocked.Exchange(ref waiting, null) ?? Take(lanes.Fits), most, cancel, End);
                cancel.ThrowIfCancellationRequested();
                (_now, _later) = (_later, _now);
            }
        }

        private bool Next(out int i) => (i = number()) >= 0 || _now.TryDequeue(out i);

        private FollowedRun? Take(Func<FollowedRun, bool> fits)
        {
            while (!cancel.IsCancellationRequested && Next(out int i))
            {
                ScenarioSettings scenario = at(i);
                if (scenario.Numerics.Precision == Precision.Single || RecordedRun.Ready(scenario, out _) is not RecordedRun run)
                {
                    Alone(i, scenario);
                }
                else if (fits(run.Run))
                {
                    _running.Add(run.Run, (i, run));
                    return run.Run;
                }
                else
                {
                    _later.Enqueue(i);
                }
            }

            return null;
        }

        private void Alone(int i, ScenarioSettings scenario) => IsCut |= !WorkBudget.Try(() => done(i, Simulator.Run(scenario, new WorkBudget(most, cancel))));

        private void End(FollowedRun run)
        {
            _running.Remove(run, out (int Number, RecordedRun Run) own);
            IsCut |= !WorkBudget.Try(() => run.Spend(new WorkBudget(most, cancel)));
            done(own.Number, own.Run.Result());
        }
    }
}
