using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.Fit;

/// <summary>Waits for a second in which a cell rests: its readings scatter no more than they do from one to the next, and the second's halves agree.</summary>
public sealed class QuietSecond
{
    private const double Length = 1.0;
    private const int Fewest = 8;

    // Looked at so often, not with every reading [s].
    private const double Interval = 0.05;

    // Scatter over the second against the noise from reading to reading, and difference of the halves in its standard errors [1].
    private const double MostScatter = 1.8;
    private const double MostDrift = 4.0;

    // A display that stands still has no noise but that of the arithmetic, as a share of the reading [1].
    private const double Rounding = 1e-9;

    // Readings kept at most: thinned beyond [1].
    private const int Most = 4096;

    private readonly Queue<(double Time, double Value)> _last = new();
    private double _next = double.NegativeInfinity;
    private double _from = double.NaN;

    /// <summary>Mean of the quiet second [unit of the readings].</summary>
    public double Mean { get; private set; }

    /// <summary>Standard deviation of its readings [unit of the readings].</summary>
    public double Noise { get; private set; }

    /// <summary>Takes a reading.</summary>
    /// <param name="time">Its time [s].</param>
    /// <param name="value">The reading [any unit].</param>
    /// <returns>Whether the second that it ends was quiet.</returns>
    public bool Add(double time, double value)
    {
        _from = double.IsNaN(_from) ? time : _from;
        _last.Enqueue((time, value));
        while (_last.Count > Most || (_last.Count > 0 && _last.Peek().Time < time - Length))
        {
            _last.Dequeue();
        }

        if (time < _next || time - _from < Length || _last.Count < Fewest)
        {
            return false;
        }

        _next = time + Interval;
        double[] values = [.. _last.Select(l => l.Value)];
        int half = values.Length / 2;
        double noise = Math.Sqrt(values.Zip(values.Skip(1), (a, b) => (b - a) * (b - a)).Sum() / (2.0 * (values.Length - 1)));
        (Mean, Noise) = (Sample.Mean(values), Math.Sqrt(Sample.Variance(values)));
        double drift = Math.Abs(Sample.Mean(values[..half]) - Sample.Mean(values[half..]));
        double step = Quantisation.StepOf(values);
        double rounding = Rounding * Math.Abs(Mean);
        return Noise <= Math.Max(MostScatter * noise, step) + rounding && drift <= Math.Max(MostDrift * noise * Math.Sqrt(2.0 / half), 0.5 * step) + rounding;
    }

    /// <summary>Begins anew.</summary>
    public void Reset()
    {
        _last.Clear();
        (_next, _from) = (double.NegativeInfinity, double.NaN);
    }
}
