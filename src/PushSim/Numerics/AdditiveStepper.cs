namespace PushSim.Numerics;

/// <summary>One step of an additive Runge-Kutta pair on an <see cref="IAdditiveSystem"/>, a struct of which is called without indirection:
/// stage i:  Y_explicit = y_n + h sum_(j&lt;i) aE_ij k_j,   z* = y_n + h sum_(j&lt;i) aI_ij k_j,   k_i by the system with g = h gamma;
/// new state y_n + h sum b_i k_i,   error h sum (b_i - bhat_i) k_i.
/// k_1 is a plain evaluation at the step's start; the one at the step's end serves the dense output and is the next k_1.
/// Nothing is allocated after construction. Source: see <see cref="AdditiveTableau"/>.</summary>
internal sealed class AdditiveStepper<TSystem>
    where TSystem : IAdditiveSystem
{
    private readonly int _count;
    private readonly int _explicitCount;
    private readonly double[] _store;
    private readonly int _y;
    private readonly int _trial;
    private readonly int _stage;
    private readonly int _slopes;
    private readonly int _stride;
    private readonly int _endSlope;
    private readonly SparseRow[] _explicitRows;
    private readonly SparseRow[] _implicitRows;
    private readonly SparseRow _weights;
    private readonly SparseRow _differences;
    private readonly double[] _nodes;
    private TSystem _system;
    private double _trialEnd;

    /// <summary>Allocates all storage.</summary>
    /// <param name="system">The system; a struct is copied, see <see cref="System"/>.</param>
    /// <param name="tableau">The method.</param>
    public AdditiveStepper(TSystem system, AdditiveTableau tableau)
    {
        _system = system;
        Tableau = tableau;
        _explicitCount = system.ExplicitCount;
        _count = system.ExplicitCount + system.ImplicitCount;
        _stride = (_count + Aligned.DoublesOfLine - 1) / Aligned.DoublesOfLine * Aligned.DoublesOfLine;
        _store = GC.AllocateArray<double>((_stride * (tableau.Stages + 4)) + Aligned.DoublesOfLine, pinned: true);
        _y = Aligned.First(_store);
        _trial = _y + _stride;
        _stage = _trial + _stride;
        _endSlope = _stage + _stride;
        _slopes = _endSlope + _stride;
        _nodes = tableau.C.ToArray();
        _explicitRows = Rows(tableau.AE);
        _implicitRows = Rows(tableau.AI);
        _weights = new SparseRow(tableau.B, _slopes, _stride);
        double[] differences = new double[tableau.Stages];
        for (int i = 0; i < differences.Length; i++)
        {
            differences[i] = tableau.B[i] - tableau.BHat[i];
        }

        _differences = new SparseRow(differences, _slopes, _stride);
        Dense = new DenseOutput(_store, _y, _slopes, _trial, _endSlope, _count, _explicitCount);
    }

    /// <summary>The method.</summary>
    public AdditiveTableau Tableau { get; }

    /// <summary>The system, in place.</summary>
    public ref TSystem System => ref _system;

    /// <summary>Time of <see cref="State"/> [s].</summary>
    public double Time { get; private set; }

    /// <summary>State at <see cref="Time"/>, each component in its own unit.</summary>
    public ReadOnlySpan<double> State => _store.AsSpan(_y, _count);

    /// <summary>Evaluations since <see cref="Start"/> [1].</summary>
    public long Evaluations { get; private set; }

    /// <summary>The solution over the last finished trial, until <see cref="Advance"/>.</summary>
    public DenseOutput Dense { get; }

    /// <summary>Puts the stepper at a state; <see cref="Restart"/> comes next.</summary>
    /// <param name="t">Time [s].</param>
    /// <param name="y">State, each component in its own unit.</param>
    public void Start(double t, ReadOnlySpan<double> y)
    {
        Time = t;
        Evaluations = 0;
        y.CopyTo(_store.AsSpan(_y, _count));
    }

    /// <summary>Evaluates k_1 afresh at the present time and state.</summary>
    /// <returns>Whether it is finite.</returns>
    public bool Restart()
    {
        Span<double> k1 = _store.AsSpan(_slopes, _count);
        Evaluate(Time, 0.0, _store.AsSpan(_y, _count), k1);
        return StageSums.AllFinite(k1);
    }

    /// <summary>Tries a step from the present state, which it keeps.</summary>
    /// <param name="tEnd">End of the step, after the present time [s].</param>
    /// <param name="absolute">Absolute tolerance per component, in its unit; infinite: not in the norm.</param>
    /// <param name="relative">Relative tolerance [1].</param>
    /// <param name="normCount">Number of components in the norm, at least 1 [1].</param>
    /// <returns>Root mean square of the error in tolerances [1]: acceptable up to 1; NaN if anything is not finite.</returns>
    public double Try(double tEnd, ReadOnlySpan<double> absolute, double relative, int normCount)
    {
        double h = tEnd - Time;
        _trialEnd = tEnd;
        ReadOnlySpan<double> y = _store.AsSpan(_y, _count);
        Span<double> stage = _store.AsSpan(_stage, _count);
        double g = h * Tableau.Gamma;
        for (int i = 1; i < _nodes.Length; i++)
        {
            Combine(stage, y, h, _explicitRows[i], 0, _explicitCount);
            Combine(stage, y, h, _implicitRows[i], _explicitCount, _count);
            double t = _nodes[i] == 1.0 ? tEnd : Time + (_nodes[i] * h);
            Evaluate(t, g, stage, _store.AsSpan(_slopes + (i * _stride), _count));
        }

        Span<double> trial = _store.AsSpan(_trial, _count);
        Combine(trial, y, h, _weights, 0, _count);
        double squares = StageSums.SquaredError(
            y, trial, h, _store, _differences.Values, _differences.Places, absolute, relative);
        return Math.Sqrt(squares / normCount);
    }

    /// <summary>Evaluates the slope at the end of the trial; <see cref="Dense"/> then shows the step.</summary>
    /// <returns>Whether the slope is finite.</returns>
    public bool FinishTrial()
    {
        Span<double> slope = _store.AsSpan(_endSlope, _count);
        Evaluate(_trialEnd, 0.0, _store.AsSpan(_trial, _count), slope);
        Dense.SetInterval(Time, _trialEnd);
        return StageSums.AllFinite(slope);
    }

    /// <summary>Makes the finished trial the present state and its end slope the next k_1.</summary>
    public void Advance()
    {
        Time = _trialEnd;
        _store.AsSpan(_trial, _count).CopyTo(_store.AsSpan(_y, _count));
        _store.AsSpan(_endSlope, _count).CopyTo(_store.AsSpan(_slopes, _count));
    }

    /// <summary>First step from the sizes of y, y' and a difference quotient of y' (one evaluation), see <see cref="FirstStep"/>.</summary>
    /// <param name="absolute">Absolute tolerance per component, in its unit; infinite: not in the norm.</param>
    /// <param name="relative">Relative tolerance [1].</param>
    /// <param name="normCount">Number of components in the norm, at least 1 [1].</param>
    /// <param name="longest">Longest step that makes sense, the rest of the segment [s].</param>
    /// <returns>The step, positive [s].</returns>
    public double EstimateStep(ReadOnlySpan<double> absolute, double relative, int normCount, double longest)
    {
        ReadOnlySpan<double> y = _store.AsSpan(_y, _count);
        ReadOnlySpan<double> k1 = _store.AsSpan(_slopes, _count);
        double d0 = WeightedNorm(y, absolute, relative, normCount);
        double d1 = WeightedNorm(k1, absolute, relative, normCount);
        double h0 = FirstStep.Guess(d0, d1, longest);

        Span<double> probe = _store.AsSpan(_stage, _count);
        Span<double> slope = _store.AsSpan(_endSlope, _count);
        for (int i = 0; i < _count; i++)
        {
            probe[i] = Math.FusedMultiplyAdd(h0, k1[i], y[i]);
        }

        Evaluate(Time + h0, 0.0, probe, slope);
        for (int i = 0; i < _count; i++)
        {
            slope[i] -= k1[i];
        }

        double d2 = WeightedNorm(slope, absolute, relative, normCount);
        return FirstStep.Of(h0, d1, d2, Tableau.EmbeddedOrder, longest);
    }

    private SparseRow[] Rows(ReadOnlySpan<double> square)
    {
        int stages = Tableau.Stages;
        SparseRow[] rows = new SparseRow[stages];
        for (int i = 0; i < stages; i++)
        {
            rows[i] = new SparseRow(square.Slice(i * stages, i), _slopes, _stride);
        }

        return rows;
    }

    private void Combine(Span<double> result, ReadOnlySpan<double> y, double h, in SparseRow row, int from, int to) =>
        StageSums.Combine(result, y, h, _store, row.Values, row.Places, from, to);

    private void Evaluate(double t, double g, Span<double> y, Span<double> slope)
    {
        Evaluations++;
        _system.Evaluate(t, g, y, slope);
    }

    private double WeightedNorm(ReadOnlySpan<double> values, ReadOnlySpan<double> absolute, double relative, int normCount)
    {
        double total = 0.0;
        for (int i = 0; i < values.Length; i++)
        {
            double ratio = values[i] / (absolute[i] + (relative * Math.Abs(_store[_y + i])));
            total = Math.FusedMultiplyAdd(ratio, ratio, total);
        }

        return Math.Sqrt(total / normCount);
    }

    // The coefficients of one sum that are not zero, and where in the store their slopes begin.
    private readonly struct SparseRow
    {
        internal readonly double[] Values;
        internal readonly int[] Places;

        internal SparseRow(ReadOnlySpan<double> dense, int first, int stride)
        {
            List<double> values = [];
            List<int> places = [];
            for (int j = 0; j < dense.Length; j++)
            {
                if (dense[j] != 0.0)
                {
                    values.Add(dense[j]);
                    places.Add(first + (j * stride));
                }
            }

            Values = [.. values];
            Places = [.. places];
        }
    }
}
