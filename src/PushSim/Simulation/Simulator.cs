using PushSim.Analysis;
using PushSim.Numerics;

namespace PushSim.Simulation;

/// <summary>Runs a scenario: settles the robot on its wheels, integrates, records, and answers.</summary>
public static class Simulator
{
    // Keeps the record's cubic honest where nothing happens [s].
    private const double LongestStep = 0.05;

    /// <summary>Runs to the end time, a tip, or a failure; never throws for what happens inside the model.</summary>
    /// <param name="scenario">Checked settings, SI.</param>
    /// <param name="cancel">Stops the run at the next step.</param>
    /// <exception cref="OperationCanceledException">The run was cancelled.</exception>
    public static RunResult Run(ScenarioSettings scenario, CancellationToken cancel = default)
    {
        scenario = scenario with { Robot = ModelBuilder.InCanonicalOrder(scenario.Robot) };
        RobotSystem system;
        try
        {
            system = new RobotSystem(scenario);
        }
        catch (SimulationException e)
        {
            return RunReport.Refused(scenario, e.Message);
        }

        NumericsSettings numerics = scenario.Numerics;
        double end = scenario.Manoeuvre.EndTime;
        var integration = new Integration<RobotSystem>(system, AdditiveTableau.ByName(numerics.Method));
        IntegrationSettings settings = Settings(scenario, system);
        double[] y0 = system.InitialState();
        var recorder = new Recorder(scenario, system);
        system.EnterSegment(0);
        recorder.Start(y0);
        StoredEnergy before = StoredEnergy.Of(scenario, system.Equations, y0);
        double[] y1 = [.. y0];
        var observer = new CancellableObserver(recorder, cancel);
        IntegrationReport report = integration.Run(0.0, end, y1, system.Breakpoints, settings, ref observer);
        cancel.ThrowIfCancellationRequested();

        system.Evaluate(report.Time, 0.0, y1, new double[y1.Length]);
        StoredEnergy after = StoredEnergy.Of(scenario, system.Equations, y1);
        EnergyLedger ledger = EnergyLedger.Of(y1.AsSpan(system.Layout.FirstLedger, LedgerIndex.Count), before, after);
        return RunReport.Make(scenario, system, recorder, report, ledger, y1);
    }

    /// <summary>Tolerances and limits of a scenario's run.</summary>
    internal static IntegrationSettings Settings(ScenarioSettings scenario, RobotSystem system) => new()
    {
        RelativeTolerance = scenario.Numerics.Tolerance,
        AbsoluteTolerances = system.AbsoluteTolerances(scenario.Numerics.Tolerance),
        MaximumStep = LongestStep,
        MaximumEvaluations = (long)Math.Max(1e5, scenario.Numerics.MaxEvaluationsPerSecond * scenario.Manoeuvre.EndTime),
    };

    private sealed class CancellableObserver(Recorder recorder, CancellationToken cancel) : IStepObserver
    {
        public StepDecision OnStep(DenseOutput step) =>
            cancel.IsCancellationRequested ? StepDecision.Stop : recorder.OnStep(step);
    }
}
