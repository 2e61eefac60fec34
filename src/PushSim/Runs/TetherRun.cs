using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Runs of which only the force of the tether is wanted: the same steps as <see cref="Simulator.Run(ScenarioSettings, CancellationToken)"/>, the same force to the bit, no other record.
/// Several of one structure share lanes, with the same bits.</summary>
internal static class TetherRun
{
    /// <summary>Forces of several runs at the times of their samples; null for those that do not reach their end.</summary>
    /// <param name="scenarios">Checked settings with a tether and without an opponent.</param>
    /// <param name="cancel">Stops the runs.</param>
    /// <exception cref="OperationCanceledException">The runs were cancelled.</exception>
    public static (double[] Time, double[] Force)?[] Of(IReadOnlyList<ScenarioSettings> scenarios, CancellationToken cancel)
    {
        FollowedRun?[] runs = [.. scenarios.Select(Ready)];
        FollowedRun[][] groups = [.. runs.OfType<FollowedRun>().Chunk(R4.IsAccelerated ? R4.Lanes : 1)];
        Parallel.For(0, groups.Length, new ParallelOptions { CancellationToken = cancel }, i => Follow(groups[i], cancel));
        cancel.ThrowIfCancellationRequested();
        return [.. runs.Select(r => r is null ? null : Force(r))];
    }

    // one of another structure than the first runs alone
    private static void Follow(FollowedRun[] group, CancellationToken cancel)
    {
        FollowedLanes<R4>? lanes = group.Length == 1 ? null : new FollowedLanes<R4>(group[0]);
        ILookup<bool, FollowedRun> runs = group.ToLookup(r => lanes?.Fits(r) == true);
        foreach (FollowedRun run in runs[false])
        {
            run.Alone(WorkBudget.Endless(cancel));
        }

        var together = new Queue<FollowedRun>(runs[true]);
        lanes?.Run(() => together.TryDequeue(out FollowedRun? next) ? next : null, long.MaxValue, cancel);
    }

    private static (double[] Time, double[] Force)? Force(FollowedRun run) =>
        RunReport.Ending(run.Scenario, run.Scene, run.Tape.Watch, run.Report, run.State) is null && run.Tape is TetherTape tape ? (tape.Time, tape.Force) : null;

    // null if no run can start from the settings
    private static FollowedRun? Ready(ScenarioSettings scenario)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario);
        try
        {
            var scene = new SceneSystem(scenario);
            double[] start = scene.InitialState();
            return new FollowedRun(scenario, scene, new TetherTape(scenario, scene), start);
        }
        catch (SimulationException)
        {
            return null;
        }
    }
}
