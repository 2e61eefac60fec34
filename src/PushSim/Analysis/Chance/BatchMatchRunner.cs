using System.Collections.Concurrent;
using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>Runs matches side by side in the lanes of the processor's vectors, see <see cref="MatchBatch"/>.</summary>
/// <param name="lanes">Matches side by side per thread, see <see cref="MatchBatch"/> [1]; 0 takes what the processor does best.</param>
/// <param name="middle">Settings that every match differs from only by its draws.</param>
public sealed class BatchMatchRunner(ScenarioSettings middle, int lanes = 0) : IMatchRunner
{
    private MatchBatch? _batch;

    /// <inheritdoc/>
    public void Run(IMatchSource source, IReadOnlyList<long> numbers, Action<MatchEnd> done, int threads, CancellationToken cancel)
    {
        // draws that contradict each other have no settings; the lanes get the middle ones, and the outcome is not used
        var wrong = new ConcurrentDictionary<long, string>();
        if (_batch?.Threads != threads)
        {
            _batch = new MatchBatch(threads, lanes, middle.Numerics.Precision);
        }

        try
        {
            _batch.Run(0, numbers.Count, Settings, Finished, cancel);
        }
        catch (OperationCanceledException)
        {
            // what was finished has been handed over
        }

        ScenarioSettings Settings(long place)
        {
            ScenarioSettings? settings = source.Match(numbers[(int)place], out string cause);
            if (settings is null)
            {
                wrong[place] = cause;
            }

            return settings ?? middle;
        }

        void Finished(in MatchOutcome outcome)
        {
            long number = numbers[(int)outcome.Number];
            done(wrong.TryRemove(outcome.Number, out string? cause) ? MatchEnd.Failed(number, MatchFailure.Draws, cause)
                : outcome.Status == RunStatus.Failed ? MatchEnd.Failed(number, outcome.Failure)
                : new MatchEnd(number, outcome.Winner, outcome.Ending, outcome.GroundGained, outcome.EndTime, outcome.First.LimitedBy, outcome.Opponent.LimitedBy));
        }
    }
}
