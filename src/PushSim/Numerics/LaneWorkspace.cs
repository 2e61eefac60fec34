using System.Runtime.CompilerServices;
using System.Runtime.InteropServices;

namespace PushSim.Numerics;

/// <summary>Storage and sums of one step of an additive pair in every lane, row by row. A single lane of doubles is summed by <see cref="StageSums"/>, with the same order of
/// operations, so that each lane has its bits.</summary>
internal sealed class LaneWorkspace<T>
    where T : struct, ILanes<T>, IReal<T>
{
    private readonly int _explicitCount;
    private readonly int _count;
    private readonly (int From, int To)[] _live;
    private readonly (int From, int To)[] _predicted;
    private readonly Terms[] _explicitRows;
    private readonly Terms[] _implicitRows;
    private readonly Terms _weights;
    private readonly Terms _differences;
    private readonly int _stride;

    public LaneWorkspace(
        int explicitCount, int implicitCount, IReadOnlyList<(int From, int To)> explicitRanges, IReadOnlyList<(int From, int To)> predictedRanges, AdditiveTableau tableau)
    {
        _explicitCount = explicitCount;
        _count = explicitCount + implicitCount;
        _live = [.. explicitRanges, (explicitCount, _count)];
        _predicted = [.. predictedRanges];
        int inDouble = sizeof(double) / Lane.Bytes<T>();
        int line = Aligned.DoublesOfLine * inDouble;
        _stride = ((_count * T.Lanes) + line - 1) / line * line;
        Store = GC.AllocateArray<double>((_stride / inDouble * (tableau.Stages + 6)) + Aligned.DoublesOfLine, pinned: true);
        Y = Aligned.First(Store) * inDouble;
        Trial = Y + _stride;
        Stage = Trial + _stride;
        EndSlope = Stage + _stride;
        Absolute = EndSlope + _stride;
        Predicted = Absolute + _stride;
        Slopes = Predicted + _stride;
        int stages = tableau.Stages;
        _explicitRows = [.. Enumerable.Range(0, stages).Select(i => new Terms(tableau.AE.Slice(i * stages, i), Slopes, _stride))];
        _implicitRows = [.. Enumerable.Range(0, stages).Select(i => new Terms(tableau.AI.Slice(i * stages, i), Slopes, _stride))];
        _weights = new Terms(tableau.B, Slopes, _stride);
        _differences = new Terms([.. Enumerable.Range(0, stages).Select(i => tableau.B[i] - tableau.BHat[i])], Slopes, _stride);
    }

    // A coefficient of the table that is not zero, and where its slope's row begins.
    private readonly record struct Term(double Coefficient, int Row);

    // The terms of one sum, as pairs and as two lists.
    private readonly struct Terms
    {
        public readonly Term[] Pairs;
        public readonly double[] Coefficients;
        public readonly int[] Rows;

        public Terms(ReadOnlySpan<double> coefficients, int first, int stride)
        {
            List<Term> terms = [];
            for (int j = 0; j < coefficients.Length; j++)
            {
                if (coefficients[j] != 0.0)
                {
                    terms.Add(new Term(coefficients[j], first + (j * stride)));
                }
            }

            Pairs = [.. terms];
            Coefficients = [.. terms.Select(t => t.Coefficient)];
            Rows = [.. terms.Select(t => t.Row)];
        }
    }

    /// <summary>The rows; of floats two in each double.</summary>
    public double[] Store { get; }

    /// <summary>Where the rows begin, counted in lanes: state, trial, stage, slope at the trial's end, absolute tolerances, prediction of the implicit part, slopes of the stages.</summary>
    public int Y { get; }

    public int Trial { get; }

    public int Stage { get; }

    public int EndSlope { get; }

    public int Absolute { get; }

    public int Predicted { get; }

    public int Slopes { get; }

    public int ImplicitCount => _count - _explicitCount;

    public Span<T> Row(int place) => MemoryMarshal.CreateSpan(ref At(place), _count);

    /// <summary>The implicit part of a row.</summary>
    public ReadOnlySpan<T> Implicit(int place) => Row(place)[_explicitCount..];

    public Span<T> Slope(int stage) => Row(Slopes + (stage * _stride));

    /// <summary>The state that stage i is evaluated at.</summary>
    public void SetStage(int i, T h)
    {
        Span<(int From, int To)> ranges = _live;
        for (int n = 0; n + 1 < ranges.Length; n++)
        {
            Combine(Stage, Y, h, _explicitRows[i], 0, ranges[n].From, ranges[n].To);
        }

        Combine(Stage, Y, h, _implicitRows[i], 0, _explicitCount, _count);
        int implicitPart = _explicitCount * T.Lanes;
        foreach ((int from, int to) in _predicted)
        {
            Combine(Predicted, Y + implicitPart, h, _explicitRows[i], implicitPart, from, to);
        }
    }

    /// <summary>The new state.</summary>
    public void SetTrial(T h)
    {
        foreach ((int from, int to) in _live)
        {
            Combine(Trial, Y, h, _weights, 0, from, to);
        }
    }

    // result = y + h sum of coefficient times slope, slopes read so many doubles behind their rows' starts; a zero of the table leaves its slope out
    [MethodImpl(Kernel.Part)]
    private void Combine(int result, int y, T h, in Terms terms, int behind, int from, int to)
    {
        if (T.Lanes == 1 && !Lane.IsSingle<T>())
        {
            StageSums.Combine(Store.AsSpan(result), Store.AsSpan(y), Lane.Get(h, 0), Store.AsSpan(behind), terms.Coefficients, terms.Rows, from, to);
            return;
        }

        ref T target = ref At(result);
        ref T start = ref At(y);
        for (int i = from; i < to; i++)
        {
            T sum = 0.0;
            foreach (Term term in terms.Pairs)
            {
                sum = T.Fma(term.Coefficient, Unsafe.Add(ref At(term.Row + behind), i), sum);
            }

            Unsafe.Add(ref target, i) = T.Fma(h, sum, Unsafe.Add(ref start, i));
        }
    }

    /// <summary>Sum of squared errors in tolerances [1]; NaN in a lane whose new state is not finite. See <see cref="StageSums.SquaredError"/>.</summary>
    [MethodImpl(Kernel.Part)]
    public T SquaredError(T h, T relative)
    {
        if (T.Lanes == 1 && !Lane.IsSingle<T>())
        {
            return StageSums.SquaredError(
                Store.AsSpan(Y, _count), Store.AsSpan(Trial, _count), Lane.Get(h, 0), Store, _differences.Coefficients, _differences.Rows,
                Store.AsSpan(Absolute, _count), Lane.Get(relative, 0));
        }

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
                foreach (Term term in _differences.Pairs)
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
    [MethodImpl(Kernel.Part)]
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
    [MethodImpl(Kernel.Part)]
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
    [MethodImpl(Kernel.Whole)]
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
    [MethodImpl(Kernel.Whole)]
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
    [MethodImpl(Kernel.Part)]
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
    private ref T At(int place) => ref Unsafe.As<double, T>(ref Unsafe.AddByteOffset(ref MemoryMarshal.GetArrayDataReference(Store), (nint)place * Lane.Bytes<T>()));
}
