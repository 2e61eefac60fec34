using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Several <see cref="TetherRun"/>s of one structure side by side; one of another structure runs alone.</summary>
internal sealed class TetherLanes<T> : ILaneSystem<T>, ILaneFeed<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly SceneEquations<T> _equations;
    private readonly LaneNumbers<T> _numbers = new();
    private readonly StepFeatures<T> _features;
    private readonly LaneIntegration<T, TetherLanes<T>, TetherLanes<T>> _lanes;
    private readonly TetherRun[] _running = new TetherRun[T.Lanes];
    private readonly Queue<TetherRun> _waiting = [];
    private readonly SceneShape _shape;
    private readonly AdditiveTableau _tableau;
    private readonly DenseOutput _dense;

    /// <param name="first">A run of the structure.</param>
    public TetherLanes(TetherRun first)
    {
        SceneSystem scene = first.Scene;
        RobotSystem robot = scene.Robots[0];
        _equations = new SceneEquations<T>([ModelBuilder.Build<T>(robot.Scenario, robot.Layout, hasLedger: false)], SceneBuilder.Contacts<T>(first.Scenario));
        _features = new StepFeatures<T>(_equations, scene);
        (_shape, _tableau) = (scene.Shape, first.Tableau);
        ExplicitRanges = [(0, robot.Layout.FirstLedger)];
        for (int lane = 0; lane < T.Lanes; lane++)
        {
            // lanes that never get a run compute with sane numbers
            _numbers.Carry(_equations, lane, scene.Equations);
        }

        _dense = new DenseOutput(scene.Count, scene.ExplicitCount, scene.CurveRanges);
        _lanes = new LaneIntegration<T, TetherLanes<T>, TetherLanes<T>>(this, this, first.Tableau);
    }

    public int ExplicitCount => _equations.ExplicitCount;

    public int ImplicitCount => _equations.ImplicitCount;

    public IReadOnlyList<(int From, int To)> ExplicitRanges { get; }

    public IReadOnlyList<(int From, int To)> PredictedRanges => _equations.PredictedRanges;

    /// <summary>Runs them to their ends.</summary>
    public void Run(IReadOnlyList<TetherRun> runs, CancellationToken cancel)
    {
        foreach (TetherRun run in runs)
        {
            if (ReferenceEquals(run.Tableau, _tableau) && run.Scene.Shape == _shape)
            {
                _waiting.Enqueue(run);
            }
            else
            {
                run.Alone(cancel);
            }
        }

        _lanes.Run(cancel);
    }

    public void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy) => _equations.Evaluate(t, g, y, predicted, dy);

    public T StepBound() => _equations.StepBound();

    public bool TryBegin(int lane, Span<double> y, out LaneRun run)
    {
        run = default;
        if (!_waiting.TryDequeue(out TetherRun? next))
        {
            return false;
        }

        _running[lane] = next;
        _numbers.Carry(_equations, lane, next.Scene.Equations);
        next.State.CopyTo(y);
        run = new LaneRun(0.0, next.Scenario.Manoeuvre.EndTime, next.Scene.Breakpoints, next.Settings);
        return true;
    }

    public double EnterSegment(int lane, int index)
    {
        SceneSystem scene = _running[lane].Scene;
        scene.EnterSegment(index);
        _numbers.Carry(_equations.Robots[0].Commands, lane, scene.Robots[0].Equations.Commands);
        return scene.LongestStep;
    }

    public void OnStepEnds() => _features.Read();

    public StepDecision OnStep(int lane, in LaneStep step)
    {
        TetherTape tape = _running[lane].Tape;
        StepDecision decision = tape.Watch.OnStep(step, _features, lane);
        _dense.Take(step);
        tape.TakeSamples(_dense);
        return decision;
    }

    public void End(int lane, in IntegrationReport report)
    {
        _lanes.State(lane, _running[lane].State);
        _running[lane].End(report);
    }
}
