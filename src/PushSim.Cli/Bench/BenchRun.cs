using System.Collections.Concurrent;
using System.Diagnostics;
using PushSim.Analysis.Fit;
using PushSim.Files;
using PushSim.Scenarios;
using PushSim.Scenarios.Bench;
using PushSim.Scenarios.Notebook;
using PushSim.Words.Fits;

namespace PushSim.Cli.Bench;

/// <summary>Listens until it is told to stop: lines to the disk first, then to the session, what that tells to screen and notebook.</summary>
internal sealed class BenchRun(BenchRequest request, TextWriter output, TextWriter error, TextReader? person, CancellationToken cancel)
{
    // Chunks that wait at most: a file on standard input is read no faster than it is worked on [1].
    private const int MostWaiting = 64;
    private const int Tick = 50;

    // An interrupt ends no wait for the notebook: the last pull is noted too [s].
    private const double NotebookWait = 5.0;

    // A gap that is told again is so many times longer [1].
    private const double MuchLonger = 3.0;

    private readonly BenchScreen _screen = new(error, request.Output.Quiet);
    private readonly List<(double Time, WatchedPull Pull)> _pulls = [];
    private readonly List<(double From, double To)> _gaps = [];
    private readonly List<string> _warnings = [];
    private readonly DateTime _start = WallClock.Now;
    private readonly long _begun = Stopwatch.GetTimestamp();
    private BenchSession _session = null!;
    private BenchFeed _feed = null!;
    private RawLog? _log;
    private PullNotes? _notes;
    private Problem? _wrong;
    private double _force = double.NaN;
    private double _heardUntil;
    private double _origin = double.NaN;
    private double _toldGap;
    private string _refused = "";

    /// <summary>Listens.</summary>
    public int Run()
    {
        ReadResult? read = request.Robot is null ? null : ScenarioReader.Check(request.Robot, new ReadOptions { Garage = request.Output.Garage });
        if (read is not null && ProblemWriter.Tell(error, read.Problems, read.CannotRead) is int wrong)
        {
            return wrong;
        }

        using OutputFolder? folder = request.Output.Open(new OutputAsk("bench", "bench", [], error, cancel));
        using RawLog? log = folder is null ? null : Begin(folder);
        _log = log;
        _notes = Notes(read?.Robot ?? read?.Scenario?.Robot);
        TellPlace();
        _session = new BenchSession(request.Settings, Heard);
        _feed = new BenchFeed(_session, _start.TimeOfDay.TotalSeconds, request.Rate, log is null ? null : Keep);
        Listen();
        _screen.Clear();
        if (_refused.Length > 0)
        {
            error.WriteLine($"pushsim: error: {PlainText.Of(request.Port)}: {PlainText.Of(_refused)}");
            error.WriteLine(Ports());
            return ExitCode.CannotReadOrWrite;
        }

        return Tell(log);
    }

    // other commands may have the folder once the log lies in it
    private RawLog Begin(OutputFolder folder)
    {
        folder.Claim();
        var log = RawLog.Begin(folder.Path, _start);
        folder.Share();
        return log;
    }

    private void TellPlace()
    {
        _screen.Say($"listening to {(request.Port == BenchRequest.Input ? "standard input" : FormattableString.Invariant($"{request.Port} at {request.Baud} baud"))}{(_log is null ? "" : ", raw log " + GarageFolder.Shown(_log.Path))}");
        _screen.Say(BenchWords.Caution);
        if (_log is null)
        {
            Warn("with --json nothing is kept but with --out DIR: no raw log");
        }

        if (_notes is null && request.Tyre is not null)
        {
            Warn("no garage here, so no reading is noted: pushsim garage new makes one, or give --notebook FILE");
        }
        else if (_notes is not null && request.Load is null && request.Robot is null)
        {
            Warn("the load on the tyres is not known: add --load or --robot, or fill it in later");
        }
    }

    private void Warn(string text)
    {
        _warnings.Add(text);
        _screen.Say("note: " + text);
    }

    private void Listen()
    {
        using var stop = CancellationTokenSource.CreateLinkedTokenSource(cancel);
        using var news = new BlockingCollection<SourceNews>(MostWaiting);
        ILineSource source = request.Port == BenchRequest.Input ? new InputSource(Console.OpenStandardInput()) : new PortSource(request.Port, request.Baud);
        var thread = new Thread(() => Feed(source, news, stop.Token)) { IsBackground = true, Name = "bench" };
        thread.Start();
        bool isDone = false;
        while (!isDone && _wrong is null && !cancel.IsCancellationRequested && !(request.Seconds < Stopwatch.GetElapsedTime(_begun).TotalSeconds))
        {
            isDone = news.TryTake(out SourceNews? one, Tick) && !Take(one);
            isDone |= HasEndKey();
            _screen.Refresh(_force, Words());
        }

        // what was read already is kept
        stop.Cancel();
        while (_wrong is null && news.TryTake(out SourceNews? rest) && Take(rest))
        {
        }

        _feed.Finish();
        _log?.Flush();

        // the thread may wait in a read that nothing ends: the process does not wait for it
        thread.Join(request.Port == BenchRequest.Input ? 0 : 1000);
    }

    private static void Feed(ILineSource source, BlockingCollection<SourceNews> news, CancellationToken stop)
    {
        try
        {
            source.Read(n => Post(news, n, stop), stop);
        }
        catch (ObjectDisposedException)
        {
            // the bench has ended
        }
    }

    private static void Post(BlockingCollection<SourceNews> news, SourceNews one, CancellationToken stop)
    {
        try
        {
            news.Add(one, stop);
        }
        catch (Exception e) when (e is OperationCanceledException or ObjectDisposedException or InvalidOperationException)
        {
            // nobody takes it any more
        }
    }

    // Whether more is to come
    private bool Take(SourceNews news)
    {
        switch (news.Kind)
        {
            case SourceNewsKind.Bytes:
                _feed.Take(news);
                _wrong ??= !_feed.IsTooFast ? null
                    : new Problem("the lines", 0, 0, Severity.Error, "they come faster than any cell reads and have no time of their own", "add --rate with the readings a second, for example --rate 80");
                return true;
            case SourceNewsKind.Plugged:
                if (_feed.GoneSince is double since)
                {
                    _screen.Say(FormattableString.Invariant($"{request.Port} is back after {_feed.TimeOf(news) - since:0.0} s: going on"), isNeeded: true);
                }

                _feed.Take(news);
                return true;
            case SourceNewsKind.Unplugged:
                _feed.Take(news);
                _screen.Say($"{request.Port} is gone: all lines so far are kept{(_log is null ? "" : " in " + GarageFolder.Shown(_log.Path))}; waiting for it", isNeeded: true);
                return true;
            case SourceNewsKind.Refused:
                _refused = news.Text;
                return false;
            default:
                if (news.Text.Length > 0)
                {
                    Warn(news.Text);
                }

                return false;
        }
    }

    // To the disk, before anything is made of them
    private void Keep(IReadOnlyList<string> lines)
    {
        foreach (string line in lines)
        {
            _log!.Add(line);
        }

        _log!.Flush();
    }

    private PullNotes? Notes(RobotSettings? robot)
    {
        string? path = request.Notebook ?? NotebookReader.FileOf(GarageFolder.Of(request.Output.Garage));
        return request.Tyre is null || path is null ? null : new PullNotes(
            path,
            new PullRow { Tyre = request.Tyre, Robot = request.Robot ?? "", Floor = request.Floor, State = FloorState.Of(request.State), Load = request.Load },
            robot,
            _log?.Path ?? "",
            new LockAsk("the notebook", request.Output.Line, m => _screen.Say(m), CancellationToken.None) { Wait = NotebookWait });
    }

    private void Heard(BenchEvent what)
    {
        // lines that were kept on another day have their own clock
        _origin = !double.IsNaN(_origin) ? _origin : what is BenchEvent.Sample ? what.Time : what is BenchEvent.Gap first ? first.From : double.NaN;
        double since = what.Time - _origin;
        switch (what)
        {
            case BenchEvent.Sample s:
                (_force, _heardUntil) = (s.Force, since);
                _screen.Add(s.Time, s.Force);
                break;
            case BenchEvent.Waits w:
                _screen.Say(Ask(w.For));
                break;
            case BenchEvent.Tared { Below: > 0.0 } t:
                _screen.Say(FormattableString.Invariant($"the cell rests {t.Below:0.00} N below its tare: tared anew at {t.Zero:0.000} N; {(t.IsWhole ? "all readings so far count from there" : "earlier pulls keep the old tare")}"));
                break;
            case BenchEvent.Tared t:
                _screen.Say(request.Settings.Known is not null && _session.Waiting == BenchAsk.Slack ? FormattableString.Invariant($"tared: the lines say {t.Zero:0.###}, noise {t.Noise:G2}") : FormattableString.Invariant($"tared at {t.Zero:0.000} N, noise {t.Noise:0.000} N"));
                break;
            case BenchEvent.Scaled c:
                _screen.Say(FormattableString.Invariant($"scale: one of the lines' units is {c.Factor:G5} N (± {200.0 * c.Error:G2} % by noise)"));
                break;
            case BenchEvent.PullEnded p:
                _pulls.Add((since, p.Pull));
                _screen.Say(BenchWords.Of(p.Number, p.Pull));
                Note(p);
                break;
            case BenchEvent.Gap g:
                _gaps.Add((g.From - _origin, since));
                TellGap(g.Time - g.From);
                break;
            case BenchEvent.Stray s:
                Stray(s);
                break;
            case BenchEvent.Wrong w:
                _wrong = w.Problem;
                break;
            default:
                break;
        }
    }

    // the first one, and each that is far longer than what was told; the card tells all of them together
    private void TellGap(double length)
    {
        if (length > MuchLonger * _toldGap)
        {
            _screen.Say(FormattableString.Invariant($"nothing came for {length:0.0} s{(_toldGap == 0.0 ? "; more such gaps are counted" : "")}"));
            _toldGap = length;
        }
    }

    private void Note(BenchEvent.PullEnded p)
    {
        if (_notes is null || p.Pull.Flaw != PullFlaw.None)
        {
            return;
        }

        try
        {
            string wrong = _notes.Add(p.Number, p.Pull, WallClock.Now);
            if (wrong.Length > 0)
            {
                Warn("not noted: " + wrong);
            }
        }
        catch (Exception e) when (e is IOException or UnauthorizedAccessException)
        {
            Warn("not noted: " + e.Message);
        }
    }

    private void Stray(BenchEvent.Stray s)
    {
        // the first few one by one: a board's start prints some
        if (_session.Strays <= 3)
        {
            _screen.Say($"no reading: \"{s.Text}\"");
        }
    }

    private bool HasEndKey()
    {
        if (person is null || request.Port == BenchRequest.Input || !Console.KeyAvailable)
        {
            return false;
        }

        char key = char.ToLowerInvariant(Console.ReadKey(intercept: true).KeyChar);
        if (key == 't')
        {
            _session.Tare();
        }

        return key == 'q';
    }

    private string Words() => _feed.GoneSince is not null ? "unplugged" : _session.Readings == 0 ? "no reading yet" : FormattableString.Invariant($"{_session.Readings} readings, {_pulls.Count} {(_pulls.Count == 1 ? "pull" : "pulls")}{(_session.Waiting == BenchAsk.Pulls ? "" : ", " + Ask(_session.Waiting))}");

    private string Ask(BenchAsk ask) => BenchAskWords.Of(ask, ForceWords.Scale(request.Settings.Known ?? 0.0));

    private int Tell(RawLog? log)
    {
        if (_wrong is { } problem)
        {
            ProblemWriter.Tell(error, [problem with { Line = 0 }], cannotRead: false);
            if (log is not null)
            {
                error.WriteLine("kept: " + GarageFolder.Shown(log.Path));
            }

            return ExitCode.WrongInput;
        }

        if (_session.Strays > LogReadable * Math.Max(1, _session.Readings))
        {
            Warn(FormattableString.Invariant($"{_session.Strays} of {_session.Readings + _session.Strays} lines are no readings"));
        }

        var result = new BenchResult
        {
            Pulls = _pulls, Readings = _session.Readings, Strays = _session.Strays, Gaps = _gaps, Seconds = Math.Max(_heardUntil, 0.0), Log = log?.Path, Notebook = _notes?.Path, Noted = _notes?.Count ?? 0, Warnings = _warnings,
        };
        request.Output.Print(output, () => BenchJson.Of(result), result.Verdict, () => BenchText.Write(output, request, result));
        return _session.Readings == 0 ? Complaint.OfRun(error, "no reading came; a reading is a line with a number, such as \"820 gf\"") : ExitCode.Done;
    }

    // Strays that a reader of the log skips without complaint, as a share [1].
    private const double LogReadable = 0.01;

    private static string Ports()
    {
        IReadOnlyList<string> ports = PortSource.Names();
        return "help: " + (ports.Count == 0 ? "no serial port is there: is the board plugged in?" : "there are: " + PlainText.Of(string.Join(", ", ports.Take(12))));
    }
}
