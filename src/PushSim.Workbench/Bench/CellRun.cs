using PushSim.Analysis.Fit;
using PushSim.Files;
using PushSim.Scenarios.Bench;
using PushSim.Scenarios.Studies;
using PushSim.Words.Fits;
using PushSim.Words.Terms;

namespace PushSim.Workbench.Bench;

/// <summary>One load cell that is listened to, from the opening of its port to the end.</summary>
internal sealed class CellRun
{
    // How often pages are told [ms].
    private const int Beat = 200;

    private readonly Lock _lock = new();
    private readonly string _port;
    private readonly Func<RawLog> _begin;
    private readonly Func<string, PullNotes?> _notesOf;
    private readonly Action<TraceMessage> _send;
    private readonly BenchSession _session;
    private readonly BenchFeed _feed;
    private readonly LiveTrace _trace = new();
    private readonly List<WatchedPull> _pulls = [];
    private readonly TaskCompletionSource<string> _opened = new(TaskCreationOptions.RunContinuationsAsynchronously);
    private readonly CancellationTokenSource _stop = new();
    private readonly Thread _thread;
    private readonly Timer _beat;
    private RawLog? _log;
    private PullNotes? _notes;
    private string _unkept = "";
    private string _last = "";
    private string _trouble = "";
    private bool _isAsked;
    private bool _isNew;
    private bool _isOver;

    /// <param name="source">The cell.</param>
    /// <param name="port">Its name.</param>
    /// <param name="settings">How its lines are taken.</param>
    /// <param name="begin">Begins the raw log, at the first line.</param>
    /// <param name="notes">Where good pulls of a raw log go, an empty path for none; gives null where they go nowhere.</param>
    /// <param name="send">Given what pages show.</param>
    public CellRun(ILineSource source, string port, BenchSettings settings, Func<RawLog> begin, Func<string, PullNotes?> notes, Action<TraceMessage> send)
    {
        (_port, _begin, _notesOf, _send) = (port, begin, notes, send);
        _session = new BenchSession(settings, Heard);
        _feed = new BenchFeed(_session, WallClock.Now.TimeOfDay.TotalSeconds, settings.Log.Rate, Keep);
        _beat = new Timer(_ => Tell(), null, Beat, Beat);
        _thread = new Thread(() => Listen(source)) { IsBackground = true, Name = "load cell" };
        _thread.Start();
    }

    /// <summary>Why the port was not opened; empty once it is.</summary>
    public Task<string> Opened => _opened.Task;

    /// <summary>Ends it: a pull that is under way ends too.</summary>
    public void Stop()
    {
        _stop.Cancel();
        _thread.Join();
        _beat.Dispose();
        _stop.Dispose();
    }

    /// <summary>The next quiet second is the tare.</summary>
    public void Tare()
    {
        lock (_lock)
        {
            _session.Tare();
            _isNew = true;
        }
    }

    // To the disk, before anything is made of them
    private void Keep(IReadOnlyList<string> lines)
    {
        try
        {
            if (_unkept.Length == 0)
            {
                _log ??= _begin();
                foreach (string line in lines)
                {
                    _log.Add(line);
                }

                _log.Flush();
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _unkept = Said("no raw log is kept: " + e.Message) + " ";
        }

        if (!_isAsked)
        {
            (_isAsked, _notes) = (true, _notesOf(_log?.Path ?? ""));
        }
    }

    private void Listen(ILineSource source)
    {
        source.Read(Take, _stop.Token);
        lock (_lock)
        {
            _isOver = true;
            _feed.Finish();
            EndLog();
            if (_opened.Task is { IsCompletedSuccessfully: true, Result: "" })
            {
                _send(Message());
            }
        }

        _opened.TrySetResult("it was stopped");
    }

    private void EndLog()
    {
        try
        {
            _log?.Dispose();
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            _unkept = Said("the raw log lacks its end: " + e.Message) + " ";
        }
    }

    private void Take(SourceNews news)
    {
        lock (_lock)
        {
            _feed.Take(news);
            _isNew = true;
        }

        if (news.Kind is SourceNewsKind.Plugged or SourceNewsKind.Refused)
        {
            _opened.TrySetResult(news.Text);
        }
    }

    private void Heard(BenchEvent what)
    {
        switch (what)
        {
            case BenchEvent.Sample s:
                _trace.Add(s);
                break;
            case BenchEvent.Gap g:
                _trace.Add(g);
                break;
            case BenchEvent.PullEnded p:
                _trace.Add(p);
                _pulls.Add(p.Pull);
                _last = Said(BenchWords.Of(p.Number, p.Pull)) + " ";
                Note(p);
                break;
            case BenchEvent.Wrong w:
                _trouble = $"{Said(w.Problem.Message)} {Said(w.Problem.Help)}";
                break;
            default:
                break;
        }
    }

    private void Note(BenchEvent.PullEnded p)
    {
        if (_notes is null || p.Pull.Flaw != PullFlaw.None)
        {
            return;
        }

        string wrong;
        try
        {
            wrong = _notes.Add(p.Number, p.Pull, WallClock.Now);
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            wrong = e.Message;
        }

        _trouble = wrong.Length == 0 ? "" : Said("not noted: " + wrong);
    }

    private void Tell()
    {
        // the beat waits for nobody: what is not told now is told with the next one
        if (!_lock.TryEnter())
        {
            return;
        }

        try
        {
            if (_isNew && !_isOver && _opened.Task is { IsCompletedSuccessfully: true, Result: "" })
            {
                _isNew = false;
                _send(Message());
            }
        }
        finally
        {
            _lock.Exit();
        }
    }

    private static string Said(string clause) => Clauses.Sentence(clause.TrimEnd('.')) + ".";

    private TraceMessage Message()
    {
        (double[] time, double?[] force, IReadOnlyList<TracePull> pulls, IReadOnlyList<TraceGap> gaps) = _trace.Take();
        string waits = _isOver ? "Stopped. " : _feed.GoneSince is not null ? $"{_port} is gone: plug it in again. " : _trouble.Length > 0 ? "" : Said(BenchAskWords.Of(_session.Waiting)) + " ";
        return new TraceMessage
        {
            Port = _port, Listening = !_isOver, T = time, F = force, Pulls = pulls, Gaps = gaps, Readings = _session.Readings, Noted = _notes?.Count ?? 0, Log = _log is null ? "" : GarageFolder.Shown(_log.Path), Tared = _session.Waiting == BenchAsk.Pulls, Caution = _isOver ? "" : BenchWords.Caution,
            Words = $"{waits}{_unkept}{_trouble} {_last}{(_pulls.Count == 0 ? "" : BenchWords.Verdict(_pulls))}".Replace("  ", " ", StringComparison.Ordinal).Trim(),
        };
    }
}
