using PushSim.Workbench.Events;

namespace PushSim.Workbench.Behind;

/// <summary>Does what is asked behind the answer, one job at a time on a thread of its own: strips, odds, the closer look. A change ends it at once.</summary>
internal sealed class BehindThread : IDisposable
{
    // Nobody moves anything for this long before the closer look begins [ms].
    private const int Rest = 250;

    private readonly Lock _lock = new();
    private readonly AutoResetEvent _some = new(false);
    private readonly Thread _thread;
    private readonly StripMaker _strips;
    private readonly OddsStream _odds;
    private readonly CloserRun _closer;
    private BehindJob? _next;
    private CancellationTokenSource? _running;
    private volatile bool _isOver;

    public BehindThread(EventHub hub)
    {
        (_strips, _odds, _closer) = (new StripMaker(hub), new OddsStream(hub), new CloserRun(hub));
        _thread = new Thread(Work) { IsBackground = true, Name = "behind the answer", Priority = ThreadPriority.BelowNormal };
        _thread.Start();
    }

    /// <summary>Puts a job in the place of the one under way.</summary>
    public void Start(BehindJob job)
    {
        lock (_lock)
        {
            _next = job;
            _running?.Cancel();
        }

        _some.Set();
    }

    /// <summary>Ends what is under way.</summary>
    public void Stop()
    {
        lock (_lock)
        {
            _next = null;
            _running?.Cancel();
        }
    }

    public void Dispose()
    {
        _isOver = true;
        Stop();
        _some.Set();
        _thread.Join();
        _some.Dispose();
    }

    private void Work()
    {
        while (!_isOver)
        {
            _some.WaitOne();
            using var cancel = new CancellationTokenSource();
            BehindJob? job;
            lock (_lock)
            {
                (job, _next, _running) = (_next, null, cancel);
            }

            try
            {
                if (job is not null && !_isOver)
                {
                    Do(job, cancel.Token);
                }
            }
            catch (OperationCanceledException)
            {
                // a newer change is answered
            }
            catch (AggregateException e) when (e.InnerExceptions.All(i => i is OperationCanceledException))
            {
                // likewise, of several threads
            }
            finally
            {
                lock (_lock)
                {
                    _running = null;
                }
            }
        }
    }

    private void Do(BehindJob job, CancellationToken cancel)
    {
        if (job.Read.Scenario is not { } scenario)
        {
            _strips.Limits(job, cancel);
            return;
        }

        bool isOdds = job.IsOdds && scenario.Opponent is not null;
        double? share = isOdds ? _odds.Play(job, cancel) : null;
        if (isOdds)
        {
            _strips.Shares(job, share, cancel);
        }
        else
        {
            _strips.Matches(job, cancel);
        }

        if (job.Ordered is { } ordered)
        {
            ordered(_strips.Order(job, cancel));
            return;
        }

        cancel.WaitHandle.WaitOne(Rest);
        cancel.ThrowIfCancellationRequested();
        _closer.Look(job, cancel);
    }
}
