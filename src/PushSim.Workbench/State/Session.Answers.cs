using System.Diagnostics;
using PushSim.Workbench.Answers;
using PushSim.Workbench.Behind;

namespace PushSim.Workbench.State;

/// <content>What answers the open files: the fast run, then all that is done behind it.</content>
internal sealed partial class Session
{
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

    private HeldDesign? Before()
    {
        if (_pinned is not null || Design is null || !Design.IsChanged)
        {
            return _pinned;
        }

        // else as in the files
        return _saved ??= _opened is { HasErrors: false } ? new HeldDesign(Design.AsSaved, _opened, _savedRows, "as in the file") : null;
    }

    private void SendState()
    {
        if (_isStateNew)
        {
            hub.Send("state", Message, WireContext.Default.StateMessage);
            _isStateNew = false;
        }
    }
}
