using PushSim.Simulation;

namespace PushSim.Runs;

/// <summary>Matches of one structure side by side: the equations over several lanes, and per lane the scalar scene its numbers come
/// from, the commands of its segment and its watch.</summary>
internal sealed class LaneScene<T> : ILaneSystem<T>, ILaneFeed<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly SceneEquations<T> _equations;
    private readonly LaneNumbers<T> _numbers = new();
    private readonly StepFeatures<T> _features;
    private readonly MatchLane[] _lanes = new MatchLane[T.Lanes];
    private readonly SceneShape _shape;
    private readonly AdditiveTableau _tableau;
    private IMatchQueue? _queue;

    /// <param name="first">A scene of the structure.</param>
    public LaneScene(PreparedMatch first)
    {
        SceneSystem scene = first.Scene!;
        RobotEquations<T>[] robots = [.. scene.Robots.Select(r => ModelBuilder.Build<T>(r.Scenario, r.Layout, hasLedger: false))];
        _equations = new SceneEquations<T>(robots, SceneBuilder.Contacts<T>(first.Scenario));
        _features = new StepFeatures<T>(_equations, scene);
        (_shape, _tableau) = (scene.Shape, first.Tableau);
        List<(int From, int To)> ranges = [];
        for (int k = 0; k < robots.Length; k++)
        {
            // all but the ledger, which comes last
            ranges.Add((_equations.FirstExplicit[k], _equations.FirstExplicit[k] + robots[k].Layout.FirstLedger));
        }

        ExplicitRanges = ranges;
        for (int lane = 0; lane < _lanes.Length; lane++)
        {
            // lanes that never get a match compute with sane numbers
            _lanes[lane] = new MatchLane();
            Fill(lane, first);
        }
    }

    public int ExplicitCount => _equations.ExplicitCount;

    public int ImplicitCount => _equations.ImplicitCount;

    public IReadOnlyList<(int From, int To)> ExplicitRanges { get; }

    /// <summary>Whether a match fits.</summary>
    public bool Fits(PreparedMatch match) =>
        IsSingle(match) == Lane.IsSingle<T>() && ReferenceEquals(match.Tableau, _tableau) && match.Scene!.Shape == _shape;

    /// <summary>Takes matches from a queue from now on.</summary>
    public void Take(IMatchQueue queue) => _queue = queue;

    public IReadOnlyList<(int From, int To)> PredictedRanges => _equations.PredictedRanges;

    public void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy) => _equations.Evaluate(t, g, y, predicted, dy);

    public T StepBound() => _equations.StepBound();

    public bool TryBegin(int lane, Span<double> y, out LaneRun run)
    {
        MatchLane own = _lanes[lane];
        while (_queue!.TryTake(own.Match))
        {
            if (own.Match.Scene is null)
            {
                _queue.Done(MatchJudge.Refused(own.Match.Number));
                continue;
            }

            if (!Fits(own.Match))
            {
                _queue.Done(own.Match.RunAlone(WorkBudget.Endless()));
                continue;
            }

            Fill(lane, own.Match);
            own.Match.Start.CopyTo(y);
            own.Watch.Start(own.Match.Scene, own.Match.Scenario);
            run = new LaneRun(0.0, own.Match.Scenario.Manoeuvre.EndTime, own.Match.Breakpoints, own.Match.Settings);
            return true;
        }

        run = default;
        return false;
    }

    public double EnterSegment(int lane, int index)
    {
        SceneSystem scene = _lanes[lane].Match.Scene!;
        scene.EnterSegment(index);
        for (int k = 0; k < _equations.Robots.Length; k++)
        {
            _numbers.Carry(_equations.Robots[k].Commands, lane, scene.Robots[k].Equations.Commands);
        }

        return scene.LongestStep;
    }

    public void OnStepEnds() => _features.Read();

    public StepDecision OnStep(int lane, in LaneStep step) => _lanes[lane].Watch.OnStep(step, _features, lane);

    public void End(int lane, in IntegrationReport report)
    {
        MatchLane own = _lanes[lane];
        _queue!.Done(MatchJudge.Of(own.Match.Number, own.Match.Scenario.Shove, own.Watch, report));
    }

    private static bool IsSingle(PreparedMatch match) => match.Scenario.Numerics.Precision == Precision.Single;

    private void Fill(int lane, PreparedMatch match) => _numbers.Carry(_equations, lane, match.Scene!.Equations);

    private sealed class MatchLane
    {
        public PreparedMatch Match { get; } = new();

        public MatchWatch Watch { get; } = new();
    }
}
