namespace PushSim.Numerics;

/// <summary>An <see cref="IAdditiveSystem"/> over a number type of several lanes: every lane is a run of its own with its own numbers.</summary>
internal interface ILaneSystem<T>
    where T : struct, ILanes<T>, IReal<T>
{
    /// <summary>Number of explicit components [1].</summary>
    int ExplicitCount { get; }

    /// <summary>Number of implicit components, behind the explicit ones [1].</summary>
    int ImplicitCount { get; }

    /// <summary>Rising ranges (first, end behind it) of the explicit components that are integrated [1]. What is left out must be a
    /// quadrature on which nothing hangs and whose absolute tolerance is infinite: leaving it out changes no other bit.</summary>
    IReadOnlyList<(int From, int To)> ExplicitRanges { get; }

    /// <summary>Ranges of implicit components, counted from the first of them, that are predicted [1]; see <see cref="IAdditiveSystem"/>.</summary>
    IReadOnlyList<(int From, int To)> PredictedRanges => [];

    /// <summary>Evaluates all derivatives in every lane; as in <see cref="IAdditiveSystem"/>, with g = 0 in some lanes and not in others.</summary>
    /// <param name="t">Time of each lane [s].</param>
    /// <param name="g">Step times diagonal coefficient of each lane, 0 for a plain evaluation [s].</param>
    /// <param name="y">State: explicit part, then implicit part; the latter is written, unchanged to the bit where g = 0.</param>
    /// <param name="predicted">The implicit part as predicted, of which only <see cref="PredictedRanges"/> are filled; for g = 0 the implicit part of y.</param>
    /// <param name="dy">Derivatives, same order.</param>
    void Evaluate(T t, T g, Span<T> y, ReadOnlySpan<T> predicted, Span<T> dy);

    /// <summary>Longest next step of each lane after a plain evaluation at a step's end, positive [s].</summary>
    T StepBound() => double.PositiveInfinity;
}
