namespace PushSim.Numerics;

/// <summary>Finds where a scalar function rises through zero on the dense output of a step: signs are compared at the ends of a few parts of it, and a bracketed zero is refined by the
/// Illinois form of false position with bisection as the safeguard (M. Dowell, P. Jarratt, BIT 11 (1971) 168-174). A zero counts for the step that reaches it: an exact zero at
/// a step's start belongs to the step before. Limit: two zeros within a part are not seen. Nothing is allocated per search.</summary>
/// <param name="function">The function; a struct is called without indirection.</param>
/// <param name="count">Number of components of the state [1].</param>
internal sealed class EventFinder<TFunction>(TFunction function, int count)
    where TFunction : IEventFunction
{
    // Refinements before the bracket is taken as it is [1]; bisection alone needs about 60.
    private const int MaximumRefinements = 200;

    // Parts of a step; more find shorter double crossings [1].
    private const int Parts = 4;

    private readonly double[] _state = new double[count];
    private TFunction _function = function;

    /// <summary>The function, in place.</summary>
    public ref TFunction Function => ref _function;

    /// <summary>First event in a step.</summary>
    /// <param name="step">The step.</param>
    /// <param name="time">Time of the event [s]; NaN if there is none.</param>
    /// <returns>Whether there is one.</returns>
    public bool TryFind(DenseOutput step, out double time)
    {
        double a = step.T0;
        double fa = At(step, a);
        for (int i = 1; i <= Parts; i++)
        {
            double b = i == Parts ? step.T1 : step.T0 + ((step.T1 - step.T0) * i / Parts);
            double fb = At(step, b);
            if (fa < 0.0 && fb >= 0.0)
            {
                time = fb == 0.0 ? b : Refine(step, a, fa, b, fb);
                return true;
            }

            (a, fa) = (b, fb);
        }

        time = double.NaN;
        return false;
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
        for (int component = 0; component < _state.Length; component++)
        {
            _state[component] = step.Evaluate(t, component);
        }

        return _function.Evaluate(t, _state);
    }
}
