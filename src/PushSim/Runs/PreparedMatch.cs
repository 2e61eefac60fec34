using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>One match made ready: scalar scene, start state, tolerances. Reused for one match after the other.</summary>
internal sealed class PreparedMatch
{
    public long Number { get; private set; }

    /// <summary>The scenario, robots in canonical order.</summary>
    public ScenarioSettings Scenario { get; private set; } = null!;

    /// <summary>The scene; null if no run can start from the settings.</summary>
    public SceneSystem? Scene { get; private set; }

    public AdditiveTableau Tableau { get; private set; } = null!;

    public IntegrationSettings Settings { get; private set; } = null!;

    public double[] Start { get; private set; } = [];

    public double[] Breakpoints { get; private set; } = [];

    /// <summary>Makes a match ready.</summary>
    /// <param name="number">Its number [1].</param>
    /// <param name="scenario">Checked settings.</param>
    /// <param name="most">Evaluations that it is allowed, if fewer than its own limit [1].</param>
    /// <exception cref="ArgumentException">The scenario has no opponent, or its method is not known.</exception>
    public void Prepare(long number, ScenarioSettings scenario, long most = long.MaxValue)
    {
        if (scenario.Opponent is null)
        {
            throw new ArgumentException("a match needs an opponent", nameof(scenario));
        }

        Number = number;
        Scenario = SceneBuilder.InCanonicalOrder(scenario);
        Tableau = AdditiveTableau.ByName(scenario.Numerics.Method);
        try
        {
            Scene = new SceneSystem(Scenario);
        }
        catch (SimulationException)
        {
            Scene = null;
            return;
        }

        IntegrationSettings whole = Simulator.Settings(Scenario, Scene);
        Settings = most < whole.MaximumEvaluations ? whole with { MaximumEvaluations = most } : whole;
        Start = Scene.InitialState();
        Breakpoints = Scene.Breakpoints;
    }

    /// <summary>Plays the match with the scalar integrator.</summary>
    /// <param name="work">What is left for it.</param>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    public MatchOutcome RunAlone(WorkBudget work)
    {
        if (Scene is null)
        {
            return MatchJudge.Refused(Number);
        }

        if (Scenario.Numerics.Precision == Precision.Single)
        {
            return RunAloneSingle(work);
        }

        var integration = new SingleRun<SceneSystem>(Scene, Tableau);
        var observer = new Watcher(Scene, Scenario);
        double[] y = [.. Start];
        IntegrationOutcome report = integration.Run(0.0, Scenario.Manoeuvre.EndTime, y, Breakpoints, Settings with { MaximumEvaluations = Math.Min(work.Left, Settings.MaximumEvaluations) }, observer);
        work.Spend(report, Settings.MaximumEvaluations);
        return MatchJudge.Of(Number, Scenario.Shove, observer.Watch, report);
    }

    /// <summary>Takes over what is made ready.</summary>
    public void Copy(PreparedMatch other) =>
        (Number, Scenario, Scene, Tableau, Settings, Start, Breakpoints) = (other.Number, other.Scenario, other.Scene, other.Tableau, other.Settings, other.Start, other.Breakpoints);

    // a lane of one float
    private MatchOutcome RunAloneSingle(WorkBudget work)
    {
        IntegrationSettings whole = Settings;
        Settings = whole with { MaximumEvaluations = Math.Min(work.Left, whole.MaximumEvaluations) };
        var scene = new LaneScene<F1>(this);
        var alone = new One(this);
        scene.Take(alone);
        new LaneIntegration<F1, LaneScene<F1>, LaneScene<F1>>(scene, scene, Tableau).Run();
        Settings = whole;
        MatchOutcome outcome = alone.Outcome;
        work.Spend(outcome.Report, whole.MaximumEvaluations);
        return outcome;
    }

    private sealed class One(PreparedMatch match) : IMatchQueue
    {
        private bool _isTaken;

        public MatchOutcome Outcome { get; private set; }

        public bool TryTake(PreparedMatch taken)
        {
            if (_isTaken)
            {
                return false;
            }

            taken.Copy(match);
            return _isTaken = true;
        }

        public void Done(in MatchOutcome outcome) => Outcome = outcome;
    }

    private sealed class Watcher : IStepObserver
    {
        private readonly StepFeatures<R1> _features;

        public Watcher(SceneSystem scene, ScenarioSettings scenario)
        {
            _features = StepFeatures<R1>.Of(scene);
            Watch.Start(scene, scenario);
        }

        public MatchWatch Watch { get; } = new();

        public void OnSegment(double t)
        {
            _features.Read();
            Watch.OnSegment(t, _features, 0);
        }

        public StepDecision OnStep(DenseOutput step)
        {
            _features.Read();
            return Watch.OnStep(step.AsLaneStep(), _features, 0);
        }
    }
}
