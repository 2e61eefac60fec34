using System.Numerics;
using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>
/// Integrates an <see cref="IAdditiveSystem"/> by an additive Runge-Kutta pair with adaptive steps. In stage i the explicit
/// part comes first, Y = y + h sum_j&lt;i aE_ij k_j, then the system solves its implicit part in closed form from
/// z* = z + h sum_j&lt;i aI_ij k_j. Nothing is allocated after construction.
/// Step control: proportional-integral, exponents 0.7/p and -0.4/p (Hairer and Wanner, Solving Ordinary Differential
/// Equations II, section IV.2), p the order. A trial that overflows or is no number is a rejection with the least factor.
/// </summary>
/// <typeparam name="TSystem">The system.</typeparam>
public sealed class AdditiveIntegrator<TSystem>
    where TSystem : class, IAdditiveSystem
{
    private const double Safety = 0.9;
    private const double LeastFactor = 0.2;
    private const double GreatestFactor = 4.0;

    private readonly TSystem _system;
    private readonly AdditiveTableau _tableau;
    private readonly int _explicitCount;
    private readonly int _count;
    private readonly double[] _stage;
    private readonly double[] _k;
    private readonly double[] _errorWeight;
    private readonly double[] _absolute;
    private readonly int[] _inNorm;
    private double[] _y;
    private double[] _next;
    private double[] _slopeNext;
    private long _evaluations;

    /// <summary>Makes the workspace.</summary>
    /// <param name="system">The system.</param>
    /// <param name="tableau">The pair.</param>
    /// <param name="absolute">Absolute tolerance of each component, in its unit; infinite keeps it out of the error norm. Length: all components.</param>
    public AdditiveIntegrator(TSystem system, AdditiveTableau tableau, double[] absolute)
    {
        _system = system;
        _tableau = tableau;
        _explicitCount = system.ExplicitCount;
        _count = system.ExplicitCount + system.ImplicitCount;
        _absolute = absolute;
        _inNorm = [.. Enumerable.Range(0, _count).Where(i => !double.IsInfinity(absolute[i]))];
        _stage = new double[_count];
        _k = new double[_count * tableau.Stages];
        _y = new double[_count];
        _next = new double[_count];
        _slopeNext = new double[_count];
        _errorWeight = [.. tableau.B.Zip(tableau.BHat, (b, bHat) => b - bHat)];
    }

    /// <summary>Relative tolerance [1].</summary>
    public double RelativeTolerance { get; init; } = 1e-3;

    /// <summary>Longest step [s].</summary>
    public double MaxStep { get; init; } = 0.05;

    /// <summary>First step after the start and after each breakpoint [s].</summary>
    public double FirstStep { get; init; } = 1e-5;

    /// <summary>A step below this share of the time scale is a failure [1].</summary>
    public double LeastStepShare { get; init; } = 1e-13;

    /// <summary>Cap on evaluations [1].</summary>
    public long MaxEvaluations { get; init; } = long.MaxValue;

    /// <summary>Fixed step without error control, for order tests [s]; 0 is adaptive.</summary>
    public double FixedStep { get; init; }

    /// <summary>The state reached, in the system's order.</summary>
    public ReadOnlySpan<double> State => _y;

    /// <summary>Integrates from t0 to t1.</summary>
    /// <param name="t0">Start [s].</param>
    /// <param name="t1">End [s].</param>
    /// <param name="y0">State at the start.</param>
    /// <param name="breakpoints">Rising times at which the right-hand side jumps; a step ends on each [s].</param>
    /// <param name="observer">Sees every accepted step.</param>
    public IntegrationReport Run<TObserver>(double t0, double t1, ReadOnlySpan<double> y0, ReadOnlySpan<double> breakpoints, TObserver observer)
        where TObserver : IStepObserver
    {
        y0.CopyTo(_y);
        double t = t0;
        _evaluations = 0;
        long steps = 0;
        long rejected = 0;
        int nextBreak = 0;
        while (nextBreak < breakpoints.Length && breakpoints[nextBreak] <= t0)
        {
            nextBreak++;
        }

        Enter(t);
        double h = FixedStep > 0.0 ? FixedStep : Math.Min(FirstStep, t1 - t0);
        double lastError = 1.0;
        while (t < t1)
        {
            double limit = nextBreak < breakpoints.Length ? Math.Min(breakpoints[nextBreak], t1) : t1;
            double left = limit - t;
            bool ends = h >= left * (1.0 - 1e-12);

            // two equal steps rather than a long and a tiny one
            double trial = ends ? left : FixedStep == 0.0 && h > 0.5 * left ? 0.5 * left : h;
            double error = Trial(t, trial);
            bool accepted = FixedStep > 0.0 || error <= 1.0;
            if (!accepted)
            {
                rejected++;
                h = trial * (double.IsNaN(error) ? LeastFactor : Math.Max(LeastFactor, Safety * Math.Pow(error, -1.0 / _tableau.Order)));
                if (h < LeastStepShare * Math.Max(1e-3, Math.Abs(t)))
                {
                    return new IntegrationReport(IntegrationStatus.StepTooSmall, t, _evaluations, steps, rejected);
                }

                continue;
            }

            steps++;
            double reached = ends ? limit : t + trial;
            Evaluate(reached, 0.0, _next, _slopeNext);
            bool goesOn = observer.OnStep(new DenseStep(t, reached, _y, _next, _k.AsSpan(0, _count), _slopeNext, _explicitCount));
            t = reached;
            (_y, _next) = (_next, _y);
            _slopeNext.AsSpan().CopyTo(_k.AsSpan(0, _count));
            if (!goesOn)
            {
                return new IntegrationReport(IntegrationStatus.Stopped, t, _evaluations, steps, rejected);
            }

            if (_evaluations > MaxEvaluations)
            {
                return new IntegrationReport(IntegrationStatus.TooManyEvaluations, t, _evaluations, steps, rejected);
            }

            if (FixedStep == 0.0)
            {
                error = Math.Max(error, 1e-8);
                double p = _tableau.Order;
                double factor = Safety * Math.Pow(error, -0.7 / p) * Math.Pow(lastError, 0.4 / p);
                h = Math.Min(MaxStep, Math.Max(ends ? h : 0.0, trial * Math.Clamp(factor, LeastFactor, GreatestFactor)));
                lastError = error;
            }

            if (nextBreak < breakpoints.Length && t >= breakpoints[nextBreak])
            {
                nextBreak++;
                Enter(t);
                h = FixedStep > 0.0 ? FixedStep : Math.Min(FirstStep, h);
                lastError = 1.0;
            }
        }

        return new IntegrationReport(IntegrationStatus.Finished, t, _evaluations, steps, rejected);
    }

    private void Enter(double t)
    {
        if (_system is ISegmented segmented)
        {
            segmented.EnterSegment(t);
        }

        Evaluate(t, 0.0, _y, _k.AsSpan(0, _count));
    }

    private void Evaluate(double t, double g, Span<double> y, Span<double> dy)
    {
        _evaluations++;
        _system.Evaluate(t, g, y, dy);
    }

    // One trial step into _next; returns its error in tolerance units, NaN if it is no number.
    private double Trial(double t, double h)
    {
        AdditiveTableau tableau = _tableau;
        for (int i = 1; i < tableau.Stages; i++)
        {
            Combine(tableau.Explicit[i], h, 0, _explicitCount, _stage);
            Combine(tableau.Implicit[i], h, _explicitCount, _count, _stage);
            Evaluate(t + (tableau.C[i] * h), h * tableau.Gamma, _stage, _k.AsSpan(i * _count, _count));
        }

        Combine(tableau.B, h, 0, _count, _next);
        return FixedStep > 0.0 ? 0.0 : ErrorNorm(h);
    }

    // target = y + h sum_j a_j k_j on [from, to)
    private void Combine(double[] a, double h, int from, int to, double[] target)
    {
        ReadOnlySpan<double> y = _y.AsSpan(from, to - from);
        Span<double> sum = target.AsSpan(from, to - from);
        y.CopyTo(sum);
        for (int j = 0; j < a.Length; j++)
        {
            double factor = h * a[j];
            if (factor != 0.0)
            {
                Add(factor, _k.AsSpan((j * _count) + from, to - from), sum);
            }
        }
    }

    // sum += factor k, with one rounding, in vectors as wide as the machine's: the same bits in every width
    private static void Add(double factor, ReadOnlySpan<double> k, Span<double> sum)
    {
        Span<Vector<double>> sums = MemoryMarshal.Cast<double, Vector<double>>(sum);
        ReadOnlySpan<Vector<double>> ks = MemoryMarshal.Cast<double, Vector<double>>(k);
        var factors = new Vector<double>(factor);
        for (int i = 0; i < sums.Length; i++)
        {
            sums[i] = Vector.FusedMultiplyAdd(factors, ks[i], sums[i]);
        }

        for (int i = sums.Length * Vector<double>.Count; i < sum.Length; i++)
        {
            sum[i] = Math.FusedMultiplyAdd(factor, k[i], sum[i]);
        }
    }

    private double ErrorNorm(double h)
    {
        double total = 0.0;
        foreach (int i in _inNorm)
        {
            double e = 0.0;
            for (int j = 0; j < _errorWeight.Length; j++)
            {
                e = Math.FusedMultiplyAdd(_errorWeight[j], _k[(j * _count) + i], e);
            }

            double scale = _absolute[i] + (RelativeTolerance * Math.Max(Math.Abs(_y[i]), Math.Abs(_next[i])));
            e *= h / scale;
            total += e * e;
        }

        double norm = Math.Sqrt(total / Math.Max(1, _inNorm.Length));
        return double.IsFinite(norm) && IsFinite(_next) ? norm : double.NaN;
    }

    private static bool IsFinite(double[] y)
    {
        double sum = 0.0;
        foreach (double x in y)
        {
            sum += 0.0 * x;
        }

        return sum == 0.0;
    }
}
