namespace PushSim.Scenarios.Logs;

/// <summary>
/// Times of readings out of the times at which their lines arrived. Lines come in bursts (a cable hands them over every few milliseconds), so several have one time; a board that prints
/// at an even pace had them at even times. These are the line through number and arrival, with older arrivals forgotten. Where no bursts show, times stay as they are, uneven ones too.
/// Limit: the mean delay of arrival stays in them, which shifts all alike.
/// </summary>
public sealed class ArrivalClock
{
    // Bursts: this share of the lines arrives together with the line before it [1].
    private const double BurstShare = 0.05;

    // A line is laid through at least so many arrivals over at least so long; older ones fade over so many [1], [s].
    private const int Fewest = 20;
    private const double Shortest = 0.5;
    private const double Memory = 4000.0;

    // Nothing for longer than this many even steps, and this long, is a gap [1], [s].
    private const double ManySteps = 20.0;
    private const double LongestPause = 0.75;

    private double _weight;
    private double _meanNumber;
    private double _meanTime;
    private double _numbers;
    private double _products;
    private double _first;
    private double _last = double.NegativeInfinity;
    private double _lastTold = double.NegativeInfinity;
    private long _count;
    private long _together;

    /// <summary>Time of a reading [s], never before that of the last one.</summary>
    /// <param name="arrival">When its line arrived [s].</param>
    public double Take(double arrival)
    {
        double step = Period;
        if (_count > 0 && arrival - _last > Math.Max(LongestPause, double.IsFinite(step) ? ManySteps * step : 0.0))
        {
            Reset();
        }

        _first = _count == 0 ? arrival : _first;
        _together += _count > 0 && arrival <= _last ? 1 : 0;
        _last = arrival;
        Add(_count++, arrival);
        bool isEven = _count >= Fewest && arrival - _first >= Shortest && _together > BurstShare * _count;
        double told = isEven ? _meanTime + (_products / _numbers * (_count - 1 - _meanNumber)) : arrival;
        return _lastTold = Math.Max(told, _lastTold);
    }

    /// <summary>Time from reading to reading [s]; NaN while it is not known.</summary>
    public double Period => _numbers > 0.0 && _products > 0.0 ? _products / _numbers : double.NaN;

    private void Reset() => (_weight, _meanNumber, _meanTime, _numbers, _products, _count, _together) = (0.0, 0.0, 0.0, 0.0, 0.0, 0, 0);

    // Weighted least squares with exponential forgetting, one point at a time
    private void Add(double number, double time)
    {
        const double keep = 1.0 - (1.0 / Memory);
        _weight = (keep * _weight) + 1.0;
        double dn = number - _meanNumber;
        double dt = time - _meanTime;
        _meanNumber += dn / _weight;
        _meanTime += dt / _weight;
        _numbers = (keep * _numbers) + (dn * (number - _meanNumber));
        _products = (keep * _products) + (dn * (time - _meanTime));
    }
}
