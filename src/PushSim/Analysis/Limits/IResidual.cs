namespace PushSim.Analysis.Limits;

/// <summary>A few equations in as many unknowns, over a number type.</summary>
internal interface IResidual<T>
    where T : struct, IReal<T>
{
    /// <summary>f(x); false where x has no meaning.</summary>
    bool Evaluate(ReadOnlySpan<T> x, Span<T> f);
}
