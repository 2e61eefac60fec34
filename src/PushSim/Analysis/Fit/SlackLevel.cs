namespace PushSim.Analysis.Fit;

/// <summary>Follows the reading of a slack cell and its noise, one reading at a time, in fixed memory.</summary>
internal sealed class SlackLevel
{
    // Time over which older readings fade [s].
    private const double Memory = 1.5;

    // Mean of the absolute step between two normal readings is 2/sqrt(pi) standard deviations.
    private const double StepPerDeviation = 1.1283791670955126;

    private double _weight;
    private double _step;
    private double _steps;
    private double _last;
    private double _time = double.NegativeInfinity;

    /// <summary>The slack reading [N].</summary>
    public double Level { get; private set; }

    /// <summary>Standard deviation of the readings' noise, from step to step [N].</summary>
    public double Noise => _steps > 0.0 ? _step / _steps / StepPerDeviation : 0.0;

    /// <summary>Readings so far, as far as they have not faded [1].</summary>
    public double Weight => _weight;

    /// <summary>Takes a reading of the slack cell.</summary>
    public void Add(double time, double force)
    {
        double keep = double.IsFinite(_time) ? Math.Exp(-Math.Clamp(time - _time, 0.0, 10.0) / Memory) : 0.0;
        if (_weight > 0.0)
        {
            _step = (keep * _step) + Math.Abs(force - _last);
            _steps = (keep * _steps) + 1.0;
        }

        _weight = (keep * _weight) + 1.0;
        Level += (force - Level) / _weight;
        (_last, _time) = (force, time);
    }

    /// <summary>Forgets all.</summary>
    public void Reset() => (_weight, _step, _steps, Level, _time) = (0.0, 0.0, 0.0, 0.0, double.NegativeInfinity);
}
