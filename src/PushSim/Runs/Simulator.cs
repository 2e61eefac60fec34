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
        if (RecordedRun.Ready(scenario, out string refusal) is not RecordedRun ready)
        {
            return RunReport.Refused(SceneBuilder.InCanonicalOrder(scenario), refusal);
        }

        ready.Run.Alone(work);
        work.Cancel.ThrowIfCancellationRequested();
        return ready.Result();
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
