using PushSim.Runs;
using PushSim.Simulation;

namespace PushSim.Analysis.Sweep;

/// <summary>Runs the points of a sweep, side by side.</summary>
public static class SweepRuns
{
    /// <summary>Every point: the number of the value of each input, from 0, the last input's fastest [1].</summary>
    public static IReadOnlyList<int[]> Places(IReadOnlyList<SweepInput> inputs)
    {
        IEnumerable<int[]> places = [[]];
        foreach (SweepInput input in inputs)
        {
            places = places.SelectMany(p => Enumerable.Range(0, input.Texts.Count), (p, i) => (int[])[.. p, i]);
        }

        return [.. places];
    }

    /// <summary>One run a point.</summary>
    /// <param name="places">The points.</param>
    /// <param name="scenarioAt">The scenario of a point by its number; called from several threads, sometimes twice for a point.</param>
    /// <param name="answers">What is asked of a run; null where it does not apply.</param>
    /// <param name="threads">Threads [1].</param>
    /// <param name="done">Called after each point, one call at a time; null for nobody.</param>
    /// <param name="cancel">Stops; what is finished is returned.</param>
    /// <returns>The points in their order; null where one was not finished.</returns>
    public static SweepPoint?[] Run(
        IReadOnlyList<int[]> places, Func<int, ScenarioSettings> scenarioAt, Func<RunResult, double?[]> answers, int threads, Action? done = null, CancellationToken cancel = default)
    {
        var points = new SweepPoint?[places.Count];
        var gate = new Lock();
        try
        {
            RunSet.Run(places.Count, scenarioAt, Take, threads, WorkBudget.Endless(cancel));
        }
        catch (OperationCanceledException)
        {
            // what is finished is returned
        }

        return points;

        void Take(int i, RunResult result)
        {
            double?[] found = answers(result);
            var point = result.Status == RunStatus.Failed
                ? new SweepPoint(places[i], new double?[found.Length], null, result.Stop)
                : new SweepPoint(places[i], found, null, null, result.Status == RunStatus.Tips, result.Answers.IsBouncing, result.Shove);
            lock (gate)
            {
                points[i] = point;
                done?.Invoke();
            }
        }
    }
}
