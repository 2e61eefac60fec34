namespace PushSim.Numerics;

/// <summary>
/// Finds zeros of a scalar function on the dense output of a step: signs are compared at the ends and at a few inner
/// points, and a bracketed zero is refined by the Illinois form of false position with bisection as the safeguard
/// (M. Dowell, P. Jarratt, BIT 11 (1971) 168-174). A zero counts for the step that reaches it: an exact zero at a step's
/// start belongs to the step before. Limit: two zeros between neighbouring sample points are not seen.
/// Nothing is allocated per search.
/// </summary>
/// <typeparam name="TFunction">The function; a struct is called without indirection.</typeparam>
public sealed class EventFinder<TFunction>
    where TFunction : IEventFunction
{
    /// <summary>Refinements before the bracket is taken as it is [1]; bisection alone needs about 60.</summary>
    private const int MaximumRefinements = 200;

    private readonly EventDirection _direction;
    private readonly int _intervals;
    private readonly double[] _state;
    private readonly int[] _components;
    private TFunction _function;

    /// <summary>Prepares a search.</summary>
    /// <param name="function">The function.</param>
    /// <param name="direction">Sign changes that count.</param>
    /// <param name="count">Number of components of the state [1].</param>
    /// <param name="innerPoints">Sample points between the ends of a step, not negative [1]; more finds shorter double crossings.</param>
    /// <param name="components">Components the function reads, the others are not written [1]; null: all of them.</param>
    public EventFinder(
        TFunction function, EventDirection direction, int count, int innerPoints = 3, int[]? components = null)
    {
        ArgumentOutOfRangeException.ThrowIfNegative(innerPoints);
        _function = function;
        _direction = direction;
        _intervals = innerPoints + 1;
        _state = new double[count];
        _components = components ?? [.. Enumerable.Range(0, count)];
    }

    /// <summary>The function, in place.</summary>
    public ref TFunction Function => ref _function;

    /// <summary>First event in a step.</summary>
    /// <param name="step">The step.</param>
    /// <param name="time">Time of the event [s]; NaN if there is none.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryFind(DenseOutput step, out double time) => TryFind(step, step.T0, out time);

    /// <summary>First event in a step after a time: to go on behind an event already found.</summary>
    /// <param name="step">The step.</param>
    /// <param name="after">Start of the search, inside the step [s].</param>
    /// <param name="time">Time of the event [s]; NaN if there is none.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryFind(DenseOutput step, double after, out double time)
    {
        double a = after;
        double fa = At(step, a);
        for (int i = 1; i <= _intervals; i++)
        {
            double b = i == _intervals ? step.T1 : after + ((step.T1 - after) * i / _intervals);
            double fb = At(step, b);
            if (Counts(fa, fb))
            {
                time = fb == 0.0 ? b : Refine(step, a, fa, b, fb);
                return true;
            }

            (a, fa) = (b, fb);
        }

        time = double.NaN;
        return false;
    }

    private bool Counts(double fa, double fb)
    {
        bool rising = fa < 0.0 && fb >= 0.0;
        bool falling = fa > 0.0 && fb <= 0.0;
        return (rising && _direction != EventDirection.Falling) || (falling && _direction != EventDirection.Rising);
    }

    // Returns the end of the last bracket behind the zero, so that a search from there does not find it again.
    private double Refine(DenseOutput step, double a, double fa, double b, double fb)
    {
        double weightA = fa;
        double weightB = fb;
        int kept = 0;
        for (int n = 0; n < MaximumRefinements; n++)
        {
            double middle = 0.5 * (a + b);
            if (middle <= a || middle >= b)
            {
                break;
            }

            // Every third point is the middle: false position may creep, bisection may not.
            double c = n % 3 == 2 ? middle : b - (weightB * (b - a) / (weightB - weightA));
            c = c > a && c < b ? c : middle;
            double fc = At(step, c);
            if (fc == 0.0)
            {
                return c;
            }

            if ((fc > 0.0) == (fb > 0.0))
            {
                // The end kept a second time counts half.
                weightA = kept < 0 ? 0.5 * weightA : fa;
                (b, fb, weightB, kept) = (c, fc, fc, -1);
            }
            else
            {
                weightB = kept > 0 ? 0.5 * weightB : fb;
                (a, fa, weightA, kept) = (c, fc, fc, 1);
            }
        }

        return b;
    }

    private double At(DenseOutput step, double t)
    {
        foreach (int component in _components)
        {
            _state[component] = step.Evaluate(t, component);
        }

        return _function.Evaluate(t, _state);
    }
}
