namespace PushSim.Numerics;

/// <summary>y' = f_explicit(t, y) + f_implicit(t, y), split by component: the first <see cref="ExplicitCount"/> components are
/// integrated by the explicit half of an additive pair, the rest (stiff, linear in themselves given the others) by the
/// diagonally implicit half.</summary>
internal interface IAdditiveSystem
{
    /// <summary>Number of explicit components [1].</summary>
    int ExplicitCount { get; }

    /// <summary>Number of implicit components, behind the explicit ones [1].</summary>
    int ImplicitCount { get; }

    /// <summary>Evaluates all derivatives. For g = 0 it is a plain evaluation at (t, y). For g > 0 the implicit part of y holds,
    /// on entry, the known part z* of the stage and is replaced by the solution of z = z* + g z'(t, y_explicit, z).</summary>
    /// <param name="t">Time [s].</param>
    /// <param name="g">Step times the diagonal coefficient, h gamma [s]; 0 for a plain evaluation.</param>
    /// <param name="y">State: explicit part, then implicit part; the latter is written when g > 0.</param>
    /// <param name="dy">Derivatives, same order; for g > 0 the implicit ones are (z - z*)/g.</param>
    void Evaluate(double t, double g, Span<double> y, Span<double> dy);

    /// <summary>Ranges (first, end behind it) of implicit components, counted from the first of them, that are predicted [1].</summary>
    IReadOnlyList<(int From, int To)> PredictedRanges => [];

    /// <summary>Ranges of implicit components, counted from the first of them, whose end slopes can be trusted: dense output draws them as a cubic even where it turns [1].</summary>
    IReadOnlyList<(int From, int To)> CurveRanges => [];

    /// <summary>Longest next step after a plain evaluation at a step's end, positive [s].</summary>
    double StepBound => double.PositiveInfinity;

    /// <summary>As <see cref="Evaluate(double, double, Span{double}, Span{double})"/>, with a prediction of implicit components: their stage by the explicit half of the pair.
    /// What stands in the equations of a stage as a function of the prediction instead of the solution keeps the order of the pair, since both are made of the same slopes.</summary>
    /// <param name="t">Time [s].</param>
    /// <param name="g">Step times the diagonal coefficient, h gamma [s]; 0 for a plain evaluation.</param>
    /// <param name="y">State: explicit part, then implicit part; the latter is written when g > 0.</param>
    /// <param name="predicted">The implicit part as predicted, of which only <see cref="PredictedRanges"/> are filled; for g = 0 the implicit part of y.</param>
    /// <param name="dy">Derivatives, same order; for g > 0 the implicit ones are (z - z*)/g.</param>
    void Evaluate(double t, double g, Span<double> y, ReadOnlySpan<double> predicted, Span<double> dy) => Evaluate(t, g, y, dy);
}
