namespace PushSim.Scenarios.Logs;

/// <summary>The time of day in a log that runs past midnight.</summary>
internal sealed class DayClock
{
    private const double SecondsOfDay = 86400.0;

    private int _days;
    private double _last = double.NegativeInfinity;

    /// <summary>Seconds since the first midnight: a clock without a date that falls back by more than half a day has passed another one.</summary>
    /// <param name="clock">The cell.</param>
    /// <param name="t">What it says [s].</param>
    public double PastMidnight(string clock, double t)
    {
        if (!clock.Contains(':'))
        {
            return t;
        }

        _days += t + (_days * SecondsOfDay) < _last - (0.5 * SecondsOfDay) ? 1 : 0;
        _last = t + (_days * SecondsOfDay);
        return _last;
    }
}
