namespace PushSim.Numerics;

/// <summary>
/// One accepted step as a cubic: Hermite from both ends' values and slopes (third order). Implicit components get slopes
/// limited to three secants of the same sign (Fritsch and Carlson, SIAM J. Numer. Anal. 17, 1980), since a stiff slope
/// carries an error that the cubic would turn into overshoot.
/// </summary>
public readonly ref struct DenseStep
{
    private readonly ReadOnlySpan<double> _from, _to, _fromSlope, _toSlope;
    private readonly int _explicitCount;

    internal DenseStep(
        double start,
        double end,
        ReadOnlySpan<double> from,
        ReadOnlySpan<double> to,
        ReadOnlySpan<double> fromSlope,
        ReadOnlySpan<double> toSlope,
        int explicitCount)
    {
        Start = start;
        End = end;
        _from = from;
        _to = to;
        _fromSlope = fromSlope;
        _toSlope = toSlope;
        _explicitCount = explicitCount;
    }

    /// <summary>Start of the step [s].</summary>
    public double Start { get; }

    /// <summary>End of the step [s].</summary>
    public double End { get; }

    /// <summary>State at the end of the step, in the system's order.</summary>
    public ReadOnlySpan<double> EndState => _to;

    /// <summary>All components at a time inside the step.</summary>
    /// <param name="t">Time in [Start, End] [s].</param>
    /// <param name="y">Receives the state, in the system's order.</param>
    public void Evaluate(double t, Span<double> y)
    {
        double h = End - Start;
        double s = (t - Start) / h;
        double r = 1.0 - s;
        double rise = s * s * (3.0 - (2.0 * s));
        double first = h * s * r * r;
        double second = -(h * s * s * r);
        ReadOnlySpan<double> from = _from[.._explicitCount];
        ReadOnlySpan<double> to = _to[..from.Length];
        ReadOnlySpan<double> fromSlope = _fromSlope[..from.Length];
        ReadOnlySpan<double> toSlope = _toSlope[..from.Length];
        Span<double> target = y[..from.Length];
        for (int i = 0; i < from.Length; i++)
        {
            target[i] = from[i] + (rise * (to[i] - from[i])) + (first * fromSlope[i]) + (second * toSlope[i]);
        }

        for (int i = from.Length; i < _from.Length; i++)
        {
            y[i] = Evaluate(t, i);
        }
    }

    /// <summary>One component at a time inside the step.</summary>
    /// <param name="t">Time in [Start, End] [s].</param>
    /// <param name="i">Component [1].</param>
    public double Evaluate(double t, int i)
    {
        double h = End - Start;
        double s = (t - Start) / h;
        double rise = _to[i] - _from[i];
        double m0 = h * _fromSlope[i];
        double m1 = h * _toSlope[i];
        if (i >= _explicitCount)
        {
            m0 = Limit(m0, rise);
            m1 = Limit(m1, rise);
        }

        double r = 1.0 - s;
        return _from[i] + (s * s * (3.0 - (2.0 * s)) * rise) + (s * r * ((r * m0) - (s * m1)));
    }

    private static double Limit(double slope, double rise) =>
        slope * rise <= 0.0 ? 0.0 : Math.CopySign(Math.Min(Math.Abs(slope), 3.0 * Math.Abs(rise)), slope);
}
