using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Several <see cref="TetherRun"/>s of one structure side by side; one of another structure runs alone.</summary>
internal sealed class TetherLanes<T> : ILaneSystem<T>, ILaneFeed<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly SceneEquations<T> _equations;
    private readonly StepFeatures<T> _features;
    private readonly LaneIntegration<T, TetherLanes<T>, TetherLanes<T>> _lanes;
    private readonly TetherRun[] _running = new TetherRun[T.Lanes];
    private readonly Queue<TetherRun> _waiting = [];
    private readonly List<int> _structure = [];
    private readonly double[] _store;
    private readonly DenseOutput _dense;

    /// <param name="first">A run of the structure.</param>
    public TetherLanes(TetherRun first)
    {
        SceneSystem scene = first.Scene;
        RobotSystem robot = scene.Robots[0];
        _equations = new SceneEquations<T>([ModelBuilder.Build<T>(robot.Scenario, robot.Layout, hasLedger: false)], SceneBuilder.Contacts<T>(first.Scenario));
        _features = new StepFeatures<T>(_equations, scene);
        SceneStructure.Describe(scene, first.Tableau, _structure);
        ExplicitRanges = [(0, robot.Layout.FirstLedger)];
        for (int lane = 0; lane < T.Lanes; lane++)
        {
            // lanes that never get a run compute with sane numbers
            LaneFill<T>.Scene(_equations, lane, scene.Equations);
        }

        int count = scene.Count;
        _store = new double[4 * count];
        _dense = new DenseOutput(_store, 0, count, 2 * count, 3 * count, count, scene.ExplicitCount, scene.CurveRanges);
        _lanes = new LaneIntegration<T, TetherLanes<T>, TetherLanes<T>>(this, this, first.Tableau);
    }

    public int ExplicitCount => _equations.ExplicitCount;

    public int ImplicitCount => _equations.ImplicitCount;

    public IReadOnlyList<(int From, int To)> ExplicitRanges { get; }

    public IReadOnlyList<(int From, int To)> PredictedRanges => _equations.PredictedRanges;

    /// <summary>Runs them to their ends.</summary>
    public void Run(IReadOnlyList<TetherRun> runs, CancellationToken cancel)
    {
        List<int> own = [];
        foreach (TetherRun run in runs)
        {
            SceneStructure.Describe(run.Scene, run.Tableau, own);
            if (SceneStructure.AreAlike(_structure, own))
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
        LaneFill<T>.Scene(_equations, lane, next.Scene.Equations);
        next.State.CopyTo(y);
        run = new LaneRun(0.0, next.Scenario.Manoeuvre.EndTime, next.Scene.Breakpoints, next.Settings);
        return true;
    }

    public double EnterSegment(int lane, int index)
    {
        SceneSystem scene = _running[lane].Scene;
        scene.EnterSegment(index);
        LaneFill<T>.Commands(_equations.Robots[0], lane, scene.Robots[0].Equations);
        return scene.LongestStep;
    }

    public void OnStepEnds() => _features.Read();

    public StepDecision OnStep(int lane, in LaneStep step)
    {
        TetherTape tape = _running[lane].Tape;
        StepDecision decision = tape.Watch.OnStep(step, _features, lane);
        int count = _store.Length / 4;
        for (int i = 0; i < count; i++)
        {
            (_store[i], _store[count + i], _store[(2 * count) + i], _store[(3 * count) + i]) = (step.Y0(i), step.Slope0(i), step.Y1(i), step.Slope1(i));
        }

        _dense.SetInterval(step.T0, step.T1);
        tape.TakeSamples(_dense);
        return decision;
    }

    public void End(int lane, in IntegrationOutcome report)
    {
        _lanes.State(lane, _running[lane].State);
        _running[lane].End(report);
    }
}
