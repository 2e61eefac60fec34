using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>One run in single precision with its record: the lane of <see cref="LaneScene{T}"/> alone, with its bits, its verdict taken from the same numbers. Samples between the
/// steps, and their forces, are computed in doubles from the states that it reached.</summary>
internal sealed class RecordedLane : ILaneSystem<F1>, ILaneFeed<F1>
{
    private readonly SceneEquations<F1> _equations;
    private readonly LaneNumbers<F1> _numbers = new();
    private readonly StepFeatures<F1> _features;
    private readonly SceneSystem _scene;
    private readonly Recorder _recorder;
    private readonly DenseOutput _dense;
    private readonly double _endTime;
    private readonly LaneIntegration<F1, RecordedLane, RecordedLane> _lane;
    private readonly OneRun _run = new();
    private IntegrationReport _report;

    /// <param name="scenario">Scenario whose robots are in canonical order.</param>
    /// <param name="scene">Its scene.</param>
    /// <param name="recorder">Takes the samples.</param>
    public RecordedLane(ScenarioSettings scenario, SceneSystem scene, Recorder recorder)
    {
        (_scene, _recorder, _endTime) = (scene, recorder, scenario.Manoeuvre.EndTime);
        RobotEquations<F1>[] robots = [.. scene.Robots.Select(r => ModelBuilder.Build<F1>(r.Scenario, r.Layout))];
        _equations = new SceneEquations<F1>(robots, SceneBuilder.Contacts<F1>(scenario));
        _features = new StepFeatures<F1>(_equations, scene);
        _numbers.Carry(_equations, 0, scene.Equations);
        _dense = new DenseOutput(scene.Count, scene.ExplicitCount, scene.CurveRanges);
        _lane = new LaneIntegration<F1, RecordedLane, RecordedLane>(this, this, AdditiveTableau.ByName(scenario.Numerics.Method));
    }

    public int ExplicitCount => _scene.ExplicitCount;

    public int ImplicitCount => _scene.ImplicitCount;

    public IReadOnlyList<(int From, int To)> ExplicitRanges => [(0, ExplicitCount)];

    public IReadOnlyList<(int From, int To)> PredictedRanges => _equations.PredictedRanges;

    /// <summary>Integrates to the end time or until the watch stops it; y is replaced by the last state.</summary>
    /// <param name="y">The start, each component in its own unit.</param>
    /// <param name="settings">Tolerances and limits.</param>
    /// <param name="work">What is left for it.</param>
    /// <exception cref="OutOfWorkException">More was needed than is left.</exception>
    public IntegrationReport Run(double[] y, IntegrationSettings settings, WorkBudget work)
    {
        _run.Ready(new LaneRun(0.0, _endTime, _scene.Breakpoints, settings with { MaximumEvaluations = Math.Min(work.Left, settings.MaximumEvaluations) }), y);
        _lane.Run(work.Cancel);
        _lane.State(0, y);
        work.Spend(_report, settings.MaximumEvaluations);
        return _report;
    }

    public void Evaluate(F1 t, F1 g, Span<F1> y, ReadOnlySpan<F1> predicted, Span<F1> dy) => _equations.Evaluate(t, g, y, predicted, dy);

    public F1 StepBound() => _equations.StepBound();

    public bool TryBegin(int lane, Span<double> y, out LaneRun run) => _run.TryTake(y, out run);

    public double EnterSegment(int lane, int index)
    {
        _scene.EnterSegment(index);
        for (int k = 0; k < _equations.Robots.Length; k++)
        {
            _numbers.Carry(_equations.Robots[k].Commands, lane, _scene.Robots[k].Equations.Commands);
        }

        return _scene.LongestStep;
    }

    public void OnSegmentStarts() => _features.Read();

    public void OnSegmentStart(int lane, double t) => _recorder.Watch.OnSegment(t, _features, lane);

    public void OnStepEnds() => _features.Read();

    public StepDecision OnStep(int lane, in LaneStep step)
    {
        StepDecision decision = _recorder.Watch.OnStep(step, _features, lane);
        _dense.Take(step);
        _recorder.TakeSamples(_dense);
        return decision;
    }

    public void End(int lane, in IntegrationReport report) => _report = report;
}
