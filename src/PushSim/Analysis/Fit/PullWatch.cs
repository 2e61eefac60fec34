using PushSim.Surroundings;

namespace PushSim.Analysis.Fit;

/// <summary>
/// Cuts what a cell reads into stretches of slack, pull and slack, one reading at a time, and has <see cref="PullJudge"/> find the pull in each as it ends. A reading costs a few
/// operations; the work of a pull is done once, when it has ended. Memory: the slack of the last seconds and one pull.
/// </summary>
/// <param name="found">Given each pull.</param>
public sealed class PullWatch(Action<WatchedPull> found)
{
    // Slack kept before a pull, and waited for behind it [s].
    private const double Before = 2.0;
    private const double After = 0.8;

    // A pull begins so many widths of the noise above the slack, and at this share of the greatest one so far; so many readings in a row [1].
    private const double Rises = 15.0;
    private const double ShareOfGreatest = 0.05;
    private const int InARow = 3;

    // It has ended below this share of its own greatest [1], for longer than a hop of the robot on its chain [s].
    private const double Ended = PullMeter.Off;
    private const double LongestDip = 0.35;

    // What lasts longer is no pull: the tether hangs, or the cell was moved [s]. More readings than this are not kept either [1].
    private const double LongestPull = 60.0;
    private const int MostReadings = 120_000;

    // A pull smaller than this share of the greatest good one is a touch [1].
    private const double Touch = 0.05;

    private readonly SlackLevel _slack = new();
    private readonly List<double> _time = [];
    private readonly List<double> _force = [];
    private bool _isPull;
    private bool _hasGap;
    private double _lostSince = double.NaN;
    private int _above;
    private double _began;
    private double _low;
    private double _top;
    private double _greatest;

    /// <summary>Whether a pull is under way.</summary>
    public bool IsPulling => _isPull;

    /// <summary>Takes a reading.</summary>
    /// <param name="time">Its time, never falling [s].</param>
    /// <param name="force">The reading, a pull positive [N].</param>
    public void Add(double time, double force)
    {
        _time.Add(time);
        _force.Add(force);
        if (_isPull)
        {
            Pull(time, force);
            return;
        }

        if (IsLost(time, force))
        {
            return;
        }

        double limit = Math.Max(Rises * _slack.Noise, ShareOfGreatest * _greatest);
        bool isAbove = _slack.Weight > InARow && limit > 0.0 && force - _slack.Level > limit;
        _above = isAbove ? _above + 1 : 0;
        if (!isAbove)
        {
            // what moves the slack level by more is no noise of it
            _slack.Add(time, force);
        }

        if (_above >= InARow)
        {
            (_isPull, _began, _top, _low) = (true, time, force, double.NaN);
            return;
        }

        if (_time.Count % 256 == 0)
        {
            Forget(time - Before - After);
        }
    }

    /// <summary>Readings are missing from here on: a pull that is under way is not whole.</summary>
    public void Break()
    {
        if (_isPull)
        {
            _hasGap = true;
            End();
            _lostSince = double.PositiveInfinity;
        }

        _time.Clear();
        _force.Clear();
        _above = 0;
    }

    /// <summary>Forgets the slack reading too: the cell was tared anew.</summary>
    public void Reset()
    {
        _isPull = false;
        _hasGap = false;
        Break();
        _slack.Reset();
        _lostSince = double.NaN;
    }

    /// <summary>Ends what is under way.</summary>
    public void Finish()
    {
        if (_isPull)
        {
            End();
        }
    }

    // The rest of a pull that a gap cut in two is no pull
    private bool IsLost(double time, double force)
    {
        if (double.IsNaN(_lostSince))
        {
            return false;
        }

        _lostSince = Math.Min(_lostSince, time);
        bool isLong = time - _lostSince > LongestPull;
        if (isLong)
        {
            _slack.Reset();
        }

        bool isBack = isLong || force - _slack.Level <= Math.Max(Rises * _slack.Noise, ShareOfGreatest * _greatest);
        _lostSince = isBack ? double.NaN : _lostSince;
        if (!isBack)
        {
            _time.Clear();
            _force.Clear();
        }

        return !isBack;
    }

    private void Pull(double time, double force)
    {
        _top = Math.Max(_top, force);
        bool isLow = force - _slack.Level < Ended * (_top - _slack.Level);
        _low = !isLow ? double.NaN : double.IsNaN(_low) ? time : _low;

        // the slack behind it tells the drift of the tare; a next pull soon after ends it too
        if (time - _low > LongestDip + After)
        {
            End();
        }
        else if (time - _began > LongestPull || _time.Count >= MostReadings)
        {
            End();
            _slack.Reset();
            _time.Clear();
            _force.Clear();
        }
    }

    private void End()
    {
        int from = _time.FindIndex(t => t >= _began - Before);
        var stretch = new ForceTrace { Time = [.. _time.Skip(from)], Force = [.. _force.Skip(from)] };
        (_isPull, _above) = (false, 0);
        bool hadGap = _hasGap;
        _hasGap = false;
        double rose = _top - _slack.Level;

        // the slack behind this pull is the slack before the next one
        double slackFrom = double.IsNaN(_low) ? _time[^1] : _low + LongestDip;
        for (int i = 0; i < _time.Count; i++)
        {
            if (_time[i] >= slackFrom)
            {
                _slack.Add(_time[i], _force[i]);
            }
        }

        Forget(slackFrom);
        if (rose < Touch * _greatest)
        {
            return;
        }

        foreach (WatchedPull pull in PullJudge.Of(stretch, hadGap))
        {
            _greatest = pull.Flaw == PullFlaw.None ? Math.Max(_greatest, pull.Greatest) : _greatest;
            found(pull);
        }
    }

    private void Forget(double before)
    {
        int gone = _time.FindIndex(t => t >= before);
        gone = gone < 0 ? _time.Count : gone;
        _time.RemoveRange(0, gone);
        _force.RemoveRange(0, gone);
    }
}
