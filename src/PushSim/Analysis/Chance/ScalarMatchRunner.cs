using PushSim.Simulation;

namespace PushSim.Analysis.Chance;

/// <summary>Runs each match by <see cref="Simulator"/>, one on each thread, with a thin record.</summary>
public sealed class ScalarMatchRunner : IMatchRunner
{
    // Enough to find touch, line and ground; costs nothing beside the integration [1/s].
    private const double SampleRate = 100.0;

    /// <inheritdoc/>
    public string Name => "scalar";

    /// <summary>The settings with the thin record that every match is judged by.</summary>
    /// <param name="scenario">Settings of a match.</param>
    public static ScenarioSettings Thin(ScenarioSettings scenario) => scenario with { Numerics = scenario.Numerics with { SampleRate = SampleRate } };

    /// <summary>Runs one match.</summary>
    /// <param name="source">Settings by number.</param>
    /// <param name="number">Its number.</param>
    /// <param name="cancel">Stops it.</param>
    /// <exception cref="OperationCanceledException">It was cancelled.</exception>
    public static MatchOutcome RunOne(IMatchSource source, long number, CancellationToken cancel = default)
    {
        ScenarioSettings? scenario = source.Match(number, out string cause);
        if (scenario is null)
        {
            return MatchOutcome.Failed(number, cause);
        }

        RunResult result = Simulator.Run(Thin(scenario), cancel);
        return result.Status == RunStatus.Failed || result.Shove is not ShoveOutcome shove
            ? MatchOutcome.Failed(number, result.Cause.Length > 0 ? result.Cause : "it has no opponent")
            : new MatchOutcome(number, shove.Winner, shove.Ending, shove.GroundGained, shove.EndTime);
    }

    /// <inheritdoc/>
    public void Run(IMatchSource source, MatchQueue queue, Action<MatchOutcome> done, int threads, CancellationToken cancel)
    {
        Exception? fault = null;
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        Thread[] others = [.. Enumerable.Range(1, Math.Max(0, threads - 1)).Select(_ => new Thread(Work))];
        Array.ForEach(others, t => t.Start());
        Work();
        Array.ForEach(others, t => t.Join());
        if (fault is not null)
        {
            throw new InvalidOperationException("a match failed in a way it must not", fault);
        }

        void Work()
        {
            try
            {
                while (!stop.IsCancellationRequested && queue.TryTake(out long number))
                {
                    done(RunOne(source, number, stop.Token));
                }
            }
            catch (OperationCanceledException)
            {
                // the match under way is dropped
            }
            catch (Exception e)
            {
                fault = e;
                stop.Cancel();
            }
        }
    }
}
