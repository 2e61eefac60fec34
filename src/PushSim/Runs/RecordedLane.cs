using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>One run in single precision with its record: the lane of <see cref="LaneScene{T}"/> alone, with its bits, its verdict taken from the same numbers. Samples between the
/// steps, and their forces, are computed in doubles from the states that it reached.</summary>
internal sealed class RecordedLane : ILaneSystem<F1>, ILaneFeed<F1>
{
    private readonly SceneEquations<F1> _equations;
    private readonly StepFeatures<F1> _features;
    private readonly SceneSystem _scene;
    private readonly Recorder _recorder;
    private readonly DenseOutput _dense;
    private readonly double[] _store;
    private readonly double _endTime;
    private readonly LaneIntegration<F1, RecordedLane, RecordedLane> _lane;
    private double[] _start = [];
    private LaneRun? _next;
    private IntegrationOutcome _report;

    /// <param name="scenario">Scenario whose robots are in canonical order.</param>
    /// <param name="scene">Its scene.</param>
    /// <param name="recorder">Takes the samples.</param>
    public RecordedLane(ScenarioSettings scenario, SceneSystem scene, Recorder recorder)
    {
        (_scene, _recorder, _endTime) = (scene, recorder, scenario.Manoeuvre.EndTime);
        RobotEquations<F1>[] robots = [.. scene.Robots.Select(r => ModelBuilder.Build<F1>(r.Scenario, r.Layout))];
        _equations = new SceneEquations<F1>(robots, SceneBuilder.Contacts<F1>(scenario));
        _features = new StepFeatures<F1>(_equations, scene);
        LaneFill<F1>.Scene(_equations, 0, scene.Equations);
        int count = scene.Count;
        _store = new double[4 * count];
        _dense = new DenseOutput(_store, 0, count, 2 * count, 3 * count, count, scene.ExplicitCount, scene.CurveRanges);
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
    public IntegrationOutcome Run(double[] y, IntegrationSettings settings, WorkBudget work)
    {
        _start = y;
        _next = new LaneRun(0.0, _endTime, _scene.Breakpoints, settings with { MaximumEvaluations = Math.Min(work.Left, settings.MaximumEvaluations) });
        _lane.Run(work.Cancel);
        _lane.State(0, y);
        work.Spend(_report, settings.MaximumEvaluations);
        return _report;
    }

    public void Evaluate(F1 t, F1 g, Span<F1> y, ReadOnlySpan<F1> predicted, Span<F1> dy) => _equations.Evaluate(t, g, y, predicted, dy);

    public F1 StepBound() => _equations.StepBound();

    public bool TryBegin(int lane, Span<double> y, out LaneRun run)
    {
        run = _next.GetValueOrDefault();
        bool has = _next.HasValue;
        _next = null;
        _start.CopyTo(y);
        return has;
    }

    public double EnterSegment(int lane, int index)
    {
        _scene.EnterSegment(index);
        for (int k = 0; k < _equations.Robots.Length; k++)
        {
            LaneFill<F1>.Commands(_equations.Robots[k], lane, _scene.Robots[k].Equations);
        }

        return _scene.LongestStep;
    }

    public void OnStepEnds() => _features.Read();

    public StepDecision OnStep(int lane, in LaneStep step)
    {
        StepDecision decision = _recorder.Watch.OnStep(step, _features, lane);
        int count = _store.Length / 4;
        for (int i = 0; i < count; i++)
        {
            (_store[i], _store[count + i], _store[(2 * count) + i], _store[(3 * count) + i]) = (step.Y0(i), step.Slope0(i), step.Y1(i), step.Slope1(i));
        }

        _dense.SetInterval(step.T0, step.T1);
        _recorder.TakeSamples(_dense);
        return decision;
    }

    public void End(int lane, in IntegrationOutcome report) => _report = report;
}
