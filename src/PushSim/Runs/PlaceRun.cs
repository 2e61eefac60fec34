using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>A shove of which only the places of both robots are wanted: the same steps as <see cref="Simulator.Run(ScenarioSettings, CancellationToken)"/>, the same places to the bit, no other record.</summary>
internal static class PlaceRun
{
    /// <summary>The places; null where the run fails.</summary>
    /// <param name="scenario">Checked settings with an opponent.</param>
    /// <param name="work">What is left for it.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    public static PlaceTape? Of(ScenarioSettings scenario, WorkBudget work)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario);
        SceneSystem scene;
        try
        {
            scene = new SceneSystem(scenario);
        }
        catch (SimulationException)
        {
            return null;
        }

        double[] start = scene.InitialState();
        var tape = new PlaceTape(scenario, scene);
        var run = new FollowedRun(scenario, scene, tape, start);
        run.Alone(work);
        return RunResultMaker.Ending(scenario, scene, tape.Watch, run.Report, run.State) is { Kind: not RunStopKind.Upset } ? null : tape;
    }
}
