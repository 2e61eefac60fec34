using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>A run of which only the force of the tether is wanted: the same steps as <see cref="Simulator.Run(ScenarioSettings, CancellationToken)"/>, the same force to the bit, no other record.
/// Several of one structure share lanes, with the same bits.</summary>
internal sealed class TetherRun
{
    private IntegrationOutcome _report;

    private TetherRun(ScenarioSettings scenario, SceneSystem scene)
    {
        (Scenario, Scene) = (scenario, scene);
        State = scene.InitialState();
        Tape = new TetherTape(scenario, scene);
        scene.EnterSegment(0);
        Tape.Start(State);
        Settings = Simulator.Settings(scenario, scene);
        Tableau = AdditiveTableau.ByName(scenario.Numerics.Method);
    }

    public ScenarioSettings Scenario { get; }

    public SceneSystem Scene { get; }

    public TetherTape Tape { get; }

    public IntegrationSettings Settings { get; }

    public AdditiveTableau Tableau { get; }

    /// <summary>The start; once it has ended the last state.</summary>
    public double[] State { get; }

    /// <summary>Forces of several runs at the times of their samples; null for those that do not reach their end.</summary>
    /// <param name="scenarios">Checked settings with a tether and without an opponent.</param>
    /// <param name="cancel">Stops the runs.</param>
    /// <exception cref="OperationCanceledException">The runs were cancelled.</exception>
    public static (double[] Time, double[] Force)?[] Of(IReadOnlyList<ScenarioSettings> scenarios, CancellationToken cancel)
    {
        TetherRun?[] runs = [.. scenarios.Select(Ready)];
        TetherRun[][] groups = [.. runs.OfType<TetherRun>().Chunk(R4.IsAccelerated ? R4.Lanes : 1)];
        Parallel.For(0, groups.Length, new ParallelOptions { CancellationToken = cancel }, i =>
        {
            if (groups[i].Length == 1)
            {
                groups[i][0].Alone(cancel);
            }
            else
            {
                new TetherLanes<R4>(groups[i][0]).Run(groups[i], cancel);
            }
        });
        cancel.ThrowIfCancellationRequested();
        return [.. runs.Select(r => r?.Result)];
    }

    /// <summary>Runs it by itself.</summary>
    public void Alone(CancellationToken cancel) =>
        _report = Simulator.Integrate(Scenario, Scene, State, new Cancellable(Tape, cancel), WorkBudget.Endless(cancel));

    /// <summary>Takes its end from the lane that it was in.</summary>
    public void End(in IntegrationOutcome report) => _report = report;

    private (double[] Time, double[] Force)? Result => RunResultMaker.Ending(Scenario, Scene, Tape.Watch, _report, State) is null ? (Tape.Time, Tape.Force) : null;

    // null if no run can start from the settings
    private static TetherRun? Ready(ScenarioSettings scenario)
    {
        scenario = SceneBuilder.InCanonicalOrder(scenario);
        try
        {
            return new TetherRun(scenario, new SceneSystem(scenario));
        }
        catch (SimulationException)
        {
            return null;
        }
    }
}
