using PushSim.Analysis.Fit;
using PushSim.Scenarios.Logs;

namespace PushSim.Scenarios.Bench;

/// <summary>
/// A load cell that is listened to: lines go in as they come, events come out. It knows no port, no file, no screen and no clock, so that a terminal and a page can both stand on it. One
/// thread at a time. Memory does not grow, whatever comes.
/// </summary>
public sealed class BenchSession
{
    private const double SecondsOfDay = 86400.0;

    // Nothing for longer than this, and than so many usual steps, is a gap [s], [1].
    private const double LongestPause = 0.75;
    private const double ManySteps = 20.0;

    // So many pauses in a row that differ by less, as a share, are the rate of a slow cell and no gaps [1].
    private const int Alike = 3;
    private const double SamePause = 0.3;

    // A board whose own clock is off the arrivals by more was started anew, or lines were lost [s].
    private const double MostApart = 2.0;

    // Share of the difference between a board's clock and the arrivals that each reading takes off [1].
    private const double Follow = 1e-3;

    // The known mass must change the reading by so many widths of the noise [1]; taken off again, by all but this share [1].
    private const double ClearlyOn = 30.0;
    private const double NearlyOff = 0.1;

    // A slack cell that rests further below its tare than this is no drift of a display's last digit [N].
    private const double LeastBelow = 0.05;

    // Readings kept until the first pull has ended, at most: the tare may turn out to be that pull's plateau [1].
    private const int MostKept = 120_000;

    private const int LongestText = 60;

    private readonly BenchSettings _settings;
    private readonly Action<BenchEvent> _tell;
    private readonly LiveLines _lines;
    private readonly PullWatch _watch;
    private readonly QuietSecond _quiet = new();
    private readonly List<(double Time, double Value)> _kept = [];
    private bool _isKeeping;
    private double _arrival;
    private double _lastArrival = double.NaN;
    private double _lastTime = double.NegativeInfinity;
    private double _offset = double.NaN;
    private double _step = double.NaN;
    private double _pause = double.NaN;
    private int _alike;
    private double _zero;
    private double _zeroNoise;
    private double _factor = 1.0;
    private bool _wasPulling;
    private bool _isWrong;

    /// <summary>A bench.</summary>
    /// <param name="settings">How it is to listen.</param>
    /// <param name="tell">Given what happens, in order.</param>
    public BenchSession(BenchSettings settings, Action<BenchEvent> tell)
    {
        (_settings, _tell) = (settings, tell);
        _lines = new LiveLines(settings.Known is null ? settings.Log : settings.Log with { ForceUnit = settings.Log.ForceUnit ?? "N" }, OnSample);
        _watch = new PullWatch(OnPull);
        // a known mass that is put on is no pull
        _isKeeping = settings.Tare is null && settings.Known is null;
        if (settings.Tare is double tare)
        {
            _zero = tare;
        }
    }

    /// <summary>What it waits for.</summary>
    public BenchAsk Waiting { get; private set; }

    /// <summary>Readings so far [1].</summary>
    public long Readings { get; private set; }

    /// <summary>Lines that were none [1].</summary>
    public long Strays { get; private set; }

    /// <summary>Pulls so far, good or not [1].</summary>
    public int Pulls { get; private set; }

    /// <summary>Gaps so far [1].</summary>
    public int Gaps { get; private set; }

    /// <summary>Whether the lines have a time of their own, not only that of their arrival.</summary>
    public bool HasOwnTime => _lines.HasOwnTime;

    private double Pause => Math.Max(LongestPause, double.IsFinite(_step) ? ManySteps * _step : 0.0);

    /// <summary>A line as it is kept: with the time of its arrival before it, unless it has one. `fit` and `compare` read it.</summary>
    /// <param name="line">The line as it came.</param>
    /// <param name="arrival">Time of its arrival since midnight [s].</param>
    public static string Stamped(string line, double arrival) => LogStamp.TryTake(line, out _, out _) ? line : TimeSpan.FromSeconds(arrival % SecondsOfDay).ToString(@"hh\:mm\:ss\.ffffff", CultureInfo.InvariantCulture) + " -> " + line;

    /// <summary>Takes a line.</summary>
    /// <param name="stamped">The line out of <see cref="Stamped"/>.</param>
    /// <param name="number">Its number from 1 [1].</param>
    /// <param name="arrival">Time of its arrival since the midnight before the first one [s].</param>
    /// <param name="isCut">Whether it was too long to be kept whole.</param>
    public void Take(string stamped, int number, double arrival, bool isCut = false)
    {
        if (_isWrong)
        {
            return;
        }

        _arrival = arrival;
        if (IsGap(arrival - _lastArrival))
        {
            Gap(_lastArrival, arrival);
        }

        _lastArrival = arrival;
        if (isCut || _lines.Take(stamped, number, arrival))
        {
            Strays++;
            string text = LogStamp.TryTake(stamped, out _, out string body) ? body : stamped;
            _tell(new BenchEvent.Stray(arrival, number, SourceFile.Clean(text, LongestText)));
        }

        TellWrong();
    }

    /// <summary>The next quiet second is the tare.</summary>
    public void Tare()
    {
        _quiet.Reset();
        Keep(false);
        Wait(BenchAsk.Slack);
    }

    /// <summary>Tells that nothing came for a while: the cable was out.</summary>
    /// <param name="from">Since when [s].</param>
    /// <param name="to">Until when [s].</param>
    public void Gap(double from, double to)
    {
        Gaps++;
        _watch.Break();
        _quiet.Reset();
        Keep(false);
        (_offset, _lastArrival, _lastTime) = (double.NaN, to, to);
        _tell(new BenchEvent.Gap(to, from));
    }

    /// <summary>No more lines come: what is under way ends.</summary>
    public void Finish()
    {
        _lines.Finish();
        TellWrong();
        _watch.Finish();
    }

    private bool IsGap(double length)
    {
        if (!double.IsFinite(length) || length <= Pause)
        {
            // between a line and its reading nothing passes
            _alike = length > 0.0 ? 0 : _alike;
            return false;
        }

        (_alike, _pause) = (Math.Abs(length - _pause) < SamePause * _pause ? _alike + 1 : 1, length);
        _step = _alike < Alike ? _step : length;
        return _alike < Alike;
    }

    private void TellWrong()
    {
        if (!_isWrong && _lines.Problem is Problem problem)
        {
            _isWrong = true;
            _tell(new BenchEvent.Wrong(_arrival, problem));
        }
    }

    private void OnSample(LogSample sample)
    {
        double time = TimeOf(sample.Time);
        double value = sample.Values[TraceStore.Slot(LogRole.Force)];
        double step = time - _lastTime;
        if (IsGap(step))
        {
            // lines that were kept and are played again come without the wait
            Gap(_lastTime, time);
        }

        _step = double.IsFinite(step) && step < LongestPause ? double.IsFinite(_step) ? _step + (0.01 * (step - _step)) : step : _step;
        _lastTime = time;
        Readings++;
        Keep(_isKeeping && _kept.Count < MostKept, time, value);
        double force = (value - _zero) * _factor;
        _tell(new BenchEvent.Sample(time, force));
        if (Waiting == BenchAsk.Lines)
        {
            Wait(_settings.Tare is null ? BenchAsk.Slack : _settings.Known is null ? BenchAsk.Pulls : BenchAsk.PutOn);
        }

        if (Waiting != BenchAsk.Pulls)
        {
            Settle(time, value);
            return;
        }

        if (_settings.Tare is null && !_watch.IsPulling && _quiet.Add(time, value) && IsBelow((_zero - _quiet.Mean) * _factor))
        {
            Again(time);
            return;
        }

        Watch(time, force);
    }

    private void Watch(double time, double force)
    {
        _watch.Add(time, force);
        if (_watch.IsPulling && !_wasPulling)
        {
            _tell(new BenchEvent.PullBegan(time));
        }

        _wasPulling = _watch.IsPulling;
    }

    // Own times of a board lie on the clock of the arrivals, wherever they begin
    private double TimeOf(double told)
    {
        if (!_lines.HasOwnTime)
        {
            told += double.IsNaN(_offset) ? _offset = Math.Round((_arrival - told) / SecondsOfDay) * SecondsOfDay : _offset;
            return Math.Max(told, _lastTime);
        }

        if (double.IsNaN(_offset) || told + _offset < _lastTime - 1e-9 || _arrival - told - _offset > MostApart)
        {
            if (!double.IsNaN(_offset))
            {
                Gaps++;
                _watch.Break();
                _tell(new BenchEvent.Gap(_arrival, _lastTime));
            }

            _offset = Math.Max(_arrival, _lastTime) - told;
        }

        // a board's clock may run a percent fast for hours
        _offset += Math.Abs(_arrival - told - _offset) < MostApart ? Follow * (_arrival - told - _offset) : 0.0;
        return Math.Max(told + _offset, _lastTime);
    }

    private void Settle(double time, double value)
    {
        if (!_quiet.Add(time, value))
        {
            return;
        }

        switch (Waiting)
        {
            case BenchAsk.Slack:
                Zero(time, _quiet.Mean, _quiet.Noise);
                _watch.Reset();
                Wait(_settings.Known is not null && _factor == 1.0 ? BenchAsk.PutOn : BenchAsk.Pulls);
                break;
            case BenchAsk.PutOn when Math.Abs(_quiet.Mean - _zero) > ClearlyOn * Math.Max(_zeroNoise, _quiet.Noise) && _quiet.Mean != _zero:
                _factor = _settings.Known!.Value / (_quiet.Mean - _zero);
                _tell(new BenchEvent.Scaled(time, _factor, double.Hypot(_zeroNoise, _quiet.Noise) / Math.Abs(_quiet.Mean - _zero)));
                Wait(BenchAsk.TakeOff);
                break;
            case BenchAsk.TakeOff when Math.Abs((_quiet.Mean - _zero) * _factor) < NearlyOff * _settings.Known!.Value:
                Zero(time, _quiet.Mean, _quiet.Noise);
                _watch.Reset();
                Wait(BenchAsk.Pulls);
                break;
            default:
                break;
        }
    }

    private void Zero(double time, double zero, double noise, double below = 0.0)
    {
        (_zero, _zeroNoise) = (zero, noise);
        _tell(new BenchEvent.Tared(time, zero * Math.Abs(_factor), noise * Math.Abs(_factor), below, _isKeeping));
    }

    // No slack cell reads less than one under load
    private bool IsBelow(double below) => below > Math.Max(LeastBelow, ClearlyOn * Math.Max(_zeroNoise, _quiet.Noise) * Math.Abs(_factor));

    // The tare was a plateau, or the cell drifted. What came until now is judged from the true one
    private void Again(double time)
    {
        Zero(time, _quiet.Mean, _quiet.Noise, (_zero - _quiet.Mean) * _factor);
        _watch.Reset();
        _quiet.Reset();
        (double Time, double Value)[] before = [.. _kept];
        Keep(false);
        foreach ((double at, double value) in before)
        {
            Watch(at, (value - _zero) * _factor);
        }
    }

    private void Keep(bool isOn, double time = 0.0, double value = 0.0)
    {
        _isKeeping = isOn;
        if (isOn)
        {
            _kept.Add((time, value));
        }
        else if (_kept.Count > 0)
        {
            _kept.Clear();
            _kept.TrimExcess();
        }
    }

    private void Wait(BenchAsk ask)
    {
        if (Waiting != ask)
        {
            Waiting = ask;
            _quiet.Reset();
            _wasPulling = false;
            _tell(new BenchEvent.Waits(_arrival, ask));
        }
    }

    private void OnPull(WatchedPull pull)
    {
        Keep(false);
        _tell(new BenchEvent.PullEnded(_lastTime, ++Pulls, pull));
    }
}
