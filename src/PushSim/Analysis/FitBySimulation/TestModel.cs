using MathNet.Numerics.LinearAlgebra;
using PushSim.Tyres;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>The forces of all measured pulls as a function of one vector: the logarithms of the parameters, then for each pull how much later its clock is than the
/// run's [s], what is left of its tare [N], and by how much its friction differs from that of all pulls, in its logarithm [1]; those differences have a mean
/// of zero.</summary>
internal sealed class TestModel
{
    // Step of a derivative in the logarithm of a parameter: well above what the steps of a run leave, well below what bends [1].
    private const double Difference = 0.01;

    // Numbers of a pull's own.
    private const int PerPull = 3;

    // How firmly the differences of friction are held to a mean of zero [N].
    private const double Firm = 100.0;

    // Room for the difference quotient where both frictions are equal, in the logarithm [1].
    private const double RoundedUp = 2.0 * Difference;

    /// <summary>Force of a run that fails, or that ends before the reading: far from any measurement [N].</summary>
    public const double Nowhere = 1e6;

    private readonly SimulatedTest _test;
    private readonly IReadOnlyList<MeasuredStretch> _pulls;
    private readonly double _end;
    private readonly CancellationToken _cancel;
    private readonly Dictionary<string, ForceHistory?> _known = [];

    /// <param name="test">The simulated test.</param>
    /// <param name="pulls">What it is held against.</param>
    /// <param name="end">Where its runs may end [s].</param>
    /// <param name="cancel">Stops the runs.</param>
    public TestModel(SimulatedTest test, IReadOnlyList<MeasuredStretch> pulls, double end, CancellationToken cancel)
    {
        (_test, _pulls, _end, _cancel) = (test, pulls, Math.Min(end, test.End), cancel);
        Measured = Vector<double>.Build.DenseOfEnumerable(pulls.SelectMany(p => p.Force).Append(0.0));
    }

    /// <summary>Parameters of the tyre [1].</summary>
    public static int Parameters => TestParameter.All.Count;

    /// <summary>Length of the vector [1].</summary>
    public int Count => Parameters + (PerPull * _pulls.Count);

    /// <summary>All measured forces, pull after pull, and a zero for the mean difference of friction [N].</summary>
    public Vector<double> Measured { get; }

    public IReadOnlyList<MeasuredStretch> Pulls => _pulls;

    /// <summary>The tyre of a vector.</summary>
    public TyreSettings Tyre(IReadOnlyList<double> x)
    {
        TyreSettings tyre = _test.Tyre;
        for (int k = 0; k < Parameters; k++)
        {
            tyre = TestParameter.All[k].Put(tyre, Math.Exp(x[k]));
        }

        return tyre;
    }

    /// <summary>The vector of a tyre whose runs begin to pull when the measured pulls do; null if its run fails or never pulls.</summary>
    public double[]? Start(TyreSettings tyre)
    {
        double[] x = [.. TestParameter.All.Select(p => Math.Log(Math.Clamp(p.Of(tyre), p.Low, p.High))), .. new double[PerPull * _pulls.Count]];
        if (Histories([x])[0] is not ForceHistory force)
        {
            return null;
        }

        for (int j = 0; j < _pulls.Count; j++)
        {
            int at = Array.FindIndex(_pulls[j].Time, t => t >= _pulls[j].HalfTime);
            x[Parameters + (PerPull * j)] = _pulls[j].HalfTime - force.FirstAt(_pulls[j].Force[at]);
        }

        return x.All(double.IsFinite) ? x : null;
    }

    /// <summary>The forces of a vector, in the order of <see cref="Measured"/> [N].</summary>
    public Vector<double> Forces(Vector<double> x)
    {
        ForceHistory?[] runs = Histories([.. _pulls.Select((_, j) => OfPull(x, j))]);
        return Vector<double>.Build.DenseOfEnumerable(
            _pulls.SelectMany((p, j) => p.Time.Select(t => runs[j] is ForceHistory force ? force.At(t - Later(x, j)) + Tare(x, j) : Nowhere))
                .Append(Firm * Enumerable.Range(0, _pulls.Count).Sum(j => Friction(x, j))));
    }

    /// <summary>Derivatives of the forces to the vector, one row a sample.</summary>
    public Matrix<double> Jacobian(Vector<double> x)
    {
        ForceHistory?[] runs = Histories([[.. x], .. Enumerable.Range(0, Parameters).Select(k => Moved(x, k))]);
        (ForceHistory? middle, ForceHistory?[] moved) = (runs[0], runs[1..]);
        Matrix<double> j = Matrix<double>.Build.Dense(Measured.Count, Count);
        int row = 0;
        for (int p = 0; p < _pulls.Count; p++)
        {
            foreach (double time in _pulls[p].Time)
            {
                double t = time - Later(x, p);
                for (int k = 0; middle is not null && k < Parameters; k++)
                {
                    j[row, k] = moved[k] is ForceHistory other ? (other.At(t) - middle.At(t)) / Difference : 0.0;
                }

                j[row, Parameters + (PerPull * p)] = -(middle?.SlopeAt(t) ?? 0.0);
                j[row, Parameters + (PerPull * p) + 1] = 1.0;
                j[row, Parameters + (PerPull * p) + 2] = TestParameter.Frictions.Sum(k => j[row, k]);
                row++;
            }

            j[Measured.Count - 1, Parameters + (PerPull * p) + 2] = Firm;
        }

        return j;
    }

    /// <summary>The simulated forces of vectors on their own clock; null where the run fails or there is no such tyre. Those of one tyre share its run.</summary>
    private ForceHistory?[] Histories(IReadOnlyList<double[]> vectors)
    {
        // a tyre that grips better sliding than standing is none that a file may hold
        string?[] keys = [.. vectors.Select(x => TestParameter.KineticOverStatic(x) > RoundedUp ? null : Key(x))];
        (string Key, double[] X)[] unknown = [.. keys.Zip(vectors).Where(v => v.First is not null && !_known.ContainsKey(v.First)).Select(v => (v.First!, v.Second)).DistinctBy(v => v.Item1)];
        foreach ((string key, ForceHistory? run) in unknown.Select(v => v.Key).Zip(_test.Run([.. unknown.Select(v => Tyre(v.X))], _end, _cancel)))
        {
            _known[key] = run;
        }

        return [.. keys.Select(k => k is null ? null : _known[k])];
    }

    private static string Key(double[] x) => string.Join(' ', x.Take(Parameters).Select(v => v.ToString("R", CultureInfo.InvariantCulture)));

    private static double[] Moved(IList<double> x, int parameter)
    {
        double[] other = [.. x];
        other[parameter] += Difference;
        return other;
    }

    /// <summary>How much later a pull's clock is than the run's [s].</summary>
    public static double Later(IList<double> x, int pull) => x[Parameters + (PerPull * pull)];

    /// <summary>What was left of a pull's tare [N].</summary>
    public static double Tare(IList<double> x, int pull) => x[Parameters + (PerPull * pull) + 1];

    /// <summary>Difference of a pull's friction from that of all, in its logarithm [1].</summary>
    public static double Friction(IList<double> x, int pull) => x[Parameters + (PerPull * pull) + 2];

    private static double[] OfPull(IList<double> x, int pull)
    {
        double[] own = [.. x.Take(Parameters)];
        foreach (int k in TestParameter.Frictions)
        {
            own[k] += Friction(x, pull);
        }

        return own;
    }
}
