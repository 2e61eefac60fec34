using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Several <see cref="FollowedRun"/>s of one structure side by side. What lies between the steps a tape computes in doubles from the states that the lane reached.</summary>
internal sealed class FollowedLanes<T> : ILaneSystem<T>, ILaneFeed<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly SceneEquations<T> _equations;
    private readonly LaneNumbers<T> _numbers = new();
    private readonly StepFeatures<T> _features;
    private readonly LaneIntegration<T, FollowedLanes<T>, FollowedLanes<T>> _lanes;
    private readonly FollowedRun?[] _running = new FollowedRun?[T.Lanes];
    private readonly SceneShape _shape;
    private readonly AdditiveTableau _tableau;
    private readonly bool _hasLedger;
    private readonly double[] _store;
    private readonly DenseOutput _dense;
    private Func<FollowedRun?>? _next;
    private Action<FollowedRun>? _done;
    private long _most;

    /// <param name="first">A run of the structure.</param>
    public FollowedLanes(FollowedRun first)
    {
        SceneSystem scene = first.Scene;
        _hasLedger = first.HasLedger;
        RobotEquations<T>[] robots = [.. scene.Robots.Select(r => ModelBuilder.Build<T>(r.Scenario, r.Layout, _hasLedger))];
        _equations = new SceneEquations<T>(robots, SceneBuilder.Contacts<T>(first.Scenario));
        _features = new StepFeatures<T>(_equations, scene);
        (_shape, _tableau) = (scene.Shape, first.Tableau);
        ExplicitRanges = _hasLedger ? [(0, scene.ExplicitCount)]
            : [.. scene.Robots.Select((r, k) => (scene.FirstExplicit(k), scene.FirstExplicit(k) + r.Layout.FirstLedger))];
        for (int lane = 0; lane < T.Lanes; lane++)
        {
            // lanes that never get a run compute with sane numbers
            _numbers.Carry(_equations, lane, scene.Equations);
        }

        int count = scene.Count;
        _store = new double[4 * count];
        _dense = new DenseOutput(_store, 0, count, 2 * count, 3 * count, count, scene.ExplicitCount, scene.CurveRanges);
        _lanes = new LaneIntegration<T, FollowedLanes<T>, FollowedLanes<T>>(this, this, first.Tableau);
    }

    public int ExplicitCount => _equations.ExplicitCount;

    public int ImplicitCount => _equations.ImplicitCount;

    public IReadOnlyList<(int From, int To)> ExplicitRanges { get; }

    public IReadOnlyList<(int From, int To)> PredictedRanges => _equations.PredictedRanges;

    /// <summary>Whether a run may share these lanes.</summary>
    public bool Fits(FollowedRun run)
    {
        return run.HasLedger == _hasLedger && ReferenceEquals(run.Tableau, _tableau) && run.Scene.Shape == _shape;
    }

    /// <summary>Runs what is given to their ends.</summary>
    /// <param name="next">The next run, which fits; null if there is none.</param>
    /// <param name="most">Evaluations that each is allowed [1].</param>
    /// <param name="cancel">Leaves at the next step; unfinished runs are dropped.</param>
    /// <param name="done">Takes each run at its end; null for nobody.</param>
    public void Run(Func<FollowedRun?> next, long most, CancellationToken cancel, Action<FollowedRun>? done = null)
    {
        (_next, _most, _done) = (next, most, done);
        _lanes.Run(cancel);
    }

    public void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy) => _equations.Evaluate(t, g, y, predicted, dy);

    public T StepBound() => _equations.StepBound();

    public bool TryBegin(int lane, Span<double> y, out LaneRun run)
    {
        run = default;
        FollowedRun? next = _next!();
        _running[lane] = next;
        if (next is null)
        {
            return false;
        }

        _numbers.Carry(_equations, lane, next.Scene.Equations);
        next.State.CopyTo(y);
        run = next.Span(_most);
        return true;
    }

    public double EnterSegment(int lane, int index)
    {
        SceneSystem scene = _running[lane]!.Scene;
        scene.EnterSegment(index);
        for (int k = 0; k < _equations.Robots.Length; k++)
        {
            _numbers.Carry(_equations.Robots[k].Commands, lane, scene.Robots[k].Equations.Commands);
        }

        return scene.LongestStep;
    }

    public void OnStepEnds() => _features.Read();

    public StepDecision OnStep(int lane, in LaneStep step)
    {
        IRunTape tape = _running[lane]!.Tape;
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

    public void End(int lane, in IntegrationReport report)
    {
        FollowedRun run = _running[lane]!;
        _lanes.State(lane, run.State);
        run.End(report);
        _done?.Invoke(run);
    }
}
