using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>A run that a tape follows from its start to its end: alone, or with others of its structure in <see cref="FollowedLanes{T}"/>, with the same bits.</summary>
internal sealed class FollowedRun
{
    private readonly IntegrationSettings _settings;

    /// <param name="scenario">Scenario whose robots are in canonical order.</param>
    /// <param name="scene">Its scene.</param>
    /// <param name="tape">Takes the samples.</param>
    /// <param name="start">The start, each component in its own unit; becomes the last state.</param>
    public FollowedRun(ScenarioSettings scenario, SceneSystem scene, IRunTape tape, double[] start)
    {
        (Scenario, Scene, Tape, State) = (scenario, scene, tape, start);
        scene.EnterSegment(0);
        tape.Start(start);
        _settings = Simulator.Settings(scenario, scene);
        Tableau = AdditiveTableau.ByName(scenario.Numerics.Method);
    }

    public ScenarioSettings Scenario { get; }

    public SceneSystem Scene { get; }

    public IRunTape Tape { get; }

    public AdditiveTableau Tableau { get; }

    /// <summary>The start; once it has ended the last state.</summary>
    public double[] State { get; }

    /// <summary>How it ended.</summary>
    public IntegrationReport Report { get; private set; }

    /// <summary>Whether the energy ledger is asked of it.</summary>
    public bool HasLedger => Tape is Recorder;

    /// <summary>What a lane is told of it.</summary>
    /// <param name="most">Evaluations that are left for it [1].</param>
    public LaneRun Span(long most) => new(0.0, Scenario.Manoeuvre.EndTime, Scene.Breakpoints, Within(most));

    /// <summary>Runs it by itself.</summary>
    /// <param name="work">What is left for it.</param>
    /// <exception cref="OperationCanceledException">The work was cancelled.</exception>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    public void Alone(WorkBudget work)
    {
        long most = work.Left;
        if (Scenario.Numerics.Precision == Precision.Single)
        {
            new FollowedLanes<F1>(this).Run(Once(this), most, work.Cancel);
        }
        else
        {
            var integration = new SingleRun<SceneSystem>(Scene, Tableau);
            End(integration.Run(0.0, Scenario.Manoeuvre.EndTime, State, Scene.Breakpoints, Within(most), new Cancellable(Tape, work.Cancel)));
        }

        Spend(work);
    }

    /// <summary>Books its evaluations.</summary>
    /// <exception cref="OutOfWorkException">It would have gone on, but for the work that was left.</exception>
    public void Spend(WorkBudget work) => work.Spend(Report, _settings.MaximumEvaluations);

    /// <summary>Takes its end; the last state stands in <see cref="State"/>.</summary>
    public void End(in IntegrationReport report) => Report = report;

    private static Func<FollowedRun?> Once(FollowedRun run)
    {
        FollowedRun? next = run;
        return () => Interlocked.Exchange(ref next, null);
    }

    private IntegrationSettings Within(long most) => most < _settings.MaximumEvaluations ? _settings with { MaximumEvaluations = most } : _settings;
}
