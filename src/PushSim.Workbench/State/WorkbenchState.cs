using System.Diagnostics;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.State;

/// <summary>
/// The open files, what is asked of them, and the run that answers. One thread does all that changes it, so that steps come in order; the latest change wins, and an answer never
/// takes the place of a newer one.
/// </summary>
internal sealed class WorkbenchState : IDisposable
{
    // A run that has taken longer than this is given up for a newer change; a shorter one still answers, so that a slider that never rests is followed [ms].
    private const int Patience = 120;

    private readonly Lock _lock = new();
    private readonly EventHub _hub;
    private readonly AutoResetEvent _some = new(false);
    private readonly List<WorkItem> _waiting = [];
    private readonly Thread _thread;
    private CancellationTokenSource? _running;
    private long _runningSince;
    private long _number;
    private volatile bool _isOver;

    public WorkbenchState(EventHub hub, string? garage = null)
    {
        _hub = hub;
        Session = new Session(hub, garage) { Later = step => Do(step) };
        _thread = new Thread(Work) { IsBackground = true, Name = "workbench" };
        _thread.Start();
    }

    /// <summary>What the worker's thread holds; only it may touch more than <see cref="Session.Message"/>.</summary>
    public Session Session { get; }

    /// <summary>Sets a value anew; the answer comes as an event.</summary>
    /// <param name="key">The row's key.</param>
    /// <param name="text">The value as it would be written.</param>
    /// <param name="isDrag">Whether more is to come of the same movement.</param>
    /// <returns>The change's number.</returns>
    public long Change(string key, string text, bool isDrag) => Put(key, Stopwatch.GetTimestamp(), (session, number) => session.Change(key, text, isDrag, number));

    /// <summary>Does a step in its turn.</summary>
    /// <param name="step">The step; it gets the number that its answer carries.</param>
    /// <returns>The number.</returns>
    public long Do(Action<Session, long> step) => Put(null, Stopwatch.GetTimestamp(), step);

    /// <summary>Does a step in its turn and waits for what it gives.</summary>
    /// <param name="step">The step.</param>
    /// <param name="isQuiet">Whether it changes nothing, so that what is under way goes on.</param>
    public Task<T> Ask<T>(Func<Session, long, T> step, bool isQuiet = false)
    {
        var told = new TaskCompletionSource<T>(TaskCreationOptions.RunContinuationsAsynchronously);
        Put(null, Stopwatch.GetTimestamp(), (session, number) =>
        {
            try
            {
                told.SetResult(step(session, number));
            }
            catch (Exception e)
            {
                told.SetException(e);
            }
        }, isQuiet);
        return told.Task;
    }

    public void Dispose()
    {
        _isOver = true;
        lock (_lock)
        {
            _running?.Cancel();
        }

        _some.Set();
        _thread.Join();
        Session.Dispose();
        _some.Dispose();
    }

    private long Put(string? key, long since, Action<Session, long> step, bool isQuiet = false)
    {
        lock (_lock)
        {
            long number = ++_number;
            if (key is not null && _waiting.Count > 0 && _waiting[^1].Key == key)
            {
                // overtaken before it was looked at
                _waiting.RemoveAt(_waiting.Count - 1);
            }

            _waiting.Add(new WorkItem(key, number, since, step, isQuiet));
            if (!isQuiet)
            {
                double taken = Stopwatch.GetElapsedTime(_runningSince).TotalMilliseconds;
                _running?.CancelAfter((int)Math.Max(0.0, Patience - taken));
                Session.Interrupt();
            }

            _some.Set();
            return number;
        }
    }

    private void Work()
    {
        while (!_isOver)
        {
            _some.WaitOne();
            WorkItem[] items;
            lock (_lock)
            {
                items = [.. _waiting];
                _waiting.Clear();
            }

            if (items.Length == 0 || _isOver)
            {
                continue;
            }

            foreach (WorkItem item in items)
            {
                item.Step(Session, item.Number);
            }

            if (items.LastOrDefault(i => !i.IsQuiet) is { } last)
            {
                Answer(last.Number, last.Since);
            }
        }
    }

    private void Answer(long number, long since)
    {
        using var cancel = new CancellationTokenSource();
        lock (_lock)
        {
            (_running, _runningSince) = (cancel, Stopwatch.GetTimestamp());
            if (_waiting.Count > 0)
            {
                cancel.CancelAfter(Patience);
            }
        }

        try
        {
            Session.Answer(number, since, cancel.Token);
        }
        catch (OperationCanceledException)
        {
            // the newer change answers
        }
        finally
        {
            lock (_lock)
            {
                _running = null;
            }
        }
    }

    private sealed record WorkItem(string? Key, long Number, long Since, Action<Session, long> Step, bool IsQuiet);
}
