using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Runs a scenario: settles the robot on its wheels, integrates, records, and answers.</summary>
public static class Simulator
{
    // Keeps the record's cubic honest where nothing happens [s].
    private const double LongestStep = 0.05;

    /// <summary>Runs to the end time, a tip, or a failure; never throws for what happens inside the model.</summary>
    /// <param name="scenario">Checked settings, SI.</param>
    /// <param name="cancel">Stops the run at the next step.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static RunResult Run(ScenarioSettings scenario, CancellationToken cancel = default) => Run(scenario, WorkBudget.Endless(cancel));

    /// <summary>The same as a part of more work.</summary>
    /// <param name="scenario">Checked settings, SI.</param>
    /// <param name="work">What is left for it.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    internal static RunResult Run(ScenarioSettings scenario, WorkBudget work)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario);
        SceneSystem scene;
        try
        {
            scene = new SceneSystem(scenario);
        }
        catch (SimulationException e)
        {
            return RunResultMaker.Refused(scenario, e.Message);
        }

        double[] y = scene.InitialState();
        var recorder = new Recorder(scenario, scene);
        scene.EnterSegment(0);
        recorder.Start(y);
        StoredEnergy before = scene.Stored(y);
        IntegrationOutcome report = scenario.Numerics.Precision == Precision.Single
            ? new RecordedLane(scenario, scene, recorder).Run(y, Settings(scenario, scene), work)
            : Integrate(scenario, scene, y, new Cancellable(recorder, work.Cancel), work);
        work.Cancel.ThrowIfCancellationRequested();
        recorder.Stop();
        scene.Evaluate(report.Time, 0.0, y, new double[y.Length]);
        return RunResultMaker.Make(scenario, scene, recorder, report, scene.Ledger(y, before), y);
    }

    /// <summary>Integrates a scene to its end time or until the observer stops it; y is replaced by the last state.</summary>
    internal static IntegrationOutcome Integrate(ScenarioSettings scenario, SceneSystem scene, double[] y, IStepObserver observer, WorkBudget work)
    {
        IntegrationSettings settings = Settings(scenario, scene);
        var integration = new SingleRun<SceneSystem>(scene, AdditiveTableau.ByName(scenario.Numerics.Method));
        IntegrationOutcome report = integration.Run(0.0, scenario.Manoeuvre.EndTime, y, scene.Breakpoints, settings with { MaximumEvaluations = Math.Min(work.Left, settings.MaximumEvaluations) }, observer);
        work.Spend(report, settings.MaximumEvaluations);
        return report;
    }

    /// <summary>Tolerances and limits of a scenario's run.</summary>
    internal static IntegrationSettings Settings(ScenarioSettings scenario, SceneSystem scene) => new()
    {
        RelativeTolerance = scenario.Numerics.Tolerance,
        AbsoluteTolerances = scene.AbsoluteTolerances(scenario.Numerics.Tolerance),
        MaximumStep = LongestStep,
        MaximumEvaluations = MaximumEvaluations(scenario),
    };

    /// <summary>Evaluations after which a scenario's run fails [1].</summary>
    internal static long MaximumEvaluations(ScenarioSettings scenario) => (long)Math.Max(1e5, scenario.Numerics.MaxEvaluationsPerSecond * scenario.Manoeuvre.EndTime);
}
