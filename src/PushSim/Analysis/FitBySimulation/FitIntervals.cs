using MathNet.Numerics.LinearAlgebra;
using PushSim.Analysis.Statistics;

namespace PushSim.Analysis.FitBySimulation;

/// <summary>What a fit by simulation is worth. Three pulls or more: what each pull alone would change (its score through the common curvature) is one value, and
/// Student's interval over the pulls holds noise and the scatter from pull to pull; where the noise alone, with correlation between neighbours, says more, that counts, since few pulls may agree
/// by chance. Fewer pulls: the noise alone. A parameter
/// is told if both the noise and the pulls leave it within a factor of two.</summary>
internal sealed class FitIntervals
{
    private const double Confidence = 0.95;

    // A parameter is told if its interval reaches no further than this factor either way [1].
    private const double ToldWithin = 2.0;

    // Correlation above which two parameters are told only together [1].
    private const double OnlyTogether = 0.95;

    // How near to the end of its range a parameter counts as having run away, in its logarithm [1].
    private const double AtEnd = 0.02;

    // What is known of a parameter without any test, as a standard deviation of its logarithm: it keeps the inverse finite [1].
    private const double Beforehand = 2.0;

    private readonly Vector<double> _x;
    private readonly FitDoubt _doubt;
    private readonly Matrix<double> _covariance;
    private readonly double[] _ofNoise;
    private readonly double[] _half;
    private readonly double[] _step;

    /// <param name="model">The pulls and the simulated test.</param>
    /// <param name="x">The fitted vector.</param>
    /// <param name="doubt">Why nothing that the fit says is to be believed.</param>
    public FitIntervals(TestModel model, Vector<double> x, FitDoubt doubt)
    {
        (_x, _doubt) = (x, doubt);
        Matrix<double> jacobian = model.Jacobian(x);
        Vector<double> residual = model.Measured - model.Forces(x);
        double variance = residual.DotProduct(residual) / Math.Max(1, model.Measured.Count - model.Count);
        Matrix<double> curvature = jacobian.TransposeThisAndMultiply(jacobian);
        for (int k = 0; k < TestModel.Parameters; k++)
        {
            curvature[k, k] += variance / (Beforehand * Beforehand);
        }

        Matrix<double> inverse = curvature.Inverse();
        (double[][] shifts, double correlated) = EachPull(model, x, jacobian, residual, inverse);
        _covariance = inverse * (variance * correlated);
        double freedom = Math.Max(1.0, (model.Measured.Count / correlated) - model.Count);
        _ofNoise = [.. Enumerable.Range(0, TestModel.Parameters).Select(k => StudentT.Factor(Confidence, freedom) * Math.Sqrt(_covariance[k, k]))];
        Interval[] ofPulls = [.. Enumerable.Range(0, TestModel.Parameters).Select(k => Interval.OfMean([.. shifts.Select(s => s[k])], Confidence))];
        _step = [.. ofPulls.Select(i => i.Value)];
        _half = shifts.Length < SimulationFitter.FewestPulls ? _ofNoise : [.. ofPulls.Select((i, k) => Math.Max(_ofNoise[k], 0.5 * (i.High - i.Low)))];
    }

    public FittedParameter Of(int k)
    {
        TestParameter p = TestParameter.All[k];
        bool ranAway = _x[k] < Math.Log(p.Low) + AtEnd || _x[k] > Math.Log(p.High) - AtEnd;
        bool isAtRest = Math.Abs(_step[k]) <= Math.Max(_half[k], _ofNoise[k]);
        bool isTold = _doubt == FitDoubt.None && !ranAway && isAtRest && Math.Max(_half[k], _ofNoise[k]) < Math.Log(ToldWithin);

        // the mean of what the pulls would change is the step still to go: small, and taken here
        double middle = isAtRest ? _x[k] + _step[k] : _x[k];
        double half = isTold ? _half[k] : Math.Max(_half[k], _ofNoise[k]);
        (UntoldCause why, TestParameter? with) = isTold ? (UntoldCause.None, null) : Why(k, ranAway, isAtRest);
        return new FittedParameter(p, new Interval(Math.Exp(middle), Math.Exp(middle - half), Math.Exp(middle + half)), isTold, why) { With = with };
    }

    // What each pull alone would change in the parameters, times the number of pulls; and the readings that count for one.
    private static (double[][] Shifts, double Correlated) EachPull(TestModel model, Vector<double> x, Matrix<double> jacobian, Vector<double> residual, Matrix<double> inverse)
    {
        int n = model.Pulls.Count;
        double[][] shifts = new double[n][];
        double effective = 0.0;
        for (int p = 0, row = 0; p < n; p++)
        {
            int length = model.Pulls[p].Time.Length;
            Vector<double> own = residual.SubVector(row, length);
            shifts[p] = [.. (inverse * jacobian.SubMatrix(row, length, 0, model.Count).TransposeThisAndMultiply(own) * n).Take(TestModel.Parameters)];
            foreach (int k in TestParameter.Frictions)
            {
                shifts[p][k] += TestModel.Friction(x, p);
            }

            effective += Autocorrelation.EffectiveCount([.. own]);
            row += length;
        }

        return (shifts, model.Measured.Count / effective);
    }

    private (UntoldCause Why, TestParameter? With) Why(int k, bool ranAway, bool isAtRest)
    {
        TestParameter p = TestParameter.All[k];
        if (_doubt != FitDoubt.None)
        {
            return (UntoldCause.Doubt, null);
        }

        if (ranAway)
        {
            return (_x[k] < 0.5 * (Math.Log(p.Low) + Math.Log(p.High)) ? UntoldCause.AnySmaller : UntoldCause.AnyLarger, null);
        }

        if (!isAtRest)
        {
            return (UntoldCause.NotAtRest, null);
        }

        (double together, TestParameter other) = TestParameter.All.Select((o, i) => (i == k ? 0.0 : Math.Abs(Correlation(i, k)), o)).MaxBy(c => c.Item1);
        return together > OnlyTogether ? (UntoldCause.Together, other) : (UntoldCause.Faint, null);
    }

    private double Correlation(int i, int k) => _covariance[i, k] / Math.Sqrt(_covariance[i, i] * _covariance[k, k]);
}
