namespace PushSim.Runs;

/// <summary>One thread's lanes, kept from call to call while the structure of the matches stays.</summary>
internal sealed class MatchWorker<T> : IMatchWorker, IMatchQueue
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly PreparedMatch _first = new();
    private LaneScene<T>? _scene;
    private LaneIntegration<T, LaneScene<T>, LaneScene<T>>? _lanes;
    private IMatchQueue? _queue;
    private bool _hasFirst;

    public void Run(IMatchQueue queue, CancellationToken cancel)
    {
        _queue = queue;

        // the first match says whether the lanes fit; matches that cannot start have no structure
        _hasFirst = false;
        while (!_hasFirst && queue.TryTake(_first))
        {
            if (_first.Scene is null)
            {
                queue.Done(MatchJudge.Refused(_first.Number));
            }
            else
            {
                _hasFirst = true;
            }
        }

        if (!_hasFirst)
        {
            return;
        }

        if (_scene is null || !_scene.Fits(_first))
        {
            _scene = new LaneScene<T>(_first);
            _lanes = new LaneIntegration<T, LaneScene<T>, LaneScene<T>>(_scene, _scene, _first.Tableau);
        }

        _scene.Take(this);
        _lanes!.Run(cancel);
    }

    public bool TryTake(PreparedMatch match)
    {
        if (_hasFirst)
        {
            _hasFirst = false;
            match.Copy(_first);
            return true;
        }

        return _queue!.TryTake(match);
    }

    public void Done(in MatchOutcome outcome) => _queue!.Done(outcome);
}
