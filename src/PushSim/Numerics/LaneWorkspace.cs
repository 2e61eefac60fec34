using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>Storage and sums of one step of an additive pair in every lane; row by row as <see cref="AdditiveStepper{TSystem}"/> and
/// with its order of operations, so that each lane has its bits.</summary>
internal sealed class LaneWorkspace<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly int _explicitCount;
    private readonly int _count;
    private readonly (int From, int To)[] _live;
    private readonly Term[][] _explicitRows;
    private readonly Term[][] _implicitRows;
    private readonly Term[] _weights;
    private readonly Term[] _differences;
    private readonly int _stride;

    public LaneWorkspace(int explicitCount, int implicitCount, IReadOnlyList<(int From, int To)> explicitRanges, AdditiveTableau tableau)
    {
        _explicitCount = explicitCount;
        _count = explicitCount + implicitCount;
        _live = [.. explicitRanges, (explicitCount, _count)];
        _stride = ((_count * T.Lanes) + Aligned.DoublesOfLine - 1) / Aligned.DoublesOfLine * Aligned.DoublesOfLine;
        Store = GC.AllocateArray<double>((_stride * (tableau.Stages + 5)) + Aligned.DoublesOfLine, pinned: true);
        Y = Aligned.First(Store);
        Trial = Y + _stride;
        Stage = Trial + _stride;
        EndSlope = Stage + _stride;
        Absolute = EndSlope + _stride;
        Slopes = Absolute + _stride;
        int stages = tableau.Stages;
        _explicitRows = [.. Enumerable.Range(0, stages).Select(i => Terms(tableau.AE.Slice(i * stages, i)))];
        _implicitRows = [.. Enumerable.Range(0, stages).Select(i => Terms(tableau.AI.Slice(i * stages, i)))];
        _weights = Terms(tableau.B);
        _differences = Terms([.. Enumerable.Range(0, stages).Select(i => tableau.B[i] - tableau.BHat[i])]);
    }

    // A coefficient of the table that is not zero, and where its slope's row begins.
    private readonly record struct Term(double Coefficient, int Row);

    private Term[] Terms(ReadOnlySpan<double> coefficients)
    {
        List<Term> terms = [];
        for (int j = 0; j < coefficients.Length; j++)
        {
            if (coefficients[j] != 0.0)
            {
                terms.Add(new Term(coefficients[j], Slopes + (j * _stride)));
            }
        }

        return [.. terms];
    }

    public double[] Store { get; }

    /// <summary>Where the rows begin: state, trial, stage, slope at the trial's end, absolute tolerances, slopes of the stages.</summary>
    public int Y { get; }

    public int Trial { get; }

    public int Stage { get; }

    public int EndSlope { get; }

    public int Absolute { get; }

    public int Slopes { get; }

    public Span<T> Row(int place) => MemoryMarshal.Cast<double, T>(Store.AsSpan(place, _count * T.Lanes));

    public Span<T> Slope(int stage) => Row(Slopes + (stage * _stride));

    /// <summary>The state that stage i is evaluated at.</summary>
    public void SetStage(int i, T h)
    {
        Span<(int From, int To)> ranges = _live;
        for (int n = 0; n + 1 < ranges.Length; n++)
        {
            Combine(Stage, h, _explicitRows[i], ranges[n].From, ranges[n].To);
        }

        Combine(Stage, h, _implicitRows[i], _explicitCount, _count);
    }

    /// <summary>The new state.</summary>
    public void SetTrial(T h)
    {
        foreach ((int from, int to) in _live)
        {
            Combine(Trial, h, _weights, from, to);
        }
    }

    // result = y + h sum of coefficient times slope; a zero of the table leaves its slope out, as in the scalar form
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    private void Combine(int result, T h, Term[] terms, int from, int to)
    {
        ref T target = ref At(result);
        ref T start = ref At(Y);
        for (int i = from; i < to; i++)
        {
            T sum = 0.0;
            foreach (Term term in terms)
            {
                sum = T.Fma(term.Coefficient, Unsafe.Add(ref At(term.Row), i), sum);
            }

            Unsafe.Add(ref target, i) = T.Fma(h, sum, Unsafe.Add(ref start, i));
        }
    }

    /// <summary>Sum of squared errors in tolerances [1]; NaN in a lane whose new state is not finite. See <see cref="StageSums.SquaredError"/>.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T SquaredError(T h, T relative)
    {
        ref T old = ref At(Y);
        ref T trial = ref At(Trial);
        ref T absolute = ref At(Absolute);
        int tail = _count / 4 * 4;
        T total0 = 0.0, total1 = 0.0, total2 = 0.0, total3 = 0.0, rest = 0.0;
        bool isTail = false;
        foreach ((int from, int to) in _live)
        {
            for (int i = from; i < to; i++)
            {
                T sum = 0.0;
                foreach (Term term in _differences)
                {
                    sum = T.Fma(term.Coefficient, Unsafe.Add(ref At(term.Row), i), sum);
                }

                T value = Unsafe.Add(ref trial, i);
                T size = T.Max(T.Abs(Unsafe.Add(ref old, i)), T.Abs(value));
                T ratio = h * sum / (Unsafe.Add(ref absolute, i) + (relative * size));
                if (i >= tail)
                {
                    // the scalar form adds its four sums up before the last components
                    rest = isTail ? rest : (total0 + total1) + (total2 + total3);
                    isTail = true;
                    rest = T.Fma(0.0, value, T.Fma(ratio, ratio, rest));
                    continue;
                }

                switch (i & 3)
                {
                    case 0: total0 = T.Fma(0.0, value, T.Fma(ratio, ratio, total0)); break;
                    case 1: total1 = T.Fma(0.0, value, T.Fma(ratio, ratio, total1)); break;
                    case 2: total2 = T.Fma(0.0, value, T.Fma(ratio, ratio, total2)); break;
                    default: total3 = T.Fma(0.0, value, T.Fma(ratio, ratio, total3)); break;
                }
            }
        }

        return isTail ? rest : (total0 + total1) + (total2 + total3);
    }

    /// <summary>Zero in each lane in which a row is finite, else NaN.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T Probe(int row)
    {
        ref T values = ref At(row);
        T probe = 0.0;
        foreach ((int from, int to) in _live)
        {
            for (int i = from; i < to; i++)
            {
                probe = T.Fma(0.0, Unsafe.Add(ref values, i), probe);
            }
        }

        return probe;
    }

    /// <summary>Sum of squares of a row over absolute + relative |y| [1].</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public T WeightedSquares(int row, T relative)
    {
        ref T values = ref At(row);
        ref T y = ref At(Y);
        ref T absolute = ref At(Absolute);
        T total = 0.0;
        foreach ((int from, int to) in _live)
        {
            for (int i = from; i < to; i++)
            {
                T ratio = Unsafe.Add(ref values, i) / (Unsafe.Add(ref absolute, i) + (relative * T.Abs(Unsafe.Add(ref y, i))));
                total = T.Fma(ratio, ratio, total);
            }
        }

        return total;
    }

    /// <summary>Stage row = y + h k_1; its evaluation goes to the end slope's row.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void SetProbe(T h)
    {
        Span<T> y = Row(Y);
        Span<T> k = Slope(0);
        Span<T> stage = Row(Stage);
        for (int i = 0; i < y.Length; i++)
        {
            stage[i] = T.Fma(h, k[i], y[i]);
        }
    }

    /// <summary>End slope's row minus k_1.</summary>
    [MethodImpl(MethodImplOptions.AggressiveOptimization)]
    public void SubtractFirstSlope()
    {
        Span<T> k = Slope(0);
        Span<T> slope = Row(EndSlope);
        for (int i = 0; i < k.Length; i++)
        {
            slope[i] = slope[i] - k[i];
        }
    }

    /// <summary>Copies one row over another in the lanes where chosen is 1; 0 keeps.</summary>
    [MethodImpl(MethodImplOptions.NoInlining | MethodImplOptions.AggressiveOptimization)]
    public void Take(int to, int from, T chosen)
    {
        ref T target = ref At(to);
        ref T source = ref At(from);
        foreach ((int first, int end) in _live)
        {
            for (int i = first; i < end; i++)
            {
                Unsafe.Add(ref target, i) = T.IfLess(0.5, chosen, Unsafe.Add(ref source, i), Unsafe.Add(ref target, i));
            }
        }
    }

    [MethodImpl(MethodImplOptions.AggressiveInlining)]
    private ref T At(int place) => ref Unsafe.As<double, T>(ref Unsafe.Add(ref MemoryMarshal.GetArrayDataReference(Store), place));
}
