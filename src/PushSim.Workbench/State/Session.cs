using System.Diagnostics;
using PushSim.Analysis.Limits;
using PushSim.Scenarios.Editing;
using PushSim.Workbench.Answers;
using PushSim.Workbench.Behind;
using PushSim.Workbench.Designs;
using PushSim.Workbench.Events;

namespace PushSim.Workbench.State;

/// <summary>The open files with their steps back and forth, the pinned design, what was refused, and the last answer. One thread uses it.</summary>
internal sealed class Session(EventHub hub, string? garage = null) : IDisposable
{
    private readonly Dictionary<string, RowErrorMessage> _faults = new(StringComparer.Ordinal);
    private readonly History _history = new();
    private readonly BehindWork _behind = new(hub);
    private Dictionary<string, EditRow> _savedRows = new(StringComparer.Ordinal);
    private IReadOnlyList<EditRow> _rows = [];
    private ReadResult? _opened;
    private ReadResult? _read;
    private ProblemMessage? _problem;
    private Held? _pinned;
    private Held? _saved;
    private AnswerMessage? _last;
    private Design? _answered;
    private OutsideMessage? _outside;
    private string _mode = "match";
    private IReadOnlyList<string> _stripKeys = [];
    private RunResult? _run;
    private IReadOnlyList<string>? _order;
    private bool _isOrderAsked;
    private bool _isStateNew;

    /// <summary>The open files; null before any.</summary>
    public Design? Design { get; private set; }

    /// <summary>Its values; safe from any thread.</summary>
    public IReadOnlyList<EditRow> Rows => _rows;

    /// <summary>What a page shows but answers; safe from any thread.</summary>
    public StateMessage Message { get; private set; } = new() { Number = 0 };

    /// <summary>Opens a file.</summary>
    /// <returns>Why it cannot be; null if it is open.</returns>
    public Problem? Open(string path, long number)
    {
        Design? design = DesignFiles.Open(path, out ReadResult read, garage);
        if (design is null)
        {
            return read.Problems.FirstOrDefault() ?? new Problem(path, 0, 0, Severity.Error, "this file cannot be read", "");
        }

        (_order, _isOrderAsked) = (null, false);
        _history.Clear();
        _faults.Clear();
        hub.Forget("answer", "strip", "odds", "closer", "problem", "outside");
        (_pinned, _saved, _last, _answered, _run) = (null, null, null, null, null);
        (Design, _opened, _read) = (design, read, read);
        _rows = EditRows.Of(read);
        _savedRows = _rows.ToDictionary(StateMaker.KeyOf, StringComparer.Ordinal);
        _problem = Wrong(read, number);
        Tell(number);
        return null;
    }

    /// <summary>Sets a value anew, if the files can be read with it.</summary>
    public void Change(string key, string text, bool isDrag, long number)
    {
        if (Design is null || _read is null || _rows.FirstOrDefault(r => StateMaker.KeyOf(r) == key) is not { } row)
        {
            return;
        }

        _problem = null;
        Design? next = row.Text == text ? Design : Design.With(row, text, _read);
        ReadResult? read = next is null || next == Design ? _read : next.Read();
        HashSet<(Severity, string)> known = [.. _read.Problems.Select(p => (p.Severity, p.Message))];
        Problem? wrong = read.Problems.FirstOrDefault(p => p.Severity == Severity.Error && !known.Contains((p.Severity, p.Message)));
        if (next is null || wrong is not null)
        {
            wrong ??= new Problem(row.File, row.Line, row.Column, Severity.Error, $"\"{row.Definition.Name}\" cannot be put into the file", "write it there by hand");
            _faults[key] = new RowErrorMessage(wrong.Message, wrong.Help, text);
            _problem = new ProblemMessage(number, key, wrong.Message, wrong.Help, wrong.File, wrong.Line);
            Tell(number);
            return;
        }

        _faults.Remove(key);
        _history.Step(Design, next, StateMaker.Words(row), $"{StateMaker.Words(row)} {text}", key, isDrag);
        Take(next, read, number);
    }

    /// <summary>One step back.</summary>
    public void Undo(long number) => Go(_history.Back(Design), number);

    /// <summary>One step forth.</summary>
    public void Redo(long number) => Go(_history.Forth(Design), number);

    /// <summary>Keeps the present design to compare with.</summary>
    public void Pin(long number)
    {
        if (Design is not null && _read is not null)
        {
            _pinned = new Held(Design, _read, _rows.ToDictionary(StateMaker.KeyOf, StringComparer.Ordinal), _pinned is null && !Design.IsChanged ? "as in the file" : Names(Changes()));
            _answered = null;
            Tell(number);
        }
    }

    /// <summary>Forgets it.</summary>
    public void Unpin(long number)
    {
        _pinned = null;
        _answered = null;
        Tell(number);
    }

    /// <summary>Writes the changed files.</summary>
    /// <param name="isOver">Whether over what another program wrote meanwhile.</param>
    /// <param name="number">The step's number.</param>
    /// <returns>Names of the files, or both versions of one that others changed too.</returns>
    public (IReadOnlyList<string> Saved, ConflictReply? Conflict) Save(bool isOver, long number)
    {
        if (Design is null)
        {
            return ([], null);
        }

        (OpenText File, string? Theirs) both = isOver ? default : Keeper.Outside(Design).FirstOrDefault(o => o.File.IsChanged);
        if (both.File is not null)
        {
            return ([], new ConflictReply($"{both.File.Name} was changed outside too", both.File.Name, both.File.Text, both.Theirs ?? ""));
        }

        Design = Keeper.Save(Design, out IReadOnlyList<string> saved);
        (_savedRows, _saved, _outside) = (_rows.ToDictionary(StateMaker.KeyOf, StringComparer.Ordinal), null, null);
        _answered = _answered is null ? null : Design;
        hub.Forget("outside");
        Tell(number);
        return (saved, null);
    }

    /// <summary>Whether what others wrote was not told yet; safe from any thread.</summary>
    public bool IsNews(IReadOnlyList<(OpenText File, string? Theirs)> found) => Message.Outside is not { } told || found.Any(f => f.File.Name != told.File || (f.Theirs ?? "") != told.Theirs);

    /// <summary>Takes what others wrote, unless it was changed here too: then both are shown.</summary>
    /// <param name="isTheirs">Whether theirs is taken all the same.</param>
    /// <param name="number">The step's number.</param>
    public void TakeOutside(bool isTheirs, long number)
    {
        if (Design is null || Keeper.Outside(Design) is not { Count: > 0 } found)
        {
            return;
        }

        Design next = Design;
        foreach ((OpenText file, string? theirs) in found)
        {
            bool isBoth = file.IsChanged && !isTheirs;
            var told = new OutsideMessage(file.Name, theirs is null ? "gone" : "changed", isBoth && theirs is not null, isBoth ? file.Text : "", isBoth ? theirs ?? "" : "");
            if (told != _outside)
            {
                _outside = told;
                hub.Send("outside", told, WireContext.Default.OutsideMessage, isKept: told.Both);
            }

            next = theirs is null || isBoth ? next : next.Taking(file, theirs);
        }

        if (ReferenceEquals(next, Design))
        {
            Tell(number);
            return;
        }

        // its steps are of another text
        _history.Clear();
        _faults.Clear();
        ReadResult read = next.Read();
        Take(next.WithFilesOf(read), read, number);
        (_opened, _savedRows, _saved) = (read, EditRows.Of(read, _opened).ToDictionary(StateMaker.KeyOf, StringComparer.Ordinal), null);
        _problem = Wrong(read, number);
        _outside = _outside is { Both: true } ? _outside : null;
        Tell(number);
    }

    /// <summary>The text of an open file as it would be saved.</summary>
    /// <param name="name">The file as messages name it; empty: the one that was opened.</param>
    public TextReply Text(string name)
    {
        OpenText? file = Design is not { } d ? null : name.Length == 0 ? d.Texts[d.Main] : d.Texts.Values.FirstOrDefault(t => t.Name == name || Path.GetFileName(t.Name) == name);
        return file is null ? new TextReply("", "") : new TextReply(file.Name, file.Text);
    }

    /// <summary>"match" or "odds": what strips and card show.</summary>
    public void SetMode(string mode, long number)
    {
        hub.Forget("strip", "odds");
        _mode = mode;
        Tell(number);
    }

    /// <summary>Asks for the order of what matters most; it comes with a later state.</summary>
    public void AskOrder() => _isOrderAsked = true;

    /// <summary>The order of what matters most was found; of any thread.</summary>
    public Action<Action<Session, long>>? Later { get; set; }

    /// <summary>Whose strips a page can see.</summary>
    public void SetStrips(IReadOnlyList<string> keys) => _stripKeys = keys;

    /// <summary>Stops what is done behind the answer; safe from any thread.</summary>
    public void Interrupt() => _behind.Stop();

    /// <summary>Runs what is open, if the last answer is not of these values, and tells.</summary>
    public void Answer(long number, long since, CancellationToken cancel)
    {
        if (Design is null || _read is null)
        {
            return;
        }

        if (_problem is { } problem)
        {
            hub.Send("problem", problem, WireContext.Default.ProblemMessage);
            if (_last is not null)
            {
                _last = _last with { Old = true, OldWords = _faults.Count > 0 ? "of the last values that could be read" : "" };
                hub.Send("answer", _last with { Number = number }, WireContext.Default.AnswerMessage);
            }

            SendState();
            if (_run is not null && ReferenceEquals(_answered, Design))
            {
                // the design that can be read goes on being looked at
                StartBehind(number, since, Before()?.Run(cancel));
            }

            return;
        }

        hub.Forget("problem");
        RunResult? before = null;
        if (_read.Scenario is { } scenario)
        {
            bool isNew = !ReferenceEquals(Design, _answered) || _run is null;
            RunResult run = isNew ? AnswerRun.Fast(scenario, cancel) : _run!;
            before = Before()?.Run(cancel);
            if (isNew || _last is null or { Old: true })
            {
                _last = AnswerMaker.Of(run, before) with { Number = number, Ms = Math.Round(Stopwatch.GetElapsedTime(since).TotalMilliseconds, 1) };
                (_answered, _run) = (Design, run);
                hub.Forget("odds", "closer");
                hub.Send("answer", _last, WireContext.Default.AnswerMessage);
            }
        }

        else if (_read.Robot is { } robot && !ReferenceEquals(Design, _answered) && LimitAnswer.Of(robot) is { } limits)
        {
            _last = LimitAnswer.Message(limits, Before()?.Limits()) with { Number = number, Ms = Math.Round(Stopwatch.GetElapsedTime(since).TotalMilliseconds, 1) };
            _answered = Design;
            hub.Send("answer", _last, WireContext.Default.AnswerMessage);
        }

        SendState();
        StartBehind(number, since, before);
    }

    public void Dispose() => _behind.Dispose();

    private void StartBehind(long number, long since, RunResult? before) =>
        _behind.Start(new BehindJob(number, since, Design!, _read!, _rows)
        {
            Ordered = _isOrderAsked ? Order : null, Keys = _stripKeys, IsOdds = _mode == "odds", Run = _run, Before = Before()?.Design, BeforeRun = before,
            BeforeValues = (_pinned?.Rows ?? _savedRows).Where(r => r.Value.Value is not null).ToDictionary(r => r.Key, r => r.Value.Value!.Value),
        });

    private void Order(IReadOnlyList<string> keys) => Later?.Invoke((session, number) =>
    {
        (session._order, session._isOrderAsked) = (keys, false);
        session.Tell(number);
    });

    private static ProblemMessage? Wrong(ReadResult read, long number) =>
        read.Problems.FirstOrDefault(p => p.Severity == Severity.Error) is { } wrong ? new ProblemMessage(number, null, wrong.Message, wrong.Help, wrong.File, wrong.Line) : null;

    private Held? Before()
    {
        if (_pinned is not null || Design is null || !Design.IsChanged)
        {
            return _pinned;
        }

        // else as in the files
        return _saved ??= _opened is { HasErrors: false } ? new Held(Design.AsSaved, _opened, _savedRows, "as in the file") : null;
    }

    private void Go(Design? to, long number)
    {
        if (to is not null)
        {
            _faults.Clear();
            _problem = null;
            to = to.OnDiskOf(Design!);
            Take(to, to.Read(), number);
        }
    }

    private void Take(Design next, ReadResult read, long number)
    {
        (Design, _read) = (next, read);
        _rows = EditRows.Of(read, _opened);
        Tell(number);
    }

    private IReadOnlyList<ChangeMessage> Changes() =>
        [.. _rows.Select(r => (Row: r, Old: _savedRows.GetValueOrDefault(StateMaker.KeyOf(r)))).Where(p => p.Old?.Text != p.Row.Text).Select(p => new ChangeMessage(StateMaker.KeyOf(p.Row), StateMaker.Words(p.Row), p.Old?.Text ?? "", p.Row.Text))];

    private static string Names(IReadOnlyList<ChangeMessage> changes) => changes.Count == 1 ? $"{changes[0].Words} {changes[0].To}" : $"{changes.Count} changed values";

    private void Tell(long number)
    {
        Design design = Design!;
        ReadResult read = _read!;
        IReadOnlyList<ChangeMessage> changes = Changes();
        Dictionary<string, EditRow>? before = _pinned?.Rows;
        (string Own, string? Other) names = (read.Scenario?.Robot.Name ?? read.Robot?.Name ?? "robot", read.Scenario?.Opponent?.Robot.Name);
        List<RobotMessage> robots = [];
        foreach ((string owner, string id, RobotSettings? robot) in new[] { ("robot", "a", read.Scenario?.Robot ?? read.Robot), ("opponent", "b", read.Scenario?.Opponent?.Robot) })
        {
            if (robot is not null)
            {
                robots.Add(new RobotMessage(id, robot.Name, id == "a", Path.GetFileName(design.Robot(owner, read) ?? ""), RobotDrawing.Of(robot), StateMaker.Parts(_rows, owner, _savedRows, before, _faults, names)));
            }
        }

        Message = new StateMessage
        {
            Number = number,
            File = design.Shown,
            Kind = read.Scenario is null && read.Robot is not null ? "robot" : "scenario",
            Title = read.Scenario?.Name ?? names.Own,
            Question = read.Scenario?.Question ?? "",
            Robots = robots,
            SceneParts = StateMaker.Parts(_rows, "", _savedRows, before, _faults, names),
            Matters = _order ?? MatterOrder.Cheap(_rows),
            Undo = _history.BackWords is { } back ? new StepMessage(back) : null,
            Redo = _history.ForthWords is { } forth ? new StepMessage(forth) : null,
            Changes = changes,
            Unsaved = changes.Count,
            Outside = _outside,
            Mode = _mode,
            Pinned = _pinned is null ? null : new StepMessage(_pinned.Words),
        };
        _isStateNew = true;
    }

    private void SendState()
    {
        if (_isStateNew)
        {
            hub.Send("state", Message, WireContext.Default.StateMessage);
            _isStateNew = false;
        }
    }

    private sealed class Held(Design design, ReadResult read, Dictionary<string, EditRow> rows, string words)
    {
        private RunResult? _run;
        private LimitReport? _limits;

        public Design Design => design;

        public Dictionary<string, EditRow> Rows => rows;

        public string Words => words;

        public LimitReport? Limits() => _limits ??= read.Robot is { } robot ? LimitAnswer.Of(robot) : null;

        public RunResult? Run(CancellationToken cancel) => _run ??= read.Scenario is { } scenario ? AnswerRun.Fast(scenario, cancel) : null;
    }
}
