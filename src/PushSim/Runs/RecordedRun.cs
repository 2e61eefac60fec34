using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>A run with its whole record.</summary>
internal sealed class RecordedRun
{
    private readonly Recorder _recorder;
    private readonly StoredEnergy _before;

    private RecordedRun(ScenarioSettings scenario, SceneSystem scene)
    {
        double[] start = scene.InitialState();
        _recorder = new Recorder(scenario, scene);
        Run = new FollowedRun(scenario, scene, _recorder, start);
        _before = scene.Stored(start);
    }

    /// <summary>What is integrated.</summary>
    public FollowedRun Run { get; }

    /// <summary>Makes a run ready; null if none can start from the settings.</summary>
    /// <param name="scenario">Checked settings.</param>
    /// <param name="refusal">Why none can; empty if one can.</param>
    public static RecordedRun? Ready(ScenarioSettings scenario, out string refusal)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario);
        refusal = "";
        try
        {
            return new RecordedRun(scenario, new SceneSystem(scenario));
        }
        catch (SimulationException e)
        {
            refusal = e.Message;
            return null;
        }
    }

    /// <summary>The result, once it has ended.</summary>
    public RunResult Result()
    {
        _recorder.Stop();
        double[] last = Run.State;
        Run.Scene.Evaluate(Run.Report.Time, 0.0, last, new double[last.Length]);
        return RunReport.Make(Run.Scenario, Run.Scene, _recorder, Run.Report, Run.Scene.Ledger(last, _before), last);
    }
}
